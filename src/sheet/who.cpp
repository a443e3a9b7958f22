#include "sheet/who.h"

#include "base/text.h"
#include "sheet/own_words.h"
#include "sheet/pieces.h"
#include "sheet/shown.h"
#include "sheet/terms.h"

namespace furnish {
namespace {
std::string age_text(const Pet& pet, Date today, const Words& words) {
  const Date born = likely_day(*pet.born, today);
  const int months = full_months(born, today);
  const auto said = [&](Phrase unit, int number) {
    std::string age = words.say(unit, {number});
    return pet.born->about() ? words.say(Phrase::age_about, {age}) : age;
  };
  // Of a year alone no month of age is known.
  const int in_years = pet.born->known == BirthKnown::year ? 12 : 24;
  if (months >= in_years) return said(Phrase::age_years, months / 12);
  if (months >= 4) return said(Phrase::age_months, months);
  return said(Phrase::age_weeks, static_cast<int>((today - born).count() / 7));
}

void append(std::vector<TextSpan>& spans, std::string_view between, TextSpan span) {
  if (span.text.empty()) return;
  if (!spans.empty()) spans.push_back({std::string(between)});
  spans.push_back(std::move(span));
}
}  // namespace

std::vector<TextSpan> looks_text(const SheetDesk& desk) {
  const auto& [input, voice] = desk;
  std::vector<TextSpan> spans;
  append(spans, "", {capitalised(salons_words(input.pet.breed, voice)), Face::semibold});
  const std::string colour = salons_words(input.pet.colour, voice);
  append(spans, comma(voice.words), {spans.empty() ? capitalised(colour) : colour});
  return spans;
}

std::vector<TextSpan> facts_text(const SheetDesk& desk) {
  const auto& [input, voice] = desk;
  // The dot stays with what is before it when a line breaks.
  constexpr std::string_view between = "\u00A0· ";
  std::vector<TextSpan> spans;
  append(spans, between, {salons_words(input.pet.sex, voice)});
  if (input.pet.born && input.pet.born->value <= input.today) {
    append(spans, between, {age_text(input.pet, input.today, voice.words)});
  }
  if (const auto& weight = input.plan.health.weight) {
    append(spans, between, {shown(weight->weight, voice), Face::semibold});
    // With its day, unless that is the page's own: a weight is only as good as it is fresh.
    if (weight->on != input.today) {
      const std::string day = weight->on ? voice.locale.short_day(*weight->on, input.today)
                                         : voice.words.say(Phrase::weight_undated);
      spans.push_back({" (" + without_breaks(day) + ")"});
    }
  }
  return spans;
}
}  // namespace furnish
