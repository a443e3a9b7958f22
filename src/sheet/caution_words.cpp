#include "sheet/caution_words.h"

#include <fmt/format.h>

#include "base/quantity.h"
#include "base/text.h"
#include "sheet/own_words.h"
#include "sheet/shown.h"
#include "sheet/terms.h"
#include "sheet/trim_lines.h"

namespace furnish {
namespace {
/// Facts that are words themselves, or the same for every reader.
struct SayWords {
  const Words& words;
  WordArgument operator()(Condition condition) const { return condition_name(condition, words); }
  WordArgument operator()(VetTask task) const { return words.term("vet", key(task)); }
  WordArgument operator()(const Blade* blade) const { return std::string(blade->name); }
  WordArgument operator()(int number) const { return number; }
  WordArgument operator()(const std::string& text) const { return words.written(text); }
  WordArgument operator()(const FreeText& text) const { return words.written(text.value); }
};

/// On a sheet.
struct SayToReader : SayWords {
  explicit SayToReader(const SheetVoice& of) : SayWords{of.words}, voice(of) {}
  const SheetVoice& voice;
  using SayWords::operator();
  WordArgument operator()(const std::string& text) const { return salons_words(text, voice); }
  WordArgument operator()(const FreeText& text) const { return salons_words(text, voice); }
  WordArgument operator()(const std::vector<Place>& places) const {
    return places_text(places, voice);
  }
  WordArgument operator()(Date day) const { return voice.locale.long_date(day); }
  WordArgument operator()(Mass mass) const { return shown(mass, voice); }
  WordArgument operator()(std::chrono::seconds time) const { return shown(time, voice); }
  WordArgument operator()(double number) const { return shown_number(number, voice); }
};

/// At a terminal.
struct SayPlainly : SayWords {
  SayPlainly(const Words& said_in, Units of) : SayWords{said_in}, units(of) {}
  Units units;
  using SayWords::operator();
  WordArgument operator()(const std::vector<Place>& places) const {
    std::vector<std::string> names;
    for (const Place place : places) names.push_back(place_name(place, words));
    return listed(names);
  }
  WordArgument operator()(Date day) const { return to_iso(day); }
  WordArgument operator()(Mass mass) const { return to_text(mass, units); }
  WordArgument operator()(std::chrono::seconds time) const { return to_text(time); }
  WordArgument operator()(double number) const { return fmt::format("{:.1f}", number); }
};

template <typename Say>
std::string said(const CautionText& text, const Say& say) {
  std::vector<WordArgument> arguments;
  for (const CautionFact& fact : text.facts) arguments.push_back(std::visit(say, fact));
  return say.words.term("rule", text.key, arguments);
}
}  // namespace

std::string caution_text(const CautionText& text, const SheetVoice& voice) {
  return said(text, SayToReader(voice));
}

PlanWords plan_words(const Words& words, Units units) {
  return {[&words, units](const CautionText& text) { return said(text, SayPlainly(words, units)); },
          [&words](Method method) { return how_text(method, words); }};
}
}  // namespace furnish
