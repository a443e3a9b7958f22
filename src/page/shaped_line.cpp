#include "page/shaped_line.h"

#include <pango/pango.h>

#include <algorithm>
#include <cmath>

namespace furnish {
namespace {
constexpr double micrometres_per_unit = 25400.0 / 72 / PANGO_SCALE;

Length down(int units) {
  return Length::micrometres(std::llround(std::floor(units * micrometres_per_unit)));
}
Length up(int units) {
  return Length::micrometres(std::llround(std::ceil(units * micrometres_per_unit)));
}

Rect outwards(const PangoRectangle& r) {
  if (r.width <= 0 || r.height <= 0) return {};
  const Point corner{down(r.x), down(r.y)};
  return {corner, {up(r.x + r.width) - corner.x, up(r.y + r.height) - corner.y}};
}
}  // namespace

ShapedLine::ShapedLine(PangoLayout* layout, int number, std::vector<ShapedRun> runs)
    : layout_(PANGO_LAYOUT(g_object_ref(layout))),
      line_(pango_layout_line_ref(pango_layout_get_line_readonly(layout, number))),
      runs_(std::move(runs)) {
  text_.assign(pango_layout_get_text(layout) + line_->start_index,
               static_cast<std::size_t>(line_->length));
  while (text_.ends_with(' ')) text_.pop_back();
  std::erase_if(runs_, [&](ShapedRun& run) {
    run.end = std::min(run.end, text_.size());
    return run.begin >= run.end;
  });
  PangoRectangle logical{};
  pango_layout_line_get_extents(line_, nullptr, &logical);
  // An advance may be nothing where the height is not, so this is not outwards().
  const Point corner{down(logical.x), down(logical.y)};
  logical_ = {
      corner,
      {up(logical.x + logical.width) - corner.x, up(logical.y + logical.height) - corner.y}};
}

ShapedLine::~ShapedLine() {
  pango_layout_line_unref(line_);
  g_object_unref(layout_);
}

Rect ShapedLine::ink() const {
  PangoRectangle ink{};
  pango_layout_line_get_extents(line_, &ink, nullptr);
  return outwards(ink);
}

double ShapedLine::points() const {
  double most = 0;
  for (const ShapedRun& run : runs_) most = std::max(most, run.points);
  return most;
}
}  // namespace furnish
