#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "base/measures.h"
#include "base/source.h"
#include "model/pet.h"
#include "model/salon.h"

namespace furnish {

/// m², of a dog: 0.101 · kg^(2/3) (from a secondary copy of the published formula; real dogs differ
/// by -9 to +19 %: Girens et al., Journal of Veterinary Internal Medicine 2019).
double body_surface_m2(Mass);

/// Product and water that make up `total`; the two add up exactly.
struct Parts {
  Volume total, product, water;
  friend constexpr bool operator==(Parts, Parts) = default;
};
/// Exact, to a nanolitre: product is the dilution's share of all.
Parts parts_of(Volume total, Dilution);
/// The product to what a person can measure, at least one measure and never over the total: 5 ml,
/// or a quarter of a US fluid ounce. Water makes up the rest.
Parts measurable(Parts exact, Units);

enum class BathSlot : std::uint8_t { shampoo, conditioner, other };

/// One product of the bath.
struct Mix {
  BathSlot slot = BathSlot::shampoo;
  ProductUse use;
  std::optional<Parts> exact, measured;  ///< of one bottle; empty if nobody said how it is diluted
  bool neat = false;                     ///< used as it is: no water
  bool coarse = false;           ///< the measured product is more than a tenth off the exact one
  std::optional<Volume> needed;  ///< of the mix, for this dog; empty without weight or coat
  std::optional<int> bottles;    ///< whole bottles that hold `needed`
  std::optional<Parts> for_dog;  ///< exact parts of `needed`
  std::optional<std::chrono::seconds>
      dwell;                             ///< planned; a medicated product's default where none is
  std::optional<std::chrono::days> age;  ///< since the bottle in use was mixed
};

struct BathPlan {
  bool none = false;  ///< no bath at this visit
  Volume bottle;      ///< the salon's, else 500 ml or 16 US fl oz
  std::optional<double> surface_m2;
  std::vector<Mix> mixes;  ///< shampoo, conditioner, then others in the order of the file
  std::optional<std::chrono::minutes> rinse;  ///< after each product
};

/// `weight`: the newest known. Rinse: 5 minutes a square metre, twice that in a coat that is
/// brushed before water, to a whole minute, at least 2 (common practice, no source).
BathPlan bath_plan(const Salon&, const Pet&, std::optional<Mass> weight, Date today);

/// What several baths take of one product in one dilution.
struct ProductTotal {
  std::string product;
  Parts parts;  ///< exact
  std::optional<Parts>
      measured;       ///< of one bottle, as a person measures it; empty: as on its label
  bool neat = false;  ///< used as it is: no water
  int bottles = 0;    ///< whole ones that hold `parts`
  int dogs = 0;       ///< counted in
  int unknown = 0;    ///< dogs that use it but whose share cannot be worked out
};
/// By name, then the stronger first. One salon's, so that all bottles are of one size; what is
/// mixed for one dog is used for the next of that day.
std::vector<ProductTotal> bath_totals(std::span<const BathPlan>);
}  // namespace furnish
