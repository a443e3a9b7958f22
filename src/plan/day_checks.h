#pragma once

#include <cstdint>
#include <map>
#include <span>
#include <string>
#include <vector>

#include "base/source.h"
#include "model/salon.h"
#include "model/visit.h"
#include "plan/duration.h"

namespace furnish {

class DiagnosticSink;

enum class DayFault : std::uint8_t {
  no_pet,        ///< nobody in pets/ has that name; the others warn
  closed_day,    ///< the salon is closed
  short_time,    ///< collected before the work is expected to be done
  pet_twice,     ///< one pet, two bookings at once
  groomer_twice  ///< one groomer, two pets at once
};

/// One thing that cannot go as a day is booked.
struct DayWarning {
  DayFault fault{};
  std::vector<std::string> pets;  ///< keys of the pets it is about
  SourceSpan span;
  SourceSpan other;  ///< the booking it stands against; no file: none
  std::string says, hint;
  std::string meant{};  ///< no_pet: the key nearest to it; empty: none is near
};

/// What is wrong with a day's bookings, in the order of the file. `pets`: the keys of all pets of
/// the salon; `expected`: the time of those whose plan is known. A pet is there from `at` until it
/// is collected, else for its expected time; a groomer works on it from `at` for its expected time,
/// else as long as it is there. Where neither is known only the same minute is at once. Who else
/// helps, and that one dog dries while another is clipped, nobody wrote down: it is a warning.
std::vector<DayWarning> day_warnings(const Salon&, const Day&, std::span<const std::string> pets,
                                     const std::map<std::string, Duration>& expected);
/// Both name one, and the same.
bool same_groomer(const Booking&, const Booking&);
/// "09:30", as files write it but for the seconds.
std::string clock_time(TimeOfDay);
/// A pet that is not there is an error, all else warns.
void report(std::span<const DayWarning>, DiagnosticSink&);
}  // namespace furnish
