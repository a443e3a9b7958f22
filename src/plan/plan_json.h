#pragma once

#include <string>

#include "model/pet.h"
#include "plan/plan.h"
#include "plan/plan_words.h"

namespace furnish {

/// The version of plan_json(); a key that changes its meaning raises it, a new key does not.
inline constexpr int plan_json_version = 1;

/// The plan for a program, UTF-8 with two spaces of indent and a line end. Lengths in mm, weights
/// in kg, volumes in ml, times in minutes, dates as ISO 8601; places and rules as files write them;
/// what is not known is null. A range is {low, high}, parts of a mix {total, product, water}.
///   furnish_plan       the version
///   pet                {key, name}
///   on                 the day it was worked out for
///   lengths            [{place, basis, left, substitute}]
///   targets            [{place, median, newest, visits}]: what was really left, of two visits and
///                      more
///   left_once          the same of what one visit alone measured, which is no target
///   drawer             [{place, wanted, use, difference}]: what the kit lacks
///   blends             [{longer, shorter, from, to, steps, shears}]
///   order              [{stage, task, tool, substitute, places, position, words, how, minutes,
///                      before_bath}]
///   bath               {none, bottle, surface_m2, rinse_minutes, mixes}, each mix {product, as,
///                      exact, measured, neat, coarse, needed, bottles, for_dog, dwell_minutes,
///                      age_days}
///   drying             {words, ruled_out}: the stricter line, and what it rules out
///   tearing_skin       true or false
///   growth             [{place, since, left, left_measured, mm_per_day, basis, measurements,
///   visits,
///                      natural, today}]
///   next_visit         {date, wanted, reason, at, then, last, place, limit, overdue_days,
///                      all_visits_read} or null; `at` is the hour of a booking; `then` {date, at},
///                      the first booking after one of today, or null
///   unless_booked      the same, where not all bookings or visits can be read; then next_visit is
///                      null
///   bookings_unread_from  the day from which that is so, or null
///   salon_unread       ["[kit]"]: parts of salon.toml that have faults, so that nobody knows what
///                      they say; what is worked out goes without them
///   limits             [{kind, place, limit, passed}]: lengths that advise, and when they are
///   passed comes_every        {days, visits} or null: the median of the visits so far minutes
///   {expected, low, high, visits} or null last_visit         {date, number, groomer, mats,
///   behaviour, helped, otherwise, kg, told, next,
///                      consents, photos} or null
///   not_done           {date, why} of a visit after that one that was not done, or null
///   findings           [{place, what, advised, for, seen}]: open, seen on these days
///   health             {weight, since_last, since_highest_of_year, vaccinations, age, years,
///                      months}
///   cautions           [{rule, signal, what, instead, places, source, accepted}], gravest first
///   standing           the same of what holds for every pet whose parts these tools meet
///   stale_acceptances  [{rule, reason, signed}]
/// It holds what is for staff alone, such as accepted rules: not for an owner's page.
std::string plan_json(const Plan&, const Pet&, const PlanWords&);
}  // namespace furnish
