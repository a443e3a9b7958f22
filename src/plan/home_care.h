#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "base/date.h"
#include "model/pet.h"
#include "model/salon.h"
#include "model/visit.h"
#include "plan/bath.h"
#include "plan/plan.h"

namespace furnish {

/// How often an owner brushes, least first.
enum class HowOften : std::uint8_t { never, weekly, three_a_week, every_other_day, daily };

/// Parts of the coat that are brushed alike, now and once they have grown past the length from
/// which this coat mats quickly.
struct BrushZone {
  std::vector<Place> places;  ///< in order
  HowOften now = HowOften::weekly;
  std::optional<Date> from;  ///< the day from which `then` holds; empty: `now` up to the visit
  HowOften then = HowOften::weekly;
  std::optional<Length> limit;  ///< the length that is passed on that day, or was before
};

struct CareDay {
  Date date;
  bool daily = false;  ///< some of the coat is brushed, which is brushed every day
  bool brush = false;  ///< some is that is brushed less often
  bool nails = false, tidy = false, visit = false;
};

/// A bath at home between visits, if the salon recommends one.
struct HomeBathPlan {
  std::chrono::days every{0};
  std::string product;
  std::optional<Volume> bottle;
  std::optional<Parts> mix;  ///< of one bottle, rounded to what can be measured
};

/// What the owner does until the next visit.
struct HomeCare {
  /// Most often first, with at most two rhythms on any day; empty if nothing is brushed or known.
  std::vector<BrushZone> zones;
  /// In order; no brush goes there: an alert says so, or it is matted so that no comb opens it.
  std::vector<Place> avoided;
  bool shedding = false;      ///< came in shedding heavily: brushed daily for that
  std::vector<CareDay> days;  ///< every day after today up to the visit, at most `most_days`
  std::optional<Date> nails, tidy, visit;
  std::optional<HomeBathPlan> bath;
  bool bathed = false;  ///< at the visit if one is on file, else by the plan of today; false once
                        ///< the week is over for which the back is watched
  bool heat = false;    ///< must_not_overheat()
};

/// A calendar longer than this says nothing more: 26 weeks.
inline constexpr int most_care_days = 26 * 7;

/// Pure. From the coat's way at home (TRADE's table: common practice, no source), each region's
/// length today and its pessimistic growth: a coat over its mat-prone length is brushed more often
/// from the day it passes it; where an alert lets no tool go, or mats are left that no comb opens,
/// no brush goes, and a coat with such mats is not washed at home. An owner keeps one routine: what
/// passes it within a week is brushed more often from the start, and all that does later changes
/// once, on the earliest day, together with the rest where that is less. Nails are due four weeks
/// on (every 3 to 4 weeks is usual; common practice, no source) unless the visit is less than ten
/// days after. A style that is grown out before the visit asks for a tidy halfway, on a day the
/// salon is open. `latest`: the visit on or before today, or null. `since`: the day of the visit
/// from which nails, tidy and bath are counted; empty: today. What fell between the two is to be
/// done tomorrow (nails) or not at all.
HomeCare home_care(const Salon&, const Pet&, const Plan&, const Visit* latest, Date today,
                   std::optional<Date> since = std::nullopt);

/// True if a brush may go there at home.
bool is_brushed(Region);
/// True if a visit used what needs water: its file has no other word of a bath. Of one that was not
/// done, if it says so.
bool was_bathed(const Visit&);
/// How often a zone is brushed on a day.
HowOften how_often(const BrushZone&, Date);
/// True if a day that is `after` days from the start is one of brushing.
bool brushes_on(HowOften, int after);
}  // namespace furnish
