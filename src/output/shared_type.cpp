#include "output/shared_type.h"

#include <pango/pangocairo.h>

#include <algorithm>

#include "page/shaped_line.h"

namespace furnish {
namespace {
const void* face_of(PangoFont* font) {
  cairo_scaled_font_t* const scaled = pango_cairo_font_get_scaled_font(PANGO_CAIRO_FONT(font));
  return scaled == nullptr ? nullptr : cairo_scaled_font_get_font_face(scaled);
}
}  // namespace

bool SharedType::is_new(const ShapedLine& line) {
  bool any = false;
  for (const PangoGlyphItem* run : line.glyph_items()) {
    const void* const face = face_of(run->item->analysis.font);
    for (int i = 0; i < run->glyphs->num_glyphs; ++i) {
      any = met_.emplace(face, run->glyphs->glyphs[i].glyph).second || any;
    }
  }
  return any;
}

void SharedType::meet(const Frame& page) {
  for (const Mark& mark : page.marks) {
    const auto* text = std::get_if<TextMark>(&mark);
    if (text != nullptr && is_new(*text->line)) lines_.push_back(*text);
  }
}

Frame SharedType::page() const {
  Frame out{{210_mm, 297_mm}, {}};
  for (TextMark line : lines_) {
    line.baseline = {10_mm, 10_mm};
    out.marks.emplace_back(std::move(line));
  }
  return out;
}
}  // namespace furnish
