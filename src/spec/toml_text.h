#pragma once

#include <chrono>
#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/calendar_span.h"
#include "base/measures.h"
#include "model/free_text.h"
#include "trade/region.h"
#include "trade/tools.h"

namespace furnish::toml_text {

/// Whether a value is written for a person or to save bytes.
enum class Form : std::uint8_t { plain, short_form };

/// A basic string of TOML 1.0: quotes, backslashes and control characters escaped, all else as it
/// is. pre: UTF-8.
std::string quoted(std::string_view);
/// Bare where TOML allows that, else quoted.
std::string key(std::string_view);
/// `["a", "b"]`.
std::string list(const std::vector<std::string>&);
/// `{ a = 1, b = 2 }` or `{a=1,b=2}` of keys and values that are written already.
std::string table(const std::vector<std::pair<std::string, std::string>>&, Form = Form::plain);

// Quantities, quoted, so that the reader gives back the same value to the micrometre, microgram and
// second. Plain: "13 mm", and "1/2 in" where millimetres need decimals and sixteenths of an inch do
// not; "4.6 kg" or "10 lb 3 oz" in the same manner. Short: the fewest bytes.
std::string quantity(Length, Form = Form::plain);
std::string quantity(Mass);
std::string quantity(Volume);
std::string quantity(std::chrono::seconds);
std::string quantity(const CalendarSpan&);
/// "neat", "10:1" or "1 in 10"; the same number if a file gave it with up to nine decimals, else
/// the nearest that the reader makes.
std::string quantity(const Dilution&);

/// A blade's name in ASCII, quoted: "8 1/2"; "8.5" in short.
std::string blade(const Blade&, Form = Form::plain);
/// A place in the singular or plural that files use: "hocks", "left-hock", "left-belly"; in short
/// the shorter of "hock" and "hocks".
std::string place(Place, Form = Form::plain);

/// A text in all its languages: "…", { text = "…", es = "…" }. `usual` is whom it is for where it
/// does not say so.
std::string free_text(const FreeText&, Audience usual = Audience::everyone, Form = Form::plain);

/// Sections one after another, an empty line between them; empty ones are left out.
std::string joined_sections(const std::vector<std::string>&);

/// Keys and values under a header (empty at the top of a file), equals signs in one column; nothing
/// at all if there are none.
class Section {
 public:
  explicit Section(std::string header) : header_(std::move(header)) {}
  void add(std::string_view name, std::string value) {
    rows_.emplace_back(key(name), std::move(value));
  }
  /// Words, quoted; left out if there are none.
  void words(std::string_view name, std::string_view value) {
    if (!value.empty()) add(name, quoted(value));
  }
  void words(std::string_view name, const std::vector<std::string>& values) {
    if (!values.empty()) add(name, list(values));
  }
  void own_words(std::string_view name, const FreeText& text) {
    if (!text.empty()) add(name, free_text(text));
  }
  std::string text() const;

 private:
  std::string header_;
  std::vector<std::pair<std::string, std::string>> rows_;
};
}  // namespace furnish::toml_text
