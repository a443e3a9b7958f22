#include <fmt/format.h>

#include <algorithm>

#include "app/photos.h"
#include "app/sheet_maker.h"
#include "base/fnv.h"
#include "base/text.h"
#include "model/for_everyone.h"
#include "output/icalendar.h"
#include "plan/history.h"
#include "sheet/care.h"
#include "sheet/note.h"
#include "sheet/visit_event.h"
#include "spec/visit_writer.h"

// The sheets that are made of a visit: its note, and the owner's care sheet.

namespace furnish {
namespace {
/// A reminder so many days before the visit.
constexpr int alarm_days = 3;

/// `after`: the day of the visit before it, on file or booked for the day of print; empty: it is
/// the first. `printed`: the day on which the page is made, which may be after the visit's.
CalendarEvent event_of(const SheetDesk& desk, std::optional<Date> after, Date printed) {
  const SheetInput& input = desk.input;
  const NextVisit& next = *input.plan.next_visit;
  CalendarEvent event;
  event.day = next.date;
  event.at = next.at;
  // By the visit that comes before it, whether that is on file yet or not: a date that is moved
  // replaces the old one, on whatever day it is printed.
  const std::string which = after ? "after-" + to_iso(*after) : "first";
  // The salon's name tells its entries from another's in an owner's calendar: under another name it
  // has other entries.
  event.uid = fmt::format("{}-{}-{:08x}@furnish", input.pet.key, which, fnv_32(input.salon.name));
  // What an earlier page said is not on record, so a later print counts as a later version: of two
  // prints of one day neither is the newer.
  event.stamp = printed;
  event.sequence =
      static_cast<int>((after ? printed - *after : printed.time_since_epoch()).count());
  event.summary = visit_summary(desk);
  event.description = visit_description(desk);
  event.location = joined(input.salon.address, ", ");
  event.alarm_days = alarm_days;
  return event;
}

/// The case as its owner may know it: pet and visits without what is for staff, and a plan that
/// knows no more than they do.
Case for_owner(const Case& one) {
  Case out{one.folder,   for_everyone(one.pet), {}, one.all_visits, {}, one.today,
           one.bookings, one.all_bookings};
  for (const Visit& visit : one.visits) out.visits.push_back(for_everyone(visit));
  DiagnosticSink unheard;  // the whole pet's plan has said it already
  out.plan = make_plan(one.salon(), out.pet, out.visits, out.bookings, out.today, unheard);
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
  DiagnosticSink unheard;    // the plan of today has said it already
  bool all_bookings = true;  // else a file of a day since that visit has said why
  const PetBookings bookings = one.folder->bookings(one.pet, day, all_bookings);
  const Plan before = make_plan(salon, one.pet, history.first(at), bookings, day, unheard);
  const Plan after = make_plan(salon, one.pet, history, bookings, day, unheard);
  SheetInput input{order.kind, salon, one.pet, after, std::nullopt, day, order.paper, visit};
  input.arrangement = order.arrangement;
  // Of the last visit the page says what all pages of the day of print say; an earlier one's is a
  // copy of what it was.
  NoteInput note{before, *visit, history, std::move(photos), after.next_visit, {}};
  if (whole == chosen_visit(all, {})) note.next = one.plan.next_visit;
  if (owners) note.vet = all.pet.owner.vet;
  auto sheet = make_note({input, order.voice}, note, order.context.sink);
  if (!sheet) return std::nullopt;
  std::string visit_name = fmt::format("{}-{}", one.pet.key, to_iso(day));
  if (visit->number > 1) visit_name += fmt::format("-{}", visit->number);
  return Made{*std::move(sheet),
              fmt::format("{}-{}", visit_name, order.kind.name),
              {pet_file(one.pet),
               {visit_name + ".toml", visit_toml(*visit), "application/toml",
                "The visit's file, from which this note was made"}}};
}

/// The last visit that is over, whether it was done or not; null if there is none.
const Visit* last_over(const Case& one) {
  const Visit* found = nullptr;
  for (const Visit& visit : one.visits) {
    if (visit.date.value <= one.today && !is_open(visit)) found = &visit;
  }
  return found;
}

/// The last that was done up to a day; null if there is none.
const Visit* last_groom(std::span<const Visit> visits, Date day) {
  const Visit* found = nullptr;
  for (const Visit& visit : visits) {
    if (visit.date.value <= day && visit.work == Work::done) found = &visit;
  }
  return found;
}

/// Comes today, or is here: its visit is begun and not done.
bool is_here(const Case& one) {
  return one.booking() || std::ranges::any_of(one.visits, [&](const Visit& visit) {
           return is_open(visit) && visit.date.value == one.today;
         });
}

/// The visit that `care` is about; null if that is one of today of which nothing is on file, or if
/// there is none. Only a booking makes a visit of today: a date that has come, or gone, does not.
const Visit* visit_cared_for(const Case& one, const Options& options) {
  if (options.visit) {
    const Visit* const asked = chosen_visit(one, options);
    return asked != nullptr && is_open(*asked) ? nullptr : asked;
  }
  const Visit* const last = last_over(one);
  if (last == nullptr || last->date.value == one.today) return last;
  return is_here(one) ? nullptr : last;
}

CareAbout about(const Case& one, const Visit* visit) {
  if (visit == nullptr) return is_here(one) ? CareAbout::planned : CareAbout::nothing;
  return visit->date.value == one.today ? CareAbout::today : CareAbout::earlier;
}

/// What is open for everyone to know after the visits up to a day, by the whole of them: who closed
/// a finding may have told only staff.
std::vector<OpenFinding> still_open(std::span<const Visit> visits, Date day) {
  std::vector<const Visit*> history;
  for (const Visit& visit : visits) {
    if (visit.date.value <= day) history.push_back(&visit);
  }
  return open_for_everyone(history);
}

bool did_nails(const Visit& visit) {
  return std::ranges::find(visit.did, DonePart::nails) != visit.did.end();
}

/// What holds at home only for a coat that was cut at the visit, and baths that were not given.
/// `as_done`: the same if the visit had been done.
void leave_out_trimmed(HomeCare& care, const Visit& visit, const HomeCare& as_done) {
  care.bathed = as_done.bathed;
  care.tidy.reset();
  for (CareDay& at : care.days) at.tidy = false;
  if (!did_nails(visit)) return;
  care.nails = as_done.nails;
  for (CareDay& at : care.days) at.nails = care.nails == at.date;
}

std::optional<Made> care(const Case& all, const SheetOrder& order) {
  const Case one = for_owner(all);
  const Visit* const visit = visit_cared_for(one, order.options);
  if (visit == nullptr && order.options.visit && chosen_visit(one, order.options) == nullptr) {
    report_no_visit(one, order);
    return std::nullopt;
  }
  const Salon& salon = one.salon();
  // Of the last visit, or of none, all is said as of the day of print, as the card of that day says
  // it. An earlier visit's page is a copy of what it was.
  const bool copy = visit != nullptr && visit != last_over(one) && visit->date.value < one.today;
  const Date day = copy ? visit->date.value : one.today;
  const auto count = visit != nullptr ? static_cast<std::size_t>(visit - one.visits.data()) + 1
                                      : one.visits.size();
  const std::span history = std::span(one.visits).first(count);
  DiagnosticSink unheard;    // the plan before the visit has said it already
  bool all_bookings = true;  // else a file of a day since that visit has said why
  const PetBookings bookings =
      day == one.today ? one.bookings : one.folder->bookings(one.pet, day, all_bookings);
  const CareAbout what = about(one, visit);
  Plan plan = what == CareAbout::planned
                  ? plan_after_today(salon, one.pet, history, bookings, day, unheard)
                  : make_plan(salon, one.pet, history, bookings, day, unheard);
  const bool sent_home = visit != nullptr && visit->work == Work::not_done;
  const Visit* const groomed = last_groom(history, day);
  const bool never = what == CareAbout::nothing || (sent_home && groomed == nullptr);
  if (never) {
    // Nobody cut this coat to what its file plans: no day on which it grows past a length.
    plan.growth.clear();
    plan.limits.clear();
  }
  const std::span whole = std::span(all.visits).first(count);
  plan.findings = still_open(whole, day);
  // What staff found well is no longer matted, whoever may read of it.
  if (what != CareAbout::planned) plan.mats_left = mats_left(one.pet, seen_by(one.pet, whole, day));
  SheetInput input{order.kind, salon, one.pet, plan, std::nullopt, day, order.paper};
  input.arrangement = order.arrangement;
  // Of how the coat came in, the visit that was not done knows more than the one before it.
  input.latest = sent_home ? visit : groomed;
  const SheetDesk desk{input, order.voice};
  // The groom from which the owner counts.
  std::optional<Date> since;
  if (visit != nullptr && !sent_home) since = visit->date.value;
  if (sent_home && groomed != nullptr) since = groomed->date.value;
  if (what == CareAbout::planned) since = one.today;
  HomeCare at_home = home_care(salon, one.pet, plan, input.latest, day, since);
  if (sent_home) {
    // Nails that were done all the same are counted from that day.
    leave_out_trimmed(at_home, *visit,
                      home_care(salon, one.pet, plan, visit, day, visit->date.value));
  }
  if (never && !sent_home) at_home.bathed = false;
  if (never && !(sent_home && did_nails(*visit))) {
    at_home.nails.reset();
    for (CareDay& at : at_home.days) at.nails = false;
  }
  CareInput care{at_home, visit, {}, what, all.pet.owner.vet, copy};
  std::vector<SideFile> beside;
  // A day that has passed when it is printed is nobody's to keep.
  if (at_home.visit && *at_home.visit > one.today) {
    const CalendarEvent event = event_of(desk, since, one.today);
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
