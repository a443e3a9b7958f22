#include "page/shaped_line.h"

#include <hb.h>
#include <pango/pango.h>

#include <algorithm>
#include <cmath>

#include "page/open_face.h"

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
  const Point corner{down(r.x), down(r.y)};
  return {corner, {up(r.x + r.width) - corner.x, up(r.y + r.height) - corner.y}};
}

bool is_black(const PangoRectangle& r) {
  return r.width > 0 && r.height > 0;
}

/// The smallest that holds both.
PangoRectangle around(const PangoRectangle& a, const PangoRectangle& b) {
  const int x = std::min(a.x, b.x), y = std::min(a.y, b.y);
  return {x, y, std::max(a.x + a.width, b.x + b.width) - x,
          std::max(a.y + a.height, b.y + b.height) - y};
}

/// Pango blanks the space that a line break took. Cairo would write it as an empty span that says
/// it stands for a space, after which Poppler loses the rest of the element; as a glyph without
/// width it is plain text that keeps the words of two lines apart.
void give_back_space(const char* text, PangoGlyphItem* run) {
  for (int i = 0; i < run->glyphs->num_glyphs; ++i) {
    PangoGlyph& glyph = run->glyphs->glyphs[i].glyph;
    if (glyph != PANGO_GLYPH_EMPTY) continue;
    hb_codepoint_t space = 0;
    if (text[run->item->offset + run->glyphs->log_clusters[i]] == ' ' &&
        hb_font_get_nominal_glyph(pango_font_get_hb_font(run->item->analysis.font), ' ', &space)) {
      glyph = space;
    }
  }
}

std::string without_last_space(std::string bytes) {
  while (bytes.ends_with(' ')) bytes.pop_back();
  return bytes;
}

std::vector<ShapedRun> within(std::vector<ShapedRun> runs, std::size_t length) {
  std::erase_if(runs, [&](ShapedRun& run) {
    run.end = std::min(run.end, length);
    return run.begin >= run.end;
  });
  return runs;
}

using HeldFont = std::shared_ptr<PangoFont>;

HeldFont held_font(FontSet& fonts, const LineStretch& stretch) {
  PangoFont* const font = fonts.font(stretch.face, stretch.size);
  return font ? HeldFont(PANGO_FONT(g_object_ref(font)), g_object_unref) : nullptr;
}

/// To be freed by the caller.
PangoGlyphItem* glyph_item(PangoFont* font, const std::string& bytes, const LineStretch& stretch) {
  PangoItem* const item = pango_item_new();
  item->offset = static_cast<int>(stretch.begin);
  item->length = static_cast<int>(stretch.end - stretch.begin);
  item->num_chars = static_cast<int>(g_utf8_strlen(bytes.data() + stretch.begin, item->length));
  item->analysis.font = font ? PANGO_FONT(g_object_ref(font)) : nullptr;
  PangoGlyphString* const glyphs = pango_glyph_string_new();
  pango_glyph_string_set_size(glyphs, static_cast<int>(stretch.glyphs.size()));
  for (std::size_t i = 0; i < stretch.glyphs.size(); ++i) {
    const LineGlyph& from = stretch.glyphs[i];
    const bool first = i == 0 || stretch.glyphs[i - 1].at != from.at;
    glyphs->glyphs[i] = {from.glyph, {from.width, from.x, from.y}, {first, 0}};
    glyphs->log_clusters[i] = static_cast<int>(from.at - stretch.begin);
  }
  auto* const made = g_slice_new0(PangoGlyphItem);
  made->item = item;
  made->glyphs = glyphs;
  return made;
}
}  // namespace

struct ShapedLine::Plain {
  std::string bytes;
  std::vector<LineStretch> stretches;
  std::vector<HeldFont> fonts;  ///< of the stretches
};

ShapedLine::ShapedLine(PangoLayout* layout, int number, std::vector<ShapedRun> runs)
    : layout_(g_object_ref(layout), g_object_unref), whole_text_(pango_layout_get_text(layout)) {
  // By the call that says it will be changed: here, once, before anybody has seen it.
  PangoLayoutLine* const line = pango_layout_get_line(layout, number);
  for (const GSList* at = line->runs; at != nullptr; at = at->next) {
    items_.push_back(static_cast<PangoGlyphItem*>(at->data));
    give_back_space(whole_text_, items_.back());
  }
  begins_at_ = static_cast<std::size_t>(line->start_index);
  from_right_ = line->resolved_dir == PANGO_DIRECTION_RTL;
  text_ = without_last_space({whole_text_ + begins_at_, static_cast<std::size_t>(line->length)});
  runs_ = within(std::move(runs), text_.size());
  PangoRectangle logical{};
  pango_layout_line_get_extents(line, nullptr, &logical);
  logical_ = outwards(logical);
}

ShapedLine::ShapedLine(FontSet& fonts, std::string bytes, std::vector<LineStretch> stretches,
                       std::vector<ShapedRun> runs)
    : plain_(new Plain{std::move(bytes), std::move(stretches), {}}),
      whole_text_(plain_->bytes.c_str()),
      begins_at_(0),
      from_right_(false),
      text_(without_last_space(plain_->bytes)),
      runs_(within(std::move(runs), text_.size())) {
  PangoRectangle logical{};
  for (const LineStretch& stretch : plain_->stretches) {
    plain_->fonts.push_back(held_font(fonts, stretch));
    for (const LineGlyph& glyph : stretch.glyphs) logical.width += glyph.width;
    const OpenFace& face = fonts.open_face(stretch.face);
    const double size = stretch.size.points();
    const int up = pango_units_from_double(face.ascent() * size),
              below = pango_units_from_double(face.descent() * size);
    logical = around(logical, {0, -up, 0, up + below});
  }
  logical_ = outwards(logical);
}

ShapedLine::~ShapedLine() {
  if (!plain_) return;
  for (PangoGlyphItem* const item : items_) pango_glyph_item_free(item);
}

const std::vector<PangoGlyphItem*>& ShapedLine::glyph_items() const {
  if (plain_ && items_.empty()) {
    for (std::size_t i = 0; i < plain_->stretches.size(); ++i) {
      items_.push_back(glyph_item(plain_->fonts[i].get(), plain_->bytes, plain_->stretches[i]));
    }
  }
  return items_;
}

Rect ShapedLine::ink() const {
  PangoRectangle all{};
  int pen = 0;
  for (PangoGlyphItem* const item : glyph_items()) {
    PangoRectangle ink{};
    pango_glyph_string_extents(item->glyphs, item->item->analysis.font, &ink, nullptr);
    ink.x += pen;
    ink.y -= item->y_offset;
    if (is_black(ink)) all = is_black(all) ? around(all, ink) : ink;
    pen += pango_glyph_string_get_width(item->glyphs);
  }
  return is_black(all) ? outwards(all) : Rect{};
}

double ShapedLine::points() const {
  double most = 0;
  for (const ShapedRun& run : runs_) most = std::max(most, run.points);
  return most;
}
}  // namespace furnish
