#include "trade/method.h"

#include <array>
#include <utility>

namespace furnish {
namespace {
using enum Method;
struct Row {
  Method method;
  std::string_view key;
};
constexpr std::array<Row, method_count> table{{
    {before_bath, "before-bath"},
    {conditioner_double, "conditioner-double"},
    {rinse, "rinse"},
    {damp_brush_out, "damp-brush-out"},
    {nails, "nails"},
    {pads, "pads"},
    {feet, "feet"},
    {sanitary, "sanitary"},
    {breeches, "breeches"},
    {tail, "tail"},
    {belly_and_chest, "belly-and-chest"},
    {ears_straight, "ears-straight"},
    {anywhere, "anywhere"},
    {look, "look"},
    {wash_first, "wash-first"},
    {ears_natural, "ears-natural"},
    {ears_rounded, "ears-rounded"},
    {ears_tassel, "ears-tassel"},
    {ears_shaved, "ears-shaved"},
    {tail_natural, "tail-natural"},
    {tail_flag, "tail-flag"},
    {tail_carrot, "tail-carrot"},
    {tail_tidied, "tail-tidied"},
    {feet_natural, "feet-natural"},
    {feet_cat_foot, "feet-cat-foot"},
    {feet_round, "feet-round"},
    {feet_clean, "feet-clean"},
    {nails_grind, "nails-grind"},
    {nails_leave, "nails-leave"},
}};

consteval bool in_order() {
  for (std::size_t i = 0; i < table.size(); ++i) {
    if (static_cast<std::size_t>(table[i].method) != i) return false;
  }
  return true;
}
static_assert(in_order(), "one row a method, in the order of the enumeration");
}  // namespace

std::string_view key(Method method) {
  return table[static_cast<std::size_t>(method)].key;
}

bool needs_standing(Method method) {
  return method == feet_round || method == feet_cat_foot || method == belly_and_chest ||
         method == look;
}

bool suits(Method method, const Tool& tool) {
  const auto* const shears = std::get_if<Scissor>(&tool);
  switch (method) {
    case breeches:
      return shears != nullptr &&
             (shears->shears == Shears::thinning || shears->shears == Shears::blending);
    case feet:
    case tail:
    case belly_and_chest:
    case ears_straight:
    case ears_rounded:
    case tail_flag:
    case tail_carrot:
    case feet_natural:
    case feet_cat_foot:
    case feet_round:
      return shears != nullptr;
    case ears_shaved:
    case feet_clean:
      return std::holds_alternative<Clip>(tool) || std::holds_alternative<CombOver>(tool);
    default:
      return true;
  }
}

std::optional<Method> method_of(Region region) {
  switch (region) {
    case Region::pads:
      return Method::pads;
    case Region::feet:
      return Method::feet;
    case Region::sanitary:
      return Method::sanitary;
    case Region::breeches:
      return Method::breeches;
    case Region::tail:
      return Method::tail;
    case Region::belly:
    case Region::chest:
      return Method::belly_and_chest;
    default:
      return std::nullopt;
  }
}
}  // namespace furnish
