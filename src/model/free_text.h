#pragma once

#include <compare>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include "base/source.h"
#include "model/audience.h"

namespace furnish {

/// Words that a person wrote and that may reach an owner: plain, in the salon's language, or in one
/// or several languages that are named. A plain string is one in the salon's language.
struct FreeText {
  struct In {
    std::string language, text;  ///< BCP 47 as written
    friend auto operator<=>(const In&, const In&) = default;
  };

  FreeText() = default;
  FreeText(std::string text) : value(std::move(text)) {}
  FreeText(const char* text) : value(text) {}

  std::string value;       ///< what is given first; empty: nothing was said
  std::string language;    ///< of `value`; empty: the salon's
  std::vector<In> others;  ///< the same in other languages, in the order of the file
  Audience audience = Audience::everyone;  ///< where a text may say so for itself
  SourceSpan span;

  bool empty() const { return value.empty(); }
  /// Wherever they were written.
  friend bool operator==(const FreeText& a, const FreeText& b) { return (a <=> b) == 0; }
  friend std::strong_ordering operator<=>(const FreeText& a, const FreeText& b) {
    return std::tie(a.value, a.language, a.others, a.audience) <=>
           std::tie(b.value, b.language, b.others, b.audience);
  }
};
}  // namespace furnish
