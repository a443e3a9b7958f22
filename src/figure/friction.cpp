#include "figure/friction.h"

#include <array>
#include <memory>

#include "figure/on_paper.h"
#include "figure/skeleton.h"

namespace furnish {
namespace {
// On the medium dog, whose outline skeleton.cpp has.
constexpr std::array<Vec, 7> on_medium{{
    {-25, 116},  // behind the ear
    {-17, 100},  // under the collar
    {7, 53},     // armpit
    {65, 57},    // groin
    {84, 70},    // behind the thigh
    {-13, 5},    // toes
    {80, 5},
}};

class Sign final : public Block {
 public:
  explicit Sign(Length height) : height_(height) {}
  Extent measure(Length, const Setting&) const override { return {height_, height_}; }
  void place(const Rect& box, const Setting&, Frame& frame) const override {
    draw_friction({box.left().in_mm() + box.size.width.in_mm() / 2,
                   box.top().in_mm() + box.size.height.in_mm() / 2},
                  height_.in_mm(), frame);
  }

 private:
  Length height_;
};
}  // namespace

std::vector<Vec> friction_points(const Build& build) {
  std::vector<Vec> out;
  for (const Vec at : on_medium) out.push_back(built(at, build));
  return out;
}

void draw_friction(Vec at, double size, Frame& frame) {
  const double line = 0.16 * size;
  frame.marks.emplace_back(
      PathMark{{circle(at, size / 2)}, Ink::paper, std::nullopt, {}, Dash::solid});
  frame.marks.emplace_back(PathMark{
      {circle(at, size / 2 - line)}, std::nullopt, Ink::text, Length::mm(line), Dash::solid});
  frame.marks.emplace_back(
      PathMark{{circle(at, 0.16 * size)}, Ink::text, std::nullopt, {}, Dash::solid});
}

BlockPtr friction_sign(Length height) {
  return std::make_shared<Sign>(height);
}
}  // namespace furnish
