#include "plan/salon_unread.h"

#include <fmt/format.h>

#include <algorithm>

namespace furnish {
namespace {
/// The products of the bath that nobody can read.
std::vector<std::string> unread_products(const Salon& salon, const Pet& pet) {
  std::vector<std::string> out;
  const auto look = [&](const ProductUse& use) {
    if (!use.product.unread) return;
    std::string name = salon.unknown(SalonPart::products)
                           ? "[products]"
                           : fmt::format("[products.{}]", use.product.key);
    if (std::ranges::find(out, name) == out.end()) out.push_back(std::move(name));
  };
  if (pet.bath.none) return out;
  if (pet.bath.shampoo) look(*pet.bath.shampoo);
  if (pet.bath.conditioner) look(*pet.bath.conditioner);
  std::ranges::for_each(pet.bath.others, look);
  return out;
}

std::string heading(SalonPart part) {
  switch (part) {
    case SalonPart::closed:
      return "[salon] closed";
    case SalonPart::kit:
      return "[kit]";
    case SalonPart::vaccinations:
      return "[vaccinations]";
    case SalonPart::blends:
      return "[blends]";
    case SalonPart::time:
      return "[time]";
    case SalonPart::mixing:
      return "[mixing]";
    case SalonPart::rules:     // on the wall's page alone
    case SalonPart::products:  // where the pet has one of them
      break;
  }
  return {};
}
}  // namespace

std::vector<std::string> salon_unread(const Salon& salon, const Pet& pet) {
  std::vector<std::string> out;
  for (const SalonPart part : salon.unread) {
    if (std::string name = heading(part); !name.empty()) out.push_back(std::move(name));
  }
  std::ranges::move(unread_products(salon, pet), std::back_inserter(out));
  return out;
}
}  // namespace furnish
