#include "model/birth.h"

#include <algorithm>

namespace furnish {

Date last_day(const Birth& birth) {
  using namespace std::chrono;
  const year_month_day first(birth.value);
  if (birth.known == BirthKnown::day) return birth.value;
  if (birth.known == BirthKnown::month) return first.year() / first.month() / last;
  return first.year() / December / 31;
}

Date likely_day(const Birth& birth, Date today) {
  const Date end = std::max(std::min(last_day(birth), today), birth.value);
  return birth.value + (end - birth.value) / 2;
}

int year_of(const Birth& birth) {
  return static_cast<int>(std::chrono::year_month_day(birth.value).year());
}

std::string to_iso(const Birth& birth) {
  constexpr std::size_t digits[] = {10, 7, 4};
  return to_iso(birth.value).substr(0, digits[static_cast<std::size_t>(birth.known)]);
}
}  // namespace furnish
