#include "plan/duration.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "plan/bath.h"
#include "plan/places.h"
#include "trade/coat.h"

namespace furnish {
namespace {
constexpr std::size_t enough_for_quartiles = 4;

std::chrono::minutes whole(double minutes) {
  return std::chrono::minutes(static_cast<std::int64_t>(std::floor(minutes + 0.5)));
}

/// Linear between the sorted values; a half is the median.
double quantile(const std::vector<double>& sorted, double share) {
  const double at = share * static_cast<double>(sorted.size() - 1);
  const auto below = static_cast<std::size_t>(at);
  const std::size_t above = std::min(below + 1, sorted.size() - 1);
  return sorted[below] + (at - static_cast<double>(below)) * (sorted[above] - sorted[below]);
}

Duration spread_about(double minutes, double share) {
  return {whole(minutes), whole(minutes * (1 - share)), whole(minutes * (1 + share)), 0};
}

std::optional<Duration> by_formula(const Salon& salon, const Pet& pet, std::optional<Mass> weight) {
  if (!weight) return std::nullopt;
  const TimeSettings& time = salon.time;
  const double surface = body_surface_m2(*weight);
  const bool long_to_dry =
      pet.coat == Coat::double_coat || pet.coat == Coat::curly || pet.coat == Coat::drop;
  double minutes = time.base;
  if (!pet.bath.none) {
    minutes += surface * (time.bath_per_m2 + time.dry_per_m2 * (long_to_dry ? 1 : 0.5));
  }
  if (pet.coat && info(*pet.coat).brush_before_water) minutes += surface * time.brush_per_m2;
  for (const TrimPart& part : pet.trim) {
    if (!cuts(part.entry.tool) || !workable(part.place, pet.alerts)) continue;
    const bool clipper = std::holds_alternative<Clip>(part.entry.tool) ||
                         std::holds_alternative<CombOver>(part.entry.tool);
    minutes += clipper ? time.clip_per_part : time.scissor_per_part;
  }
  return spread_about(minutes, time.spread);
}
}  // namespace

std::optional<Duration> duration(const Salon& salon, const Pet& pet, std::optional<Mass> weight,
                                 std::span<const Visit* const> history) {
  std::vector<double> own;
  for (const Visit* const visit : history) {
    if (visit->minutes) own.push_back(static_cast<double>(visit->minutes->count()));
  }
  std::ranges::sort(own);
  if (own.empty()) return by_formula(salon, pet, weight);
  const int visits = static_cast<int>(own.size());
  if (visits == 1) {
    Duration out = spread_about(own[0], salon.time.spread);
    out.visits = 1;
    return out;
  }
  const bool quartiles = own.size() >= enough_for_quartiles;
  return Duration{whole(quantile(own, 0.5)), whole(quantile(own, quartiles ? 0.25 : 0)),
                  whole(quantile(own, quartiles ? 0.75 : 1)), visits};
}

Duration total(std::span<const Duration> all) {
  Duration out;
  for (const Duration& one : all) {
    out.expected += one.expected;
    out.low += one.low;
    out.high += one.high;
    out.visits += one.visits;
  }
  return out;
}
}  // namespace furnish
