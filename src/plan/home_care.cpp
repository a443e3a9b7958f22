#include "plan/home_care.h"

#include <algorithm>
#include <utility>

#include "plan/clinical.h"
#include "plan/closed_days.h"
#include "plan/places.h"
#include "trade/phrases.h"

namespace furnish {
namespace {
using std::chrono::days;

constexpr int nails_after = 28, nails_before_visit = 10;
/// A limit that is passed within so many days counts as passed: nobody learns a rhythm for less.
constexpr int soon = 7;
/// The back is watched for a week after a bath, as the page says.
constexpr int watched_after_bath = 7;
/// Without a visit to come the calendar shows this much.
constexpr int without_visit = 8 * 7;

/// How a coat is brushed at home under its mat-prone length and over it; without such a length,
/// always as under it. Common practice, no source.
struct Ways {
  HowOften under, over;
};
Ways ways(Coat coat) {
  switch (coat) {
    case Coat::double_coat:
    case Coat::curly:
      return {HowOften::three_a_week, HowOften::daily};
    case Coat::drop:
    case Coat::silky:
      return {HowOften::every_other_day, HowOften::daily};
    case Coat::wire:
    case Coat::smooth:
      return {HowOften::weekly, HowOften::weekly};
    case Coat::hairless:
      break;
  }
  return {HowOften::never, HowOften::never};
}

bool sheds(const Visit* latest) {
  if (latest == nullptr) return false;
  const auto heavy = [](const std::string& words) {
    return affirms(words, "heavy") || affirms(words, "blowing") || affirms(words, "tuft");
  };
  return heavy(latest->came_in.shedding.value) ||
         std::ranges::any_of(latest->came_in.regions,
                             [&](const RegionState& state) { return heavy(state.shedding.value); });
}

class Planner {
 public:
  Planner(const Salon& salon, const Pet& pet, const Plan& plan, const Visit* latest, Date today,
          Date since)
      : salon_(salon), pet_(pet), plan_(plan), latest_(latest), today_(today), since_(since) {}

  HomeCare make() {
    HomeCare out;
    out.shedding = sheds(latest_);
    if (plan_.next_visit && plan_.next_visit->date > today_) out.visit = plan_.next_visit->date;
    last_ =
        std::min(out.visit.value_or(today_ + days(without_visit)), today_ + days(most_care_days));
    if (pet_.coat) out.zones = zones(*pet_.coat, out.shedding);
    out.avoided = left_alone();
    out.nails = nails(out.visit);
    out.tidy = tidy(out.visit);
    fill_days(out);
    out.bath = home_bath();
    out.bathed = bathed();
    out.heat = must_not_overheat(pet_, plan_.health.age_group);
    return out;
  }

 private:
  std::vector<BrushZone> zones(Coat coat, bool shedding) const {
    const Ways way = ways(coat);
    if (way.under == HowOften::never) return {};
    const auto limit = info(coat).mats;
    std::vector<Place> now, later, never;
    std::optional<Date> from;
    for (const RegionGrowth& row : plan_.growth) {
      const auto place = brushable(row.place);
      if (!is_brushed(row.place.region) || !place) continue;
      const auto until = limit ? days_until_over(row, *limit) : std::nullopt;
      const Date over = row.since + days(std::max(until.value_or(0), 0) + 1);
      if (until && (*until < 0 || over < today_ + days(soon))) {
        now.push_back(*place);
      } else if (until && over < last_) {
        later.push_back(*place);
        from = std::min(from.value_or(over), over);
      } else {
        never.push_back(*place);
      }
    }
    // Where most of it changes, all of it does: that is one thing to remember.
    if (from && later.size() > never.size()) {
      std::ranges::copy(std::exchange(never, {}), std::back_inserter(later));
    }
    const HowOften base = shedding ? HowOften::daily : way.under;
    std::vector<BrushZone> out;
    add(out, now, way.over, std::nullopt, way.over, limit);
    if (from) add(out, later, base, from, way.over, limit);
    add(out, never, base, std::nullopt, base, std::nullopt);
    const bool anywhere = std::ranges::any_of(regions(), [&](const RegionInfo& one) {
      return is_brushed(one.region) && brushable({one.region, Side::both});
    });
    if (plan_.growth.empty() && anywhere) {
      out.push_back({{}, base, std::nullopt, base, std::nullopt});
    }
    return out;
  }

  /// What of a place an owner may brush; empty if nothing.
  std::optional<Place> brushable(Place place) const {
    auto out = workable(place, pet_.alerts);
    for (const MattedPlace& one : plan_.mats_left) {
      if (out) out = without(*out, one.place);
    }
    return out;
  }

  std::vector<Place> left_alone() const {
    std::vector<Place> out;
    for (const Alert& alert : pet_.alerts) {
      for (const Located<Place>& avoid : alert.avoid) {
        if (is_brushed(avoid.value.region)) out.push_back(avoid.value);
      }
    }
    for (const MattedPlace& one : plan_.mats_left) {
      if (is_brushed(one.place.region)) out.push_back(one.place);
    }
    std::ranges::sort(out);
    const auto twice = std::ranges::unique(out);
    out.erase(twice.begin(), twice.end());
    return out;
  }

  static void add(std::vector<BrushZone>& to, const std::vector<Place>& places, HowOften now,
                  std::optional<Date> from, HowOften then, std::optional<Length> limit) {
    if (places.empty()) return;
    BrushZone zone{{}, now, from, then, limit};
    if (zone.now == zone.then) zone.from.reset();
    // What is brushed alike up to the visit is one zone, whatever its length.
    const auto alike = std::ranges::find_if(to, [&](const BrushZone& other) {
      return !zone.from && !other.from && other.now == zone.now;
    });
    BrushZone& into = alike != to.end() ? *alike : to.emplace_back(std::move(zone));
    std::ranges::copy(places, std::back_inserter(into.places));
    std::ranges::sort(into.places);
  }

  std::optional<Date> nails(std::optional<Date> visit) const {
    const Date due = std::max(since_ + days(nails_after), today_ + days(1));
    if (visit && *visit - due < days(nails_before_visit)) return std::nullopt;
    return due;
  }

  std::optional<Date> tidy(std::optional<Date> visit) const {
    if (!visit || !pet_.style || !pet_.style->grown_out) return std::nullopt;
    const days interval = *visit - since_;
    if (*pet_.style->grown_out >= interval) return std::nullopt;
    const Date halfway = open_day(salon_, since_ + interval / 2);
    return since_ == today_ || halfway > today_ ? std::optional(halfway) : std::nullopt;
  }

  void fill_days(HomeCare& care) const {
    for (Date day = today_ + days(1); day <= last_; day += days(1)) {
      const int after = static_cast<int>((day - today_).count());
      CareDay one{day};
      one.visit = care.visit == day;
      one.nails = care.nails == day;
      one.tidy = care.tidy == day;
      for (const BrushZone& zone : care.zones) {
        const HowOften often = how_often(zone, day);
        if (one.visit || !brushes_on(often, after)) continue;
        (often == HowOften::daily ? one.daily : one.brush) = true;
      }
      care.days.push_back(one);
    }
  }

  std::optional<HomeBathPlan> home_bath() const {
    if (!pet_.home.bath_every || !plan_.mats_left.empty()) return std::nullopt;
    HomeBathPlan out{pet_.home.bath_every->value, {}, pet_.home.bottle, std::nullopt};
    if (!pet_.home.product) return out;
    const Product& product = pet_.home.product->product;
    out.product = product.name;
    if (product.dilution && out.bottle) {
      out.mix = measurable(parts_of(*out.bottle, product.dilution->value), salon_.units);
    }
    return out;
  }

  bool bathed() const {
    if (today_ - since_ > days(watched_after_bath)) return false;
    if (latest_ != nullptr && latest_->date.value == since_) return was_bathed(*latest_);
    return !pet_.bath.none;
  }

  const Salon& salon_;
  const Pet& pet_;
  const Plan& plan_;
  const Visit* latest_;
  Date today_, since_, last_{};
};
}  // namespace

bool is_brushed(Region region) {
  return region != Region::pads && region != Region::sanitary && region != Region::eyes &&
         region != Region::feet && region != Region::muzzle;
}

bool was_bathed(const Visit& visit) {
  // What it was begun with is no bath that was given.
  if (visit.work == Work::not_done) {
    return std::ranges::find(visit.did, DonePart::bath) != visit.did.end();
  }
  return std::ranges::any_of(
      visit.products, [](const ProductUse& use) { return use.product.kind != ProductKind::spray; });
}

HowOften how_often(const BrushZone& zone, Date day) {
  return zone.from && day >= *zone.from ? zone.then : zone.now;
}

bool brushes_on(HowOften often, int after) {
  switch (often) {
    case HowOften::daily:
      return true;
    case HowOften::every_other_day:
      return after % 2 == 0;
    case HowOften::three_a_week:
      return after % 7 == 2 || after % 7 == 4 || after % 7 == 6;
    case HowOften::weekly:
      return after % 7 == 0;
    case HowOften::never:
      break;
  }
  return false;
}

HomeCare home_care(const Salon& salon, const Pet& pet, const Plan& plan, const Visit* latest,
                   Date today, std::optional<Date> since) {
  return Planner(salon, pet, plan, latest, today, since.value_or(today)).make();
}
}  // namespace furnish
