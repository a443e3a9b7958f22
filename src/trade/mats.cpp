#include "trade/mats.h"

#include <array>
#include <cstddef>

namespace furnish {
namespace {
constexpr std::array<std::string_view, worst_mats + 1> grades{
    "none",
    "tangles that the comb opens",
    "mats that fingers and comb open",
    "mats down to the skin that have to be cut out",
    "felted to the skin in one piece",
};
}  // namespace

std::string_view mat_grade(int grade) {
  return grades.at(static_cast<std::size_t>(grade));
}
}  // namespace furnish
