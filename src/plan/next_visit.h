#pragma once

#include <cstdint>
#include <optional>
#include <span>

#include "base/date.h"
#include "model/pet.h"
#include "model/salon.h"
#include "model/visit.h"
#include "plan/growth.h"

namespace furnish {

class DiagnosticSink;

enum class DueReason : std::uint8_t {
  agreed,
  owner_interval,
  coat_interval,
  keep_under,
  mat_prone
};

struct NextVisit {
  Date date;
  Date wanted;  ///< before closed days moved it earlier
  DueReason reason = DueReason::owner_interval;
  std::optional<Date> last;     ///< counted from; empty: from today
  std::optional<Place> place;   ///< keep_under, mat_prone: what would pass
  std::optional<Length> limit;  ///< and what it would pass
  int overdue_days = 0;         ///< 0 if today is not past `date`
};

/// A date agreed at the last visit stands as it is. Else the last visit (else today) plus the
/// owner's interval, else the middle of the coat's usual one in whole weeks, down; earlier if the
/// pessimistic growth would pass a `keep_under` (but a week at least), or a coat that was left
/// shorter would pass its mat-prone length (but never under the coat's usual shortest interval). A
/// closed day moves it earlier, never later. Empty if nobody said an interval or a coat.
std::optional<NextVisit> next_visit(const Salon&, const Pet&, std::span<const RegionGrowth>,
                                    std::span<const Visit* const> history, Date today,
                                    DiagnosticSink&);
}  // namespace furnish
