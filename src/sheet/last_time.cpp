#include "sheet/last_time.h"

#include <algorithm>
#include <functional>
#include <iterator>
#include <map>

#include "base/text.h"
#include "sheet/own_words.h"
#include "sheet/shown.h"
#include "sheet/terms.h"
#include "sheet/trim_lines.h"
#include "trade/mats.h"

namespace furnish {
namespace {
/// Days on which a finding was seen: the last, or all of them where they tell how it goes on.
std::string days_text(const OpenFinding& finding, const SheetDesk& desk) {
  const ReaderLocale& locale = desk.voice.locale;
  if (!finding.has_history()) return locale.short_day(finding.seen.back(), desk.input.today);
  std::vector<std::string> days;
  for (const Date day : finding.seen) days.push_back(locale.short_day(day, desk.input.today));
  return locale.list(days);
}

/// "Mats: breeches 2/4, right ear 1/4": worst first, a grade's places together; before them what
/// goes all the way round.
void add_mats(Sentences& out, const std::vector<MattedPlace>& mats, const SheetVoice& voice) {
  std::map<int, std::vector<Place>, std::greater<>> by_grade;
  std::vector<Place> round;
  for (const MattedPlace& one : mats) {
    if (one.grade > 0) by_grade[one.grade].push_back(one.place);
    if (one.encircling) round.push_back(one.place);
  }
  if (!round.empty()) {
    out.add_headed(capitalised(places_text(round, voice)),
                   voice.words.say(Phrase::note_encircling));
  }
  std::vector<std::string> texts;
  for (const auto& [grade, places] : by_grade) {
    texts.push_back(places_text(places, voice) + "\u00A0" + std::to_string(grade) + "/4");
  }
  out.add_headed(voice.words.say(Phrase::note_mats), joined(texts, comma(voice.words)));
}

/// "Chest: straight shears, 30 mm (thinners out for sharpening)."; what a file wrote for a group
/// is said once.
void add_otherwise(Sentences& out, const TrimRules& done, const SheetVoice& voice) {
  for (std::size_t i = 0; i < done.size();) {
    const TrimEntry& entry = done[i].entry;
    std::vector<Place> places;
    for (; i < done.size() && done[i].entry.span == entry.span; ++i) {
      places.push_back(done[i].place);
    }
    std::string text = work_text(entry, voice);
    if (!entry.why.empty()) text += " (" + own_words(entry.why, voice).text + ")";
    out.add_headed(capitalised(grouped_text(places, voice)), text);
  }
}

bool rules_by_dislike(const SheetInput& input) {
  return input.plan.drying.ruled_out &&
         input.plan.drying.span == input.pet.preferences.dislikes_span;
}
}  // namespace

std::optional<SheetRow> look_again_row(const SheetDesk& desk, Numbers numbers) {
  const auto& [input, voice] = desk;
  if (input.plan.findings.empty()) return std::nullopt;
  SheetRow row{voice.words.say(Phrase::label_again), {}, input.plan.findings.front().span};
  int number = 0;
  for (const OpenFinding& finding : input.plan.findings) {
    SheetRow::Point point;
    if (numbers == Numbers::yes) {
      point.text.push_back({finding_letter(++number) + "\u00A0", Face::bold});
    }
    point.text.push_back(
        {capitalised(place_name(finding.place, voice.words)) + colon(voice.words), Face::semibold});
    std::string text = salons_words(finding.what, voice);
    text += (text.empty() ? "" : " ") + ("(" + days_text(finding, desk)) + ").";
    if (!finding.advised.empty()) {
      text += " " + voice.words.say(Phrase::note_advised) + colon(voice.words) +
              sentence(salons_words(finding.advised, voice));
    }
    point.text.push_back({text});
    row.points.push_back(std::move(point));
  }
  return row;
}

std::vector<FigureSpot> finding_spots(const SheetDesk& desk) {
  std::vector<FigureSpot> out;
  int number = 0;
  for (const OpenFinding& finding : desk.input.plan.findings) {
    out.push_back({finding.place, SpotKind::finding, ++number});
  }
  return out;
}

std::vector<TextSpan> felt_text(const LastVisit& last, const SheetVoice& voice) {
  std::vector<MattedPlace> felt;
  std::ranges::copy_if(last.mats, std::back_inserter(felt), [](const MattedPlace& one) {
    return one.grade >= worst_mats || one.encircling;
  });
  Sentences out(voice.words);
  add_mats(out, felt, voice);
  return out.take();
}

std::optional<SheetRow> last_time_row(const SheetDesk& desk) {
  const auto& [input, voice] = desk;
  const auto& last = input.plan.visit_before;
  if (!last) return std::nullopt;
  const Words& words = voice.words;
  Sentences known(words);
  known.add_headed(words.say(Phrase::note_not_done), salons_words(last->not_done, voice));
  add_mats(known, last->mats, voice);
  known.add_headed(words.say(Phrase::note_behaviour), salons_words(last->behaviour, voice));
  known.add_headed(words.say(Phrase::note_helped), salons_words(last->helped, voice));
  add_otherwise(known, last->otherwise, voice);
  const auto& newest = input.plan.health.weight;  // stands in the head of the page
  if (last->weight && (!newest || newest->weight != *last->weight)) {
    known.add_headed(words.say(Phrase::label_weight), shown(*last->weight, voice));
  }
  if (last->groomed) {
    known.add_headed(words.say(Phrase::last_groomed),
                     voice.locale.short_day(*last->groomed, input.today));
  }
  if (known.empty()) return std::nullopt;
  std::string when = voice.locale.short_day(last->date, input.today);
  if (!last->groomer.empty()) when += comma(words) + words.written(last->groomer);
  SheetRow row{words.say(Phrase::label_last), {{when + ". "}}, input.pet.span};
  for (TextSpan& span : known.take()) row.text.push_back(std::move(span));
  return row;
}

std::optional<SheetRow> handling_row(const SheetDesk& desk, DryerLine dryer) {
  const auto& [input, voice] = desk;
  const Handling& handling = input.pet.handling;
  const Words& words = voice.words;
  Sentences text(words);
  text.add_headed(words.say(Phrase::hold), salons_words(handling.hold, voice));
  text.add_headed(words.say(Phrase::lift), salons_words(handling.lift, voice));
  if (dryer == DryerLine::with_others) {
    text.add_headed(words.say(Phrase::label_dry), dryer_text(desk));
  }
  text.add_headed(words.say(Phrase::stop), salons_words(handling.stop, voice));
  if (handling.rest_every) {
    text.add_strong(
        sentence(*handling.rest_every == std::chrono::hours(1)
                     ? words.say(Phrase::rest_hourly)
                     : words.say(Phrase::rest_every, {shown(*handling.rest_every, voice)})));
  }
  if (text.empty()) return std::nullopt;
  return SheetRow{words.say(Phrase::label_handle), text.take(), input.pet.span};
}

std::string drying_text(const SheetDesk& desk) {
  const auto& [input, voice] = desk;
  const std::string text = salons_words(input.plan.drying.words, voice);
  // What is disliked is named without its "no", so it must not read as what to do.
  return rules_by_dislike(input) ? voice.words.say(Phrase::not_wanted, {text}) : text;
}

std::string dryer_text(const SheetDesk& desk) {
  const auto& [input, voice] = desk;
  const std::string& dryer = input.pet.handling.dryer;
  const Drying& drying = input.plan.drying;
  const bool said = sentence(dryer) == sentence(drying.words);
  const bool ruled_out = drying.ruled_out && drying.planned == dryer;
  return said || ruled_out ? std::string() : salons_words(dryer, voice);
}

std::string condition_names(const SheetDesk& desk) {
  std::vector<std::string> names;
  for (const auto& condition : desk.input.pet.conditions) {
    names.push_back(condition_name(condition.value, desk.voice.words));
  }
  return joined(names, comma(desk.voice.words));
}

std::string conditions_text(const SheetDesk& desk) {
  return capitalised(condition_names(desk));
}
}  // namespace furnish
