#include "sheet/due.h"

#include "base/text.h"
#include "sheet/shown.h"
#include "sheet/terms.h"

namespace furnish {

std::string every_text(const CalendarSpan& span, const Words& words) {
  if (span.months > 0 && span.days.count() == 0) {
    return words.say(Phrase::why_months, {span.months});
  }
  return words.say(Phrase::why_weeks, {static_cast<int>((span.about().count() + 3) / 7)});
}

std::string no_visit_text(const Pet& pet, const Words& words) {
  const std::string none = words.say(Phrase::why_no_visit);
  if (!pet.since) return none;
  return none + comma(words) +
         words.say(Phrase::comes_since, {std::to_string(year_of(*pet.since))});
}

namespace {
std::string booked_at(TimeOfDay at, const SheetVoice& voice) {
  return voice.words.say(Phrase::why_booked, {voice.locale.time(at)});
}

/// "every 8 weeks": why the next visit is when it is.
std::string due_reason(const NextVisit& next, const SheetDesk& desk) {
  const auto& [input, voice] = desk;
  const Words& words = voice.words;
  const auto days = (next.wanted - next.last.value_or(input.today)).count();
  const int weeks = static_cast<int>((days + 3) / 7);
  const auto& every = input.pet.visit_every;
  switch (next.reason) {
    case DueReason::booked:
      return booked_at(next.at.value_or(TimeOfDay{}), voice);
    case DueReason::agreed:
      return words.say(Phrase::why_agreed);
    case DueReason::no_visit:
      return no_visit_text(input.pet, words);
    case DueReason::owner_interval:
      return every ? every_text(every->value, words) : words.say(Phrase::why_weeks, {weeks});
    case DueReason::coat_interval:
      return words.say(Phrase::why_coat, {weeks});
    case DueReason::keep_under:
    case DueReason::mat_prone:
      break;
  }
  return words.say(Phrase::why_limit, {next.limit ? shown(*next.limit, voice) : std::string()});
}
}  // namespace

SheetRow due_row(const SheetDesk& desk) {
  const auto& [input, voice] = desk;
  const Words& words = voice.words;
  const auto& next = input.plan.next_visit;
  SheetRow row{words.say(Phrase::label_due), {}, input.pet.span};
  const auto day = [&](Date date) { return voice.locale.day_and_month(date, input.today); };
  const auto on = [&](const std::string& text) {
    row.text = {{capitalised(text), Face::bold}};
    row.at_the_door = true;
    return row;
  };
  if (next && next->then) {
    return on(day(next->then->date) + " (" + booked_at(next->then->at, voice) + ")");
  }
  // On the day itself the next date is still to be agreed.
  if (!next || next->date == input.today) {
    const auto& after = input.plan.after_today;
    if (input.plan.unread_day) {
      row.text = {{sentence(words.say(Phrase::due_unread, {day(*input.plan.unread_day)}))}};
      row.hand_lines = {words.say(Phrase::hand_agreed)};
    } else if (next && next->reason == DueReason::no_visit && !input.booking) {
      row.text = {{sentence(no_visit_text(input.pet, words))}};
    } else if (after && after->next) {
      row.text = {{capitalised(words.say(Phrase::due_about, {day(*after->next)}))}};
      row.hand_lines = {words.say(Phrase::hand_agreed)};
    } else {
      row.hand_lines = {words.say(Phrase::hand_due)};
    }
    return row;
  }
  const std::string text = day(next->date) + " (" + due_reason(*next, desk) + ")";
  return on(next->overdue_days > 0 ? words.say(Phrase::due_overdue, {text, next->overdue_days})
                                   : text);
}
}  // namespace furnish
