#include "sheet/shown.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/amount.h"

namespace furnish {
namespace {
// A number of two parts keeps its direction between these (UAX #9).
constexpr std::string_view left_to_right_isolate = "\u2066", end_of_isolate = "\u2069";

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

std::string localised(const Amounts& amounts, const SheetVoice& voice) {
  std::string out;
  for (const auto& [number, unit] : amounts) {
    if (!out.empty()) out += no_break_space;
    out += number_text(number, voice);
    out += narrow_space;
    out += voice.words.term("unit", unit == fluid_ounces ? "fl" : unit);
  }
  return out;
}
}  // namespace

std::string shown(Length length, const SheetVoice& voice) {
  return localised(amounts(length, voice.locale.units()), voice);
}
std::string shown(LengthRange lengths, const SheetVoice& voice) {
  return shown(lengths, voice.locale.units(), voice);
}
std::string shown(LengthRange lengths, Units units, const SheetVoice& voice) {
  return localised(amounts(lengths, units), voice);
}
std::string shown(Mass mass, const SheetVoice& voice) {
  return localised(amounts(mass, voice.locale.units()), voice);
}
std::string shown(Volume volume, const SheetVoice& voice) {
  return localised(amounts(volume, voice.locale.units()), voice);
}
std::string shown(std::chrono::seconds time, const SheetVoice& voice) {
  return localised(amounts(time), voice);
}
std::string about(std::chrono::minutes time, const SheetVoice& voice) {
  const auto minutes = static_cast<int>(time.count());
  if (minutes <= 90) return voice.words.say(Phrase::about_minutes, {minutes});
  const int halves = (minutes + 15) / 30;
  return voice.words.say(halves % 2 == 0 ? Phrase::about_hours : Phrase::about_hours_half,
                         {halves / 2});
}
std::string shown_number(double number, const SheetVoice& voice) {
  return number_text(fmt::format("{:.1f}", number), voice);
}
std::string shown_comb(Length comb, const SheetVoice& voice) {
  const bool millimetres = comb.um() % 1000 == 0;
  return localised(amounts(comb, millimetres ? Units::metric : Units::us), voice);
}
}  // namespace furnish
