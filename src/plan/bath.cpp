#include "plan/bath.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "trade/health.h"

namespace furnish {
namespace {
constexpr double rinse_minutes_per_m2 = 5;
constexpr std::chrono::minutes shortest_rinse{2};

std::int64_t rounded(double x) {
  return static_cast<std::int64_t>(std::floor(x + 0.5));
}

/// What a person can measure: 5 ml, or a quarter of a US fluid ounce (29.5735295625 / 4 ml).
Volume measure(Units units) {
  return units == Units::metric ? Volume::ml(5) : Volume::us_fl_oz(0.25);
}

bool thick_coat(const Pet& pet) {
  return pet.coat && info(*pet.coat).brush_before_water;
}

std::optional<std::chrono::seconds> dwell_of(const ProductUse& use) {
  if (const auto planned = use.planned_dwell()) return planned;
  if (use.product.medicated && !use.product.unread) return medicated_dwell;
  return std::nullopt;
}

std::optional<Volume> mix_needed(const Salon& salon, const Pet& pet,
                                 std::optional<double> surface_m2) {
  if (!surface_m2 || !pet.coat || salon.unknown(SalonPart::mixing)) return std::nullopt;
  const double own = salon.mix_per_m2[static_cast<std::size_t>(*pet.coat)];
  const double litres_per_m2 = own > 0 ? own : info(*pet.coat).mix;
  return Volume::ml(1000 * litres_per_m2 * *surface_m2);
}

int whole_bottles(Volume mix, Volume bottle) {
  return static_cast<int>((mix.nl() + bottle.nl() - 1) / bottle.nl());
}

/// Where on the dog a product goes decides how much of it: sprays and the like are not poured.
bool poured(const Mix& mix) {
  return mix.slot != BathSlot::other || mix.use.product.kind == ProductKind::shampoo ||
         mix.use.product.kind == ProductKind::conditioner;
}

Mix make_mix(BathSlot slot, const ProductUse& use, const Salon& salon, const BathPlan& bath,
             std::optional<Volume> needed, Date today) {
  Mix mix;
  mix.slot = slot;
  mix.use = use;
  mix.dwell = dwell_of(use);
  if (use.product.mixed && *use.product.mixed <= today) mix.age = today - *use.product.mixed;
  if (poured(mix)) mix.needed = needed;
  if (mix.needed) mix.bottles = whole_bottles(*mix.needed, bath.bottle);
  if (!use.product.dilution) return mix;
  const Dilution dilution = use.product.dilution->value;
  mix.neat = dilution.product >= dilution.total;
  mix.exact = parts_of(bath.bottle, dilution);
  mix.measured = mix.neat ? mix.exact : measurable(*mix.exact, salon.units);
  const double exact = static_cast<double>(mix.exact->product.nl());
  const double off = static_cast<double>(mix.measured->product.nl()) - exact;
  mix.coarse = std::abs(off) > exact / 10;
  if (mix.needed) mix.for_dog = parts_of(*mix.needed, dilution);
  return mix;
}
}  // namespace

double body_surface_m2(Mass weight) {
  return 0.101 * std::pow(weight.in_kg(), 2.0 / 3.0);
}

Parts parts_of(Volume total, Dilution dilution) {
  const double nl = static_cast<double>(total.nl()) * dilution.share();
  const Volume product = std::min(Volume::nanolitres(rounded(nl)), total);
  return {total, product, total - product};
}

Parts measurable(Parts exact, Units units) {
  const double step = static_cast<double>(measure(units).nl());
  const double steps =
      std::max(1.0, std::floor(static_cast<double>(exact.product.nl()) / step + 0.5));
  const std::int64_t quarters = rounded(steps);
  const Volume product =
      std::min(units == Units::metric ? Volume::ml(5.0 * static_cast<double>(quarters))
                                      : Volume::us_fl_oz(static_cast<double>(quarters) / 4),
               exact.total);
  return {exact.total, product, exact.total - product};
}

BathPlan bath_plan(const Salon& salon, const Pet& pet, std::optional<Mass> weight, Date today) {
  BathPlan out;
  out.none = pet.bath.none;
  const Volume usual = salon.units == Units::metric ? Volume::ml(500) : Volume::us_fl_oz(16);
  out.bottle = salon.kit && salon.kit->bottle ? *salon.kit->bottle : usual;
  if (weight) out.surface_m2 = body_surface_m2(*weight);
  if (out.none) return out;
  const auto needed = mix_needed(salon, pet, out.surface_m2);
  const auto add = [&](BathSlot slot, const ProductUse& use) {
    out.mixes.push_back(make_mix(slot, use, salon, out, needed, today));
  };
  if (pet.bath.shampoo) add(BathSlot::shampoo, *pet.bath.shampoo);
  if (pet.bath.conditioner) add(BathSlot::conditioner, *pet.bath.conditioner);
  for (const ProductUse& use : pet.bath.others) add(BathSlot::other, use);
  if (out.surface_m2) {
    const double minutes = rinse_minutes_per_m2 * (thick_coat(pet) ? 2 : 1) * *out.surface_m2;
    out.rinse = std::max(shortest_rinse, std::chrono::minutes(rounded(minutes)));
  }
  return out;
}

std::vector<ProductTotal> bath_totals(std::span<const BathPlan> baths) {
  std::map<std::pair<std::string, double>, ProductTotal> by_product;
  for (const BathPlan& bath : baths) {
    for (const Mix& mix : bath.mixes) {
      if (!poured(mix)) continue;
      const auto& dilution = mix.use.product.dilution;
      ProductTotal& total =
          by_product[{mix.use.product.name, dilution ? -dilution->value.share() : 0}];
      total.product = mix.use.product.name;
      total.measured = mix.measured;
      total.neat = mix.neat;
      if (!mix.for_dog) {
        ++total.unknown;
        continue;
      }
      ++total.dogs;
      total.parts = {total.parts.total + mix.for_dog->total,
                     total.parts.product + mix.for_dog->product,
                     total.parts.water + mix.for_dog->water};
      total.bottles = whole_bottles(total.parts.total, bath.bottle);
    }
  }
  std::vector<ProductTotal> out;
  for (auto& [product, total] : by_product) out.push_back(std::move(total));
  return out;
}
}  // namespace furnish
