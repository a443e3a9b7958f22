#include "plan/growth.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "base/diagnostic.h"
#include "plan/least_squares.h"
#include "plan/places.h"
#include "trade/coat.h"

namespace furnish {
namespace {
/// From how many pairs on the t-interval is of use.
constexpr std::size_t enough_pairs = 3;
/// A ruler in the coat is read to about this; common practice, no source.
constexpr double reading_error_um = 1000;
/// Half the published range of coats that keep growing, for a pet whose coat nobody named.
constexpr double usual_half_width = 100;

struct Pair {
  Region region;
  double days, grown;  ///< micrometres
  const Visit *from, *to;
};

std::optional<Length> stops_at(const Pet& pet, Region region) {
  if (!pet.coat || info(*pet.coat).keeps_growing) return std::nullopt;
  return natural_length(*pet.coat, region);
}

std::vector<Pair> pairs_of(const Pet& pet, std::span<const Visit* const> history,
                           DiagnosticSink& sink) {
  std::vector<Pair> out;
  for (std::size_t i = 1; i < history.size(); ++i) {
    const Visit &from = *history[i - 1], &to = *history[i];
    const auto days = (to.date.value - from.date.value).count();
    if (days <= 0) continue;
    for (const RegionState& back : to.came_in.regions) {
      const RegionState* const left = measured_at(from.went_out, back.place);
      if (!back.length || left == nullptr) continue;
      if (*back.length < *left->length) {
        sink.warning("coat-shrank", back.span,
                     fmt::format("the coat of the {} came back shorter than it left on {}",
                                 to_text(back.place), to_iso(from.date.value)))
            .hint = "trimmed between, or measured elsewhere; not counted as growth";
        continue;
      }
      const auto stop = stops_at(pet, back.place.region);
      if (stop && *back.length >= *stop) continue;
      out.push_back({back.place.region, static_cast<double>(days),
                     static_cast<double>((*back.length - *left->length).um()), &from, &to});
    }
  }
  return out;
}

std::optional<Rate> published(const Pet& pet) {
  if (!pet.coat) return std::nullopt;
  const GrowthRate rate = info(*pet.coat).growth;
  return Rate{static_cast<double>(rate.low), static_cast<double>(rate.high)};
}

Rate measured(const std::vector<Pair>& pairs, const std::optional<Rate>& usual) {
  std::vector<double> days, grown;
  std::set<const Visit*> visits;
  double squares = 0, slowest = pairs[0].grown / pairs[0].days, fastest = slowest;
  for (const Pair& pair : pairs) {
    days.push_back(pair.days);
    grown.push_back(pair.grown);
    visits.insert({pair.from, pair.to});
    squares += pair.days * pair.days;
    slowest = std::min(slowest, pair.grown / pair.days);
    fastest = std::max(fastest, pair.grown / pair.days);
  }
  const OriginFit fit = fit_through_origin(days, grown);
  Rate rate{fit.slope, fit.slope, RateBasis::measured, static_cast<int>(pairs.size()),
            static_cast<int>(visits.size())};
  if (pairs.size() < enough_pairs) {
    const double half = usual ? (usual->high - usual->low) / 2 : usual_half_width;
    rate.low = std::min(fit.slope - half, slowest);
    rate.high = std::max(fit.slope + half, fastest);
  } else {
    const double sd = std::max(fit.slope_sd, reading_error_um / std::sqrt(squares));
    const double half = student_t_95(fit.degrees_of_freedom) * sd;
    rate.low = fit.slope - half;
    rate.high = fit.slope + half;
  }
  rate.low = std::max(rate.low, 0.0);
  return rate;
}

Length grown(Length from, double um_per_day, std::int64_t days) {
  return from + Length::micrometres(
                    static_cast<std::int64_t>(um_per_day * static_cast<double>(days) + 0.5));
}

struct Left {
  LengthRange range;
  bool measured;
};

/// What was left at the last visit: measured, else by what was done otherwise than planned, else by
/// the trim.
Left left_at(const PartLength& row, const Visit* last, const Salon& salon, const Pet& pet) {
  if (last == nullptr) return {*row.left, false};
  if (const RegionState* const state = measured_at(last->went_out, row.place)) {
    return {{*state->length, *state->length}, true};
  }
  for (const PlacedEntry& done : last->done) {
    if (!meets(done.place, row.place)) continue;
    const TrimPart part{row.place, done.entry, SaidBy::pet, std::nullopt};
    if (const auto left = length_left(part, salon.kit, pet.coat).left) return {*left, false};
  }
  return {*row.left, false};
}
}  // namespace

LengthRange length_on(const RegionGrowth& row, Date day) {
  const auto days = std::max<std::int64_t>(0, (day - row.since).count());
  LengthRange out{grown(row.left.low, row.rate.low, days),
                  grown(row.left.high, row.rate.high, days)};
  if (row.natural) {
    out.low = std::min(out.low, std::max(*row.natural, row.left.low));
    out.high = std::min(out.high, std::max(*row.natural, row.left.high));
  }
  return out;
}

std::optional<int> days_to_reach(Length from, Length to, double um_per_day) {
  if (from >= to) return 0;
  if (um_per_day <= 0) return std::nullopt;
  const double days = static_cast<double>((to - from).um()) / um_per_day;
  // Beyond a century it is never, and the number stays an int.
  if (days > 36'525) return std::nullopt;
  return static_cast<int>(std::ceil(days));
}

std::optional<int> days_until_over(const RegionGrowth& row, Length limit) {
  if (row.natural && std::max(*row.natural, row.left.high) <= limit) return std::nullopt;
  const auto past = days_to_reach(row.left.high, limit + 1_um, row.rate.high);
  if (!past) return std::nullopt;
  return *past - 1;
}

std::vector<RegionGrowth> growth(const Salon& salon, const Pet& pet,
                                 std::span<const PartLength> lengths,
                                 std::span<const Visit* const> history, Date today,
                                 DiagnosticSink& sink) {
  const std::vector<Pair> pairs = pairs_of(pet, history, sink);
  const std::optional<Rate> usual = published(pet);
  std::map<Region, std::vector<Pair>> by_region;
  for (const Pair& pair : pairs) by_region[pair.region].push_back(pair);
  const Visit* const last = history.empty() ? nullptr : history.back();
  std::vector<RegionGrowth> out;
  for (const PartLength& row : lengths) {
    if (!row.left) continue;
    const auto own = by_region.find(row.place.region);
    std::optional<Rate> rate = usual;
    if (own != by_region.end() && own->second.size() >= enough_pairs) {
      rate = measured(own->second, usual);
    } else if (!pairs.empty()) {
      rate = measured(pairs, usual);
    }
    if (!rate) continue;
    const auto [left, was_measured] = left_at(row, last, salon, pet);
    RegionGrowth growth_row{row.place, last != nullptr ? last->date.value : today,
                            left,      was_measured,
                            *rate,     stops_at(pet, row.place.region),
                            {}};
    growth_row.today = length_on(growth_row, today);
    out.push_back(growth_row);
  }
  return out;
}
}  // namespace furnish
