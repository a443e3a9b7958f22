#include "sheet/shown.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/quantity.h"

namespace furnish {
namespace {
constexpr std::string_view space = "\u00A0", fluid = "fl\u00A0oz";
// A number of two parts keeps its direction between these (UAX #9).
constexpr std::string_view left_to_right_isolate = "\u2066", end_of_isolate = "\u2069";

bool is_unit(std::string_view word) {
  return !word.empty() && word.front() >= 'a' && word.front() <= 'z';
}

std::string number_text(std::string_view number, const SheetVoice& voice) {
  std::string out;
  for (const char c : number) {
    if (c == '.') {
      out += voice.locale.decimal_sign();
    } else {
      out += c;
    }
  }
  // Digits alone keep their order by themselves; a range or a fraction would turn round.
  const bool plain = std::ranges::all_of(out, [](char c) { return c > 0; });
  if (plain || !voice.words.right_to_left()) return out;
  return fmt::format("{}{}{}", left_to_right_isolate, out, end_of_isolate);
}

/// Numbers and units stand between no-break spaces, narrow or not.
std::string localised(std::string_view english, const SheetVoice& voice) {
  std::string out;
  while (!english.empty()) {
    std::size_t end = std::min({english.size(), english.find(narrow_space), english.find(space)});
    if (english.starts_with(fluid)) end = fluid.size();
    const std::string_view word = english.substr(0, end);
    if (is_unit(word)) {
      out += voice.words.term("unit", word == fluid ? "fl" : word);
    } else {
      out += number_text(word, voice);
    }
    english.remove_prefix(end);
    for (const std::string_view gap : {narrow_space, space}) {
      if (!english.starts_with(gap)) continue;
      out += gap;
      english.remove_prefix(gap.size());
    }
  }
  return out;
}
}  // namespace

std::string shown(Length length, const SheetVoice& voice) {
  return localised(to_text(length, voice.locale.units()), voice);
}
std::string shown(LengthRange lengths, const SheetVoice& voice) {
  return shown(lengths, voice.locale.units(), voice);
}
std::string shown(LengthRange lengths, Units units, const SheetVoice& voice) {
  return localised(to_text(lengths, units), voice);
}
std::string shown(Mass mass, const SheetVoice& voice) {
  return localised(to_text(mass, voice.locale.units()), voice);
}
std::string shown(Volume volume, const SheetVoice& voice) {
  return localised(to_text(volume, voice.locale.units()), voice);
}
std::string shown(std::chrono::seconds time, const SheetVoice& voice) {
  return localised(to_text(time), voice);
}
std::string shown_number(double number, const SheetVoice& voice) {
  return number_text(fmt::format("{:.1f}", number), voice);
}
std::string shown_comb(Length comb, const SheetVoice& voice) {
  const bool millimetres = comb.um() % 1000 == 0;
  return localised(to_text(comb, millimetres ? Units::metric : Units::us), voice);
}
}  // namespace furnish
