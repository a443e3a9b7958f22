#pragma once

#include <cstdint>
#include <string>

#include "base/date.h"
#include "base/source.h"

namespace furnish {

/// How much of a day of birth is known.
enum class BirthKnown : std::uint8_t { day, month, year };

/// When a pet was born, as well as it is known.
struct Birth {
  Date value;  ///< the first day that it can have been
  SourceSpan span;
  BirthKnown known = BirthKnown::day;

  bool about() const { return known != BirthKnown::day; }
};

/// The last day that it can have been.
Date last_day(const Birth&);
/// The day from which an age is said: in the middle of those that it can have been up to today.
Date likely_day(const Birth&, Date today);
int year_of(const Birth&);
/// "2019-03-14", "2019-03", "2019".
std::string to_iso(const Birth&);
}  // namespace furnish
