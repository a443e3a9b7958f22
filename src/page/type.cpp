#include "page/type.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace furnish {
namespace {
constexpr double radians_per_minute = std::numbers::pi / (180 * 60);
}

std::string_view name(Role role) {
  constexpr std::array<std::string_view, role_count> names{"title",  "subtitle", "heading", "alert",
                                                           "action", "body",     "label",   "foot"};
  return names[static_cast<std::size_t>(role)];
}

Length capital_height(Length distance, double arc_minutes) {
  return scaled(distance, 2 * std::tan(arc_minutes * radians_per_minute / 2));
}

double arc_minutes(Length distance, Length capital_height) {
  return 2 * std::atan(capital_height / distance / 2) / radians_per_minute;
}

TypeSize TypeSize::at_least(double points) {
  // A millionth of slack, so that a size that is a quarter point but for rounding stays there.
  return quarters(static_cast<int>(std::ceil(points * 4 - 1e-6)));
}

TypeScale::TypeScale(std::span<const TypeRole> roles, double capital_em, int step, int steps) {
  const double grown = steps > 0 ? static_cast<double>(step) / steps : 0;
  for (const TypeRole& role : roles) {
    const double minutes =
        least_arc_minutes +
        (std::max(role.most_arc_minutes, least_arc_minutes) - least_arc_minutes) * grown;
    // In full precision: a capital rounded to a micrometre could fall under the minimum.
    const double millimetres =
        role.distance.in_mm() * 2 * std::tan(minutes * radians_per_minute / 2) / capital_em;
    sizes_[static_cast<std::size_t>(role.role)] = std::max(
        TypeSize::at_least(millimetres * 72 / 25.4), TypeSize::at_least(role.least_points));
  }
  for (TypeSize& size : sizes_) {
    if (size == TypeSize{}) size = (*this)[Role::body];
  }
}
}  // namespace furnish
