#include "plan/closed_days.h"

#include <algorithm>

namespace furnish {

bool closed_on(const Salon& salon, Date day) {
  return std::ranges::find(salon.closed, std::chrono::weekday(day)) != salon.closed.end();
}

Date open_day(const Salon& salon, Date wanted) {
  for (int back = 0; back < 7; ++back) {
    if (const Date day = wanted - std::chrono::days(back); !closed_on(salon, day)) return day;
  }
  return wanted;
}
}  // namespace furnish
