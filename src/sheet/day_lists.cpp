#include "sheet/day_lists.h"

#include <algorithm>
#include <iterator>

#include "base/said_in.h"
#include "base/text.h"
#include "page/forms.h"
#include "page/stack.h"
#include "sheet/caution_words.h"
#include "sheet/own_words.h"
#include "sheet/parts.h"
#include "sheet/shown.h"
#include "sheet/terms.h"

namespace furnish {
namespace {
BlockPtr ticked(std::vector<TextSpan> spans, const SourceSpan& span = {}) {
  const BlockPtr line =
      std::make_shared<Ticked>(paragraph(std::move(spans), {}, {"list", span}), Role::body);
  return std::make_shared<Column>(std::vector<BlockPtr>{line}, Origin{}, Structure::item);
}

std::string bottles(const ProductTotal& total, const SheetVoice& voice) {
  const Words& words = voice.words;
  if (total.neat) return words.say(Phrase::neat);
  if (!total.measured) return words.say(Phrase::no_dilution);
  const std::string mix = words.say(
      Phrase::mix, {shown(total.measured->product, voice), shown(total.measured->water, voice)});
  return words.say(Phrase::day_bottles, {mix, total.bottles});
}

/// "Not for Rex and Pip: lavender. Not for Sol: oats."
std::string beware(const std::string& product, const DayPlan& plan, const SheetVoice& voice) {
  struct Same {
    std::vector<std::string> what, names;
  };
  std::vector<Same> all;
  for (const NotFor& one : plan.not_for) {
    if (one.product != product) continue;
    const auto same = std::ranges::find(all, one.what, &Same::what);
    Same& into = same != all.end() ? *same : all.emplace_back(Same{one.what, {}});
    into.names.push_back(voice.words.written(one.pet->pet.name.value));
  }
  std::vector<std::string> out;
  for (Same& one : all) {
    for (std::string& what : one.what) what = salons_words(what, voice);
    out.push_back(sentence(voice.words.say(
        Phrase::day_not_for, {voice.locale.list(one.names), voice.locale.list(one.what)})));
  }
  return joined(out, " ");
}
}  // namespace

std::vector<DayLine> mix_lines(const DayPlan& plan, const SheetVoice& voice) {
  const Words& words = voice.words;
  std::vector<DayLine> out;
  for (const ProductTotal& total : plan.mixes) {
    std::vector<std::string> parts;
    if (total.dogs > 0) {
      parts.push_back(bottles(total, voice));
      parts.push_back(
          words.say(Phrase::day_for_pets, {shown(total.parts.total, voice), total.dogs}));
    }
    if (total.unknown > 0) parts.push_back(words.say(Phrase::day_mix_unknown, {total.unknown}));
    out.push_back({capitalised(salons_words(total.product, voice)),
                   joined(parts, semicolon(words)) + ".", beware(total.product, plan, voice)});
  }
  for (const std::string& name : plan.not_counted) {
    out.push_back({words.written(name), words.say(Phrase::day_not_counted), {}});
  }
  return out;
}

std::string unread_text(const DayPlan& plan, const SheetVoice& voice) {
  const Words& words = voice.words;
  std::vector<std::string> which;
  for (const UnreadBooking& one : plan.unread) {
    const std::string line = std::to_string(one.span.begin.line);
    which.push_back(one.pet.empty()
                        ? words.say(Phrase::day_row_line, {line})
                        : words.say(Phrase::day_row_line_pet, {line, words.written(one.pet)}));
  }
  if (which.empty()) return {};
  return words.say(Phrase::day_rows_unread,
                   {joined(which, semicolon(words)), static_cast<int>(which.size())});
}

std::vector<BlockPtr> mix_list(const DayPlan& plan, const SheetVoice& voice) {
  std::vector<BlockPtr> out;
  for (const DayLine& line : mix_lines(plan, voice)) {
    std::vector<TextSpan> spans{{line.head + colon(voice.words), Face::semibold}, {line.text}};
    if (!line.beware.empty()) spans.push_back({" " + line.beware, Face::bold});
    // Who is not counted is nothing to do.
    const bool mixed = out.size() < plan.mixes.size();
    out.push_back(mixed
                      ? ticked(std::move(spans))
                      : std::make_shared<Column>(std::vector<BlockPtr>{paragraph(std::move(spans))},
                                                 Origin{}, Structure::item));
  }
  return out;
}

namespace {
std::string whom(const DayCall& call, const Salon& salon, const SheetVoice& voice) {
  const Words& words = voice.words;
  const Pet& pet = call.pet->pet;
  std::string who = words.written(pet.name.value);
  if (!pet.owner.name.empty()) who += comma(words) + words.written(pet.owner.name);
  if (salon.contact_on_card && !pet.owner.phone.empty()) {
    who += comma(words) + pet.owner.phone;
  } else if (!call.no_contact) {
    who += comma(words) + words.say(Phrase::day_see_file);
  }
  return who;
}

std::vector<TextSpan> why_to_call(const DayCall& call, Date day, const SheetVoice& voice) {
  const Words& words = voice.words;
  Sentences why(words);
  for (const OpenFinding* const finding : call.untold) {
    std::string text = place_name(finding->place, words);
    if (!finding->what.empty()) text += colon(words) + salons_words(finding->what, voice);
    text += " (" + voice.locale.short_day(finding->seen.back(), day) + ")";
    why.add_headed(words.say(Phrase::day_untold), text);
  }
  if (call.weight != nullptr) {
    why.add_headed(words.say(Phrase::day_untold), caution_text(call.weight->what, voice));
  }
  for (const Alert* const alert : call.asked) {
    const std::string text = own_words(alert->text, voice).text,
                      action = own_words(alert->action, voice).text;
    std::string head = text.substr(0, text.find('.'));
    if (head.size() < text.size() && head.starts_with(language_begins)) head += language_ends;
    why.add_headed(head, action);
  }
  for (const Caution* const one : call.vaccinations) why.add(caution_text(one->what, voice));
  if (call.no_contact) why.add(words.say(Phrase::day_no_contact));
  return why.take();
}
}  // namespace

std::vector<DayLine> call_lines(const DayPlan& plan, const Salon& salon, Date day,
                                const SheetVoice& voice) {
  std::vector<DayLine> out;
  for (const DayCall& call : plan.calls) {
    DayLine& line = out.emplace_back(DayLine{whom(call, salon, voice), {}, {}});
    for (const TextSpan& span : why_to_call(call, day, voice)) line.text += span.text;
  }
  return out;
}

std::vector<BlockPtr> call_list(const DayPlan& plan, const Salon& salon, Date day,
                                const SheetVoice& voice) {
  std::vector<BlockPtr> out;
  for (const DayCall& call : plan.calls) {
    std::vector<TextSpan> spans{{whom(call, salon, voice) + colon(voice.words), Face::semibold}};
    std::ranges::move(why_to_call(call, day, voice), std::back_inserter(spans));
    out.push_back(ticked(std::move(spans), call.pet->pet.span));
  }
  return out;
}

std::string day_sums(const DayBlock& block, DayDetail detail, const SheetVoice& voice) {
  const auto number = [](auto count) { return static_cast<int>(count); };
  const bool all_known =
      std::ranges::all_of(block.rows, [](const DayRow& row) { return row.expected && row.booked; });
  if (detail == DayDetail::close && all_known) {
    return voice.words.say(Phrase::day_minutes_short,
                           {shown(block.expected, voice), shown(block.booked, voice)});
  }
  const auto unknown =
      std::ranges::count_if(block.rows, [](const DayRow& row) { return !row.expected; });
  // What is booked without an end is in no sum of what is booked.
  const auto open =
      std::ranges::count_if(block.rows, [](const DayRow& row) { return !row.booked; });
  const auto sum = [&](std::chrono::minutes time, auto of_none) {
    return of_none == std::ssize(block.rows) ? std::string("–") : shown(time, voice);
  };
  std::string out =
      voice.words.say(Phrase::day_pets, {number(block.rows.size())}) + comma(voice.words) +
      voice.words.say(Phrase::day_sums, {sum(block.expected, unknown), sum(block.booked, open)});
  if (unknown > 0) {
    out += comma(voice.words) + voice.words.say(Phrase::day_unknown, {number(unknown)});
  }
  // In a column the row's own empty line says it.
  if (open > 0 && detail != DayDetail::close)
    out += comma(voice.words) + voice.words.say(Phrase::day_sum_open, {number(open)});
  return out;
}
}  // namespace furnish
