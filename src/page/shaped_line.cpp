#include "page/shaped_line.h"

#include <hb.h>
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

/// Pango blanks the space that a line break took. Cairo would write it as an empty span that says
/// it stands for a space, after which Poppler loses the rest of the element; as a glyph without
/// width it is plain text that keeps the words of two lines apart.
void give_back_space(PangoLayoutLine* line) {
  const char* text = pango_layout_get_text(line->layout);
  for (GSList* at = line->runs; at != nullptr; at = at->next) {
    const auto* run = static_cast<PangoLayoutRun*>(at->data);
    for (int i = 0; i < run->glyphs->num_glyphs; ++i) {
      PangoGlyph& glyph = run->glyphs->glyphs[i].glyph;
      if (glyph != PANGO_GLYPH_EMPTY) continue;
      hb_codepoint_t space = 0;
      if (text[run->item->offset + run->glyphs->log_clusters[i]] == ' ' &&
          hb_font_get_nominal_glyph(pango_font_get_hb_font(run->item->analysis.font), ' ',
                                    &space)) {
        glyph = space;
      }
    }
  }
}

/// The layout's own line, by the call that says it will be changed: here, once, before anybody has
/// seen it.
PangoLayoutLine* finished_line(PangoLayout* layout, int number) {
  PangoLayoutLine* line = pango_layout_line_ref(pango_layout_get_line(layout, number));
  give_back_space(line);
  return line;
}
}  // namespace

ShapedLine::ShapedLine(PangoLayout* layout, int number, std::vector<ShapedRun> runs)
    : layout_(PANGO_LAYOUT(g_object_ref(layout))),
      line_(finished_line(layout, number)),
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
