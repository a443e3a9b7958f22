#include <fmt/format.h>

#include <cstdint>

#include "app/photos.h"
#include "app/sheet_maker.h"
#include "base/text.h"
#include "model/for_everyone.h"
#include "output/icalendar.h"
#include "sheet/care.h"
#include "sheet/note.h"
#include "sheet/visit_event.h"
#include "spec/visit_writer.h"

// The sheets that are made of a visit: its note, and the owner's care sheet.

namespace furnish {
namespace {
/// A reminder so many days before the visit.
constexpr int alarm_days = 3;

/// What tells one salon's entries from another's in an owner's calendar: FNV-1a of its name, 32
/// bits (constants from the algorithm's published description). A salon that takes another name has
/// other entries.
std::uint32_t mark_of(const Salon& salon) {
  std::uint32_t out = 2166136261U;
  for (const char c : salon.name) {
    out ^= static_cast<unsigned char>(c);
    out *= 16777619U;
  }
  return out;
}

/// `printed`: the day on which the page is made, which may be after the visit's.
CalendarEvent event_of(const SheetDesk& desk, Date printed) {
  const SheetInput& input = desk.input;
  const NextVisit& next = *input.plan.next_visit;
  CalendarEvent event;
  event.day = next.date;
  event.at = next.at;
  // By the visit that comes before it, whether that is on file yet or not: a date that is moved
  // replaces the old one.
  event.uid = fmt::format("{}-after-{}-{:08x}@furnish", input.pet.key, to_iso(input.today),
                          mark_of(input.salon));
  // What an earlier page said is not on record, so a later print counts as a later version: of two
  // prints of one day neither is the newer.
  event.stamp = printed;
  event.sequence = static_cast<int>((printed - input.today).count());
  event.summary = visit_summary(desk);
  event.description = visit_description(desk);
  event.location = joined(input.salon.address, ", ");
  event.alarm_days = alarm_days;
  return event;
}

/// The case as its owner may know it: pet and visits without what is for staff, and a plan that
/// knows no more than they do.
Case for_owner(const Case& one) {
  Case out{one.folder, for_everyone(one.pet), {}, one.all_visits, {}, one.today, one.all_bookings};
  for (const Visit& visit : one.visits) out.visits.push_back(for_everyone(visit));
  DiagnosticSink unheard;  // the whole pet's plan has said it already
  const auto bookings = one.folder->bookings(out.pet, out.today, out.all_bookings);
  out.plan = make_plan(one.salon(), out.pet, out.visits, bookings, out.today, unheard);
  return out;
}

void report_no_visit(const Case& one, const SheetOrder& order) {
  const Options& options = order.options;
  std::vector<std::string> days;
  for (const Visit& visit : one.visits) {
    if (visit.date.value <= one.today) days.push_back(to_iso(visit.date.value));
  }
  const std::string& name = one.pet.name.value;
  auto& fault = order.context.sink.error(
      "no-visit", one.pet.span,
      options.visit ? fmt::format("{} has no visit of {}", name, to_iso(*options.visit))
                    : fmt::format("{} has no visit yet", name));
  fault.hint = days.empty() ? fmt::format("furnish new visit {} starts one", one.pet.key)
                            : "there is one of " + listed(days, " and ");
}

std::optional<Made> note(const Case& all, const SheetOrder& order) {
  const Visit* const whole = chosen_visit(all, order.options);
  if (whole == nullptr) {
    report_no_visit(all, order);
    return std::nullopt;
  }
  const Salon& salon = all.salon();
  // Photos are found by what an owner's page is not told: where they lie.
  std::vector<PhotographPtr> photos =
      PhotoFolder(all.folder->root(), salon, order.context).of(*whole);
  const bool owners = order.kind.reader == Audience::everyone;
  const std::optional<Case> told = owners ? std::optional(for_owner(all)) : std::nullopt;
  const Case& one = told ? *told : all;
  const auto at = static_cast<std::size_t>(whole - all.visits.data());
  const Visit* const visit = &one.visits[at];
  const Date day = visit->date.value;
  const std::span history = std::span(one.visits).first(at + 1);
  DiagnosticSink unheard;  // the plan of today has said it already
  bool all_bookings = true;
  const std::vector<Booking> bookings = one.folder->bookings(one.pet, day, all_bookings);
  if (!all_bookings) return std::nullopt;  // of a day since that visit; its file has said why
  const Plan before = make_plan(salon, one.pet, history.first(at), bookings, day, unheard);
  const Plan after = make_plan(salon, one.pet, history, bookings, day, unheard);
  const SheetInput input{order.kind, salon, one.pet, after, std::nullopt, day, order.paper, visit};
  auto sheet = make_note({input, order.voice}, {before, *visit, history, std::move(photos)},
                         order.context.sink);
  if (!sheet) return std::nullopt;
  std::string visit_name = fmt::format("{}-{}", one.pet.key, to_iso(day));
  if (visit->number > 1) visit_name += fmt::format("-{}", visit->number);
  return Made{*std::move(sheet),
              fmt::format("{}-{}", visit_name, order.kind.name),
              {pet_file(one.pet),
               {visit_name + ".toml", visit_toml(*visit), "application/toml",
                "The visit's file, from which this note was made"}}};
}

/// The visit that `care` is about; null if that is one of today of which nothing is on file.
const Visit* visit_cared_for(const Case& one, const Options& options) {
  const Visit* const last = chosen_visit(one, options);
  if (last == nullptr || options.visit || last->date.value == one.today) return last;
  // Between visits the sheet is that of the last one, until the next is due or booked.
  const auto& next = one.plan.next_visit;
  const bool waiting = next && next->date > one.today;
  return waiting && !one.booking() ? last : nullptr;
}

std::optional<Made> care(const Case& all, const SheetOrder& order) {
  const Case one = for_owner(all);
  const Visit* const visit = visit_cared_for(one, order.options);
  if (visit == nullptr && order.options.visit) {
    report_no_visit(one, order);
    return std::nullopt;
  }
  const Salon& salon = one.salon();
  const Date day = visit != nullptr ? visit->date.value : one.today;
  const auto count = visit != nullptr ? static_cast<std::size_t>(visit - one.visits.data()) + 1
                                      : one.visits.size();
  const std::span history = std::span(one.visits).first(count);
  DiagnosticSink unheard;  // the plan before the visit has said it already
  bool all_bookings = true;
  const std::vector<Booking> bookings = one.folder->bookings(one.pet, day, all_bookings);
  if (!all_bookings) return std::nullopt;  // of a day since that visit; its file has said why
  Plan plan = plan_after_today(salon, one.pet, history, bookings, day, unheard);
  // Of the last visit, printed days later: when the pet comes again is asked as of the day of
  // print, as the card of that day asks it, for a booking may have passed since.
  const bool last = visit != nullptr && visit == chosen_visit(one, {});
  if (last && day < one.today && one.plan.next_visit && one.plan.next_visit->date > one.today) {
    plan.next_visit = one.plan.next_visit;
  }
  SheetInput input{order.kind, salon, one.pet, plan, std::nullopt, day, order.paper};
  for (const Visit& before : history) {
    if (before.date.value <= day) input.latest = &before;
  }
  const SheetDesk desk{input, order.voice};
  const HomeCare at_home = home_care(salon, one.pet, plan, input.latest, day);
  CareInput care{at_home, visit, {}};
  std::vector<SideFile> beside;
  if (at_home.visit) {
    const CalendarEvent event = event_of(desk, one.today);
    care.event_code = short_icalendar(event);
    beside.push_back({"ics", icalendar(event)});
  }
  auto sheet = make_care_sheet(desk, care, order.context.sink);
  if (!sheet) return std::nullopt;
  return Made{*std::move(sheet),
              fmt::format("{}-{}", one.pet.key, order.kind.name),
              {pet_file(one.pet)},
              std::move(beside)};
}
}  // namespace

const SheetMaker sheets::note{kinds::note, furnish::note};
const SheetMaker sheets::owner_note{kinds::owner_note, furnish::note};
const SheetMaker sheets::care{kinds::care, furnish::care, true};

const Visit* chosen_visit(const Case& one, const Options& options) {
  const Visit* found = nullptr;
  for (const Visit& visit : one.visits) {
    if (visit.date.value > one.today) continue;
    const bool of_day = !options.visit || visit.date.value == *options.visit;
    if (of_day && (options.visit_number == 0 || visit.number == options.visit_number)) {
      found = &visit;
    }
  }
  return found;
}
}  // namespace furnish
