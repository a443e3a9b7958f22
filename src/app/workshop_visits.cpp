#include <fmt/format.h>

#include <algorithm>

#include "app/photos.h"
#include "app/workshop.h"
#include "base/text.h"
#include "model/for_everyone.h"
#include "output/icalendar.h"
#include "sheet/care.h"
#include "sheet/note.h"
#include "spec/visit_writer.h"
#include "spec/writer.h"

// The sheets that are made of a visit: its note, and the owner's care sheet.

namespace furnish {
namespace {
/// A reminder so many days before the visit.
constexpr int alarm_days = 3;

CalendarEvent event_of(const SheetInput& input, const SheetVoice& voice) {
  CalendarEvent event;
  event.day = input.plan.next_visit->date;
  // By the visit that agreed on it: a date that is moved replaces the old one.
  event.uid = fmt::format("{}-after-{}@furnish", input.pet.key, to_iso(input.today));
  event.stamp = input.today;
  event.summary = visit_summary(input, voice);
  event.description = visit_description(input, voice);
  event.location = joined(input.salon.address, ", ");
  event.alarm_days = alarm_days;
  return event;
}
}  // namespace

Workshop::Case Workshop::for_owner(const Case& one) const {
  Case out{one.folder, for_everyone(one.pet), {}, one.all_visits, {}};
  for (const Visit& visit : one.visits) out.visits.push_back(for_everyone(visit));
  DiagnosticSink unheard;  // the whole pet's plan has said it already
  out.plan = make_plan(one.folder->salon(), out.pet, out.visits,
                       one.folder->bookings(out.pet, today_), today_, unheard);
  return out;
}

Attachment Workshop::pet_file(const Pet& pet) {
  return {pet.key + ".toml", pet_toml(pet), "application/toml",
          "The pet's file, from which this sheet was made"};
}

const Visit* Workshop::chosen_visit(const Case& one) const {
  const Visit* found = nullptr;
  for (const Visit& visit : one.visits) {
    if (visit.date.value > today_) continue;
    const bool of_day = !options_.visit || visit.date.value == *options_.visit;
    if (of_day && (options_.visit_number == 0 || visit.number == options_.visit_number)) {
      found = &visit;
    }
  }
  return found;
}

bool Workshop::nothing_to_note(const Case& one) const {
  return options_.command == Command::note && chosen_visit(one) == nullptr;
}

void Workshop::report_no_visit(const Case& one, DiagnosticSink& sink) const {
  std::vector<std::string> days;
  for (const Visit& visit : one.visits) {
    if (visit.date.value <= today_) days.push_back(to_iso(visit.date.value));
  }
  const std::string& name = one.pet.name.value;
  auto& fault = sink.error("no-visit", one.pet.span,
                           options_.visit
                               ? fmt::format("{} has no visit of {}", name, to_iso(*options_.visit))
                               : fmt::format("{} has no visit yet", name));
  fault.hint = days.empty() ? fmt::format("furnish new visit {} starts one", one.pet.key)
                            : "there is one of " + listed(days, " and ");
}

std::optional<Workshop::Made> Workshop::note(const Case& all, const Paper& on,
                                             const SheetVoice& speaker, DiagnosticSink& sink) {
  const Visit* const whole = chosen_visit(all);
  if (whole == nullptr) {
    report_no_visit(all, sink);
    return std::nullopt;
  }
  const Salon& salon = all.folder->salon();
  // Photos are found by what an owner's page is not told: where they lie.
  std::vector<PhotographPtr> photos =
      PhotoFolder(all.folder->root(), salon, {files_, sources_, sink}).of(*whole);
  const std::optional<Case> owners =
      options_.for_owner ? std::optional(for_owner(all)) : std::nullopt;
  const Case& one = owners ? *owners : all;
  const auto at = static_cast<std::size_t>(whole - all.visits.data());
  const Visit* const visit = &one.visits[at];
  const Date day = visit->date.value;
  const std::span history = std::span(one.visits).first(at + 1);
  DiagnosticSink unheard;  // the plan of today has said it already
  const std::vector<Booking> bookings = one.folder->bookings(one.pet, day);
  const Plan before = make_plan(salon, one.pet, history.first(at), bookings, day, unheard);
  const Plan after = make_plan(salon, one.pet, history, bookings, day, unheard);
  const SheetInput input{salon, one.pet, after, std::nullopt, day, on, visit};
  const Audience audience = options_.for_owner ? Audience::everyone : Audience::staff;
  const NoteInput note{before, *visit, history, std::move(photos), audience};
  auto sheet = make_note(input, note, speaker, sink);
  if (!sheet) return std::nullopt;
  std::string visit_name = fmt::format("{}-{}", one.pet.key, to_iso(day));
  if (visit->number > 1) visit_name += fmt::format("-{}", visit->number);
  std::string name = visit_name + "-note";
  if (options_.for_owner) name += "-owner";
  return Made{*std::move(sheet),
              std::move(name),
              {pet_file(one.pet),
               {visit_name + ".toml", visit_toml(*visit), "application/toml",
                "The visit's file, from which this note was made"}},
              {}};
}

const Visit* Workshop::visit_cared_for(const Case& one) const {
  const Visit* const last = chosen_visit(one);
  if (last == nullptr || options_.visit || last->date.value == today_) return last;
  // Between visits the sheet is that of the last one, until the next is due or booked.
  const auto& next = one.plan.next_visit;
  const bool waiting = next && next->date > today_;
  return waiting && !one.folder->booking(one.pet, today_) ? last : nullptr;
}

std::optional<Workshop::Made> Workshop::care(const Case& all, const Paper& on,
                                             const SheetVoice& speaker, DiagnosticSink& sink) {
  const Case one = for_owner(all);
  const Visit* const visit = visit_cared_for(one);
  if (visit == nullptr && options_.visit) {
    report_no_visit(one, sink);
    return std::nullopt;
  }
  const Date day = visit != nullptr ? visit->date.value : today_;
  const auto count = visit != nullptr ? static_cast<std::size_t>(visit - one.visits.data()) + 1
                                      : one.visits.size();
  const std::span history = std::span(one.visits).first(count);
  DiagnosticSink unheard;  // the plan before the visit has said it already
  const Plan plan = plan_after_today(one.folder->salon(), one.pet, history,
                                     one.folder->bookings(one.pet, day), day, unheard);
  SheetInput input{one.folder->salon(), one.pet, plan, std::nullopt, day, on};
  for (const Visit& before : history) {
    if (before.date.value <= day) input.latest = &before;
  }
  const HomeCare at_home = home_care(input.salon, one.pet, plan, input.latest, day);
  CareInput care{at_home, visit, {}};
  std::vector<SideFile> beside;
  if (at_home.visit) {
    const CalendarEvent event = event_of(input, speaker);
    care.event_code = short_icalendar(event);
    beside.push_back({"ics", icalendar(event)});
  }
  auto sheet = make_care_sheet(input, care, speaker, sink);
  if (!sheet) return std::nullopt;
  return Made{*std::move(sheet), one.pet.key + "-care", {pet_file(one.pet)}, std::move(beside)};
}
}  // namespace furnish
