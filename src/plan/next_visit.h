#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "base/date.h"
#include "model/pet.h"
#include "model/salon.h"
#include "model/visit.h"
#include "plan/growth.h"

namespace furnish {

class DiagnosticSink;

enum class DueReason : std::uint8_t {
  booked,          ///< in days/
  agreed,          ///< at the last visit
  no_visit,        ///< none on file: nobody knows a day, and so now
  owner_interval,  ///< `visit_every`
  coat_interval,   ///< usual for the coat
  keep_under,      ///< only where the salon lets lengths shorten visits
  mat_prone        ///< the same
};

struct BookedFor {
  Date date;
  TimeOfDay at{};
};

/// When a pet comes again, and why then.
struct NextVisit {
  Date date;
  Date wanted;  ///< before closed days moved it earlier
  DueReason reason = DueReason::owner_interval;
  std::optional<TimeOfDay> at;    ///< booked: the hour
  std::optional<BookedFor> then;  ///< booked for today: the first booking after it
  std::optional<Date> last;       ///< the last visit; empty: none on file
  std::optional<Place> place;     ///< keep_under, mat_prone: what would pass
  std::optional<Length> limit;    ///< and what it would pass
  int overdue_days = 0;           ///< 0 if today is not past `date`
  /// False: on `unread` it may be booked for another day than this.
  bool sure = true;
  bool all_visits = true;  ///< false: one that cannot be read may say another day
  /// A day of which not all bookings can be read, before this one or before what follows it.
  std::optional<Date> unread;
};

enum class LimitKind : std::uint8_t { keep_under, mat_prone };

/// A length that the coat passes, taken to grow as fast as it may.
struct LengthLimit {
  LimitKind kind = LimitKind::keep_under;
  Place place;
  Length limit;
  Date passed;  ///< the first day over it
};

/// Every limit that is passed at some time, earliest first: the owner's `keep_under`, and the
/// length from which a coat that was left shorter mats quickly. A `keep_under` that the cut itself
/// is over is no limit, and reported.
std::vector<LengthLimit> length_limits(const Salon&, const Pet&, std::span<const RegionGrowth>,
                                       DiagnosticSink&);

/// The one answer to when a pet comes again; every page and calendar asks it. The first booking
/// from today on, or after today once a visit of today is on file; else the day agreed at the last
/// visit; else now, if no visit is on file; else the last visit plus the owner's interval; else
/// plus the middle of the coat's usual one in whole weeks, down. Empty if nobody said an interval
/// or a coat. Lengths advise and do not move it: an interval is the owner's, and halving that of an
/// old or frightened dog is a harm of its own (common practice, no source). Where the salon sets
/// `shorten_visits`, an interval ends before a limit is passed: a week on at least for
/// `keep_under`, the coat's shortest usual interval for one that mats. A closed day moves an
/// interval's end earlier, never later, and no other day. `bookings`: of this pet, in any order;
/// where an earlier one may be among those that cannot be read, the answer is not sure.
/// `sent_home`: of history.h; the day that was agreed there holds, if one was.
std::optional<NextVisit> next_visit(const Salon&, const Pet&, std::span<const LengthLimit>,
                                    std::span<const Visit* const> history, const PetBookings&,
                                    Date today, DiagnosticSink&, const Visit* sent_home = nullptr);
/// The first day from that on of which not all bookings can be read.
std::optional<Date> first_unread(const PetBookings&, Date from);
}  // namespace furnish
