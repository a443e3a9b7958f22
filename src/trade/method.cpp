#include "trade/method.h"

#include <array>
#include <utility>

namespace furnish {
namespace {
using enum Method;
struct Row {
  Method method;
  std::string_view key, how;
};
constexpr std::array<Row, method_count> table{{
    {before_bath, "before-bath",
     "brush, then comb to the skin, layer by layer, before any water; thickest at ruff, breeches, "
     "behind the ears"},
    {conditioner_double, "conditioner-double",
     "comb it through with the lay in the tub, coarse end first, then fine: a wet, conditioned "
     "coat "
     "stretches and gives up its undercoat without pulling"},
    {rinse, "rinse",
     "until nothing slips between the fingers; head too, from the top down, ears folded shut"},
    {damp_brush_out, "damp-brush-out",
     "from the head backward with a slicker, then the comb must glide"},
    {nails, "nails", "after the bath, when they are soft and split less"},
    {pads, "pads",
     "only the hair one stands on; blade flat; big pad from both sides in a V, never straight in"},
    {feet, "feet",
     "brush up between the toes, cut to the length of the hair on top; then once round at the edge "
     "of the pad"},
    {sanitary, "sanitary",
     "tail up, skin in sight, short strokes away from the middle; comb up, take what stands out"},
    {breeches, "breeches", "thinners, comb up, take what pops out, comb down, look from behind"},
    {tail, "tail",
     "hand down to the last bone before any cut at the tip; then hold it straight out and take "
     "what "
     "hangs over"},
    {belly_and_chest, "belly-and-chest",
     "foot forward as in a step, not lifted high: that is how the line hangs when the dog moves; "
     "bring the chest into the front legs"},
    {ears_straight, "ears-straight",
     "fold the leather in half lengthwise, keep its edge between two fingers, cut what stands "
     "beyond "
     "them; then hold the ear forward and take what pops out on top; if unsure, leave them full"},
    {anywhere, "anywhere",
     "know where the skin is before the shears close: ears, vulva or prepuce, tuck-up, armpit"},
    {look, "look", "head level and weight on all feet when judging a line"},
}};

consteval bool in_order() {
  for (std::size_t i = 0; i < table.size(); ++i) {
    if (static_cast<std::size_t>(table[i].method) != i) return false;
  }
  return true;
}
static_assert(in_order(), "one row a method, in the order of the enumeration");
}  // namespace

std::string_view how(Method method) {
  return table[static_cast<std::size_t>(method)].how;
}
std::string_view key(Method method) {
  return table[static_cast<std::size_t>(method)].key;
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
