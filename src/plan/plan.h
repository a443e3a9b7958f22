#pragma once

#include <optional>
#include <span>
#include <vector>

#include "base/date.h"
#include "base/diagnostic.h"
#include "model/pet.h"
#include "model/salon.h"
#include "model/visit.h"
#include "plan/bath.h"
#include "plan/blends.h"
#include "plan/cautions.h"
#include "plan/drawer.h"
#include "plan/duration.h"
#include "plan/growth.h"
#include "plan/handling_rules.h"
#include "plan/health.h"
#include "plan/kept_interval.h"
#include "plan/last_visit.h"
#include "plan/lengths.h"
#include "plan/next_visit.h"
#include "plan/open_findings.h"
#include "plan/order.h"
#include "plan/targets.h"

namespace furnish {

/// What will hold once the visit that is booked for today is over, if it goes as planned.
struct AfterToday {
  std::vector<RegionGrowth> growth;  ///< from what today's trim leaves
  std::vector<LengthLimit> limits;
  std::optional<Date>
      next;  ///< by the interval, and nobody booked or agreed it; empty: no interval
};

/// A visit that was not done.
struct NotDone {
  Date date;
  std::string why;
};

/// Everything that is worked out for one pet on one day. Values only; see plan_words.h for the
/// words.
struct Plan {
  Date today;
  std::vector<PartLength> lengths;
  std::vector<Target> targets;  ///< what was really left, where a visit measured it
  std::vector<DrawerGap> drawer;
  std::vector<Blend> blends;
  std::vector<WorkStep> order;
  BathPlan bath;
  Drying drying;
  std::vector<RegionGrowth> growth;
  std::vector<LengthLimit> limits;  ///< that the coat passes, earliest first; they advise
  /// Empty also where that is not sure, for not all bookings can be read.
  std::optional<NextVisit> next_visit;
  std::optional<NextVisit> unless_booked;  ///< when it would come then, if nothing else is booked
  std::optional<Date> unread_day;          ///< the first that leaves what comes next in the dark
  std::optional<AfterToday> after_today;   ///< booked for today, and of today nothing is on file
  std::optional<KeptInterval> kept;
  std::optional<Duration> duration;
  std::optional<LastVisit> last_visit;  ///< on or before today, and done
  std::optional<NotDone> not_done;      ///< after that one, if there was such a visit
  /// What the sheets look back on: up to today, but for a visit of today that is being written.
  std::optional<LastVisit> visit_before;
  /// Mats that no comb opens, and that are still in the coat.
  std::vector<MattedPlace> mats_left;
  std::vector<OpenFinding> findings;  ///< that no visit has closed
  Health health;
  std::vector<std::string> salon_unread;  ///< salon_unread()
  bool tearing_skin = false;  ///< thin, folded or tearing: nothing under tension, mats are a vet's
  std::vector<Caution> cautions;  ///< particular to this pet and this plan
  std::vector<Caution> standing;  ///< what holds for every pet whose parts these tools meet
  std::vector<Acceptance> stale;  ///< accepted, but no longer so
};

/// Pure: the same input, in whatever order its lists stand, gives the same plan. Visits after
/// `today` or before birth are not counted, with a warning; visits of one day count in the order of
/// their numbers. The bookings are this pet's, of any day. All it reports are warnings: there is
/// always a plan.
Plan make_plan(const Salon&, const Pet&, std::span<const Visit> visits, const PetBookings&,
               Date today, DiagnosticSink&);

/// The plan as it stands once today's visit is over: where none of today is on file, one that went
/// as planned and of which nothing was measured. What is reported is what make_plan() reports of
/// the rest.
Plan plan_after_today(const Salon&, const Pet&, std::span<const Visit> visits, const PetBookings&,
                      Date today, DiagnosticSink&);

/// To be told of a plan that was made without some of the pet's visits, as they cannot be read:
/// what it says of the next visit then holds only where that is booked.
void lacks_visits(Plan&);
}  // namespace furnish
