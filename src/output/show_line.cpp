#include "output/show_line.h"

#include <pango/pangocairo.h>

#include <algorithm>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "output/stand_ins.h"
#include "page/prepared_text.h"
#include "page/shaped_line.h"

namespace furnish {
namespace {
/// Neighbours in one font, as cairo takes them: glyphs from left to right.
struct Stretch {
  PangoFont* font;
  bool from_right;  ///< the line has letters from the right in it
  bool stands_in;   ///< it is a font for such letters, on a page from the right
  int offset;       ///< where the first of it is in the text
  std::vector<cairo_glyph_t> glyphs;
  std::vector<std::u32string> letters;  ///< what each glyph stands for
};

bool from_right(const PangoGlyphItem* run) {
  return run->item->analysis.level % 2 == 1;
}

bool is_mark(char32_t c) {
  return g_unichar_type(c) == G_UNICODE_NON_SPACING_MARK;
}

/// What the glyphs of a cluster stand for: a character each if there are as many of both; of a
/// ligature with marks the ligature has its letters and each other glyph a mark; else the one on
/// the side that reading begins has all. From the right a letter's marks come before it.
std::vector<std::u32string> shared_out(std::u32string text, std::size_t glyphs, bool reversed) {
  std::vector<std::u32string> letters(glyphs);
  const auto nth = [&](std::size_t i) -> std::u32string& {
    return letters[reversed ? glyphs - 1 - i : i];
  };
  const auto marks = static_cast<std::size_t>(std::ranges::count_if(text, is_mark));
  if (text.size() == glyphs) {
    for (std::size_t i = 0; i < glyphs; ++i) nth(i) = text[i];
  } else if (marks > 0 && marks + 1 == glyphs) {
    std::size_t next = 1;
    for (const char32_t c : text) (is_mark(c) ? nth(next++) : nth(0)) += c;
  } else {
    nth(0) = std::move(text);
  }
  return letters;
}

/// What each glyph of a run stands for, in the order of the glyphs.
std::vector<std::u32string> letters_of(const PangoGlyphItem* run, const char* text) {
  std::vector<std::u32string> letters(static_cast<std::size_t>(run->glyphs->num_glyphs));
  PangoGlyphItemIter at;
  gboolean more = pango_glyph_item_iter_init_start(&at, const_cast<PangoGlyphItem*>(run), text);
  for (; more; more = pango_glyph_item_iter_next_cluster(&at)) {
    // From the right the iterator counts down, and its end is the glyph before.
    const bool reversed = from_right(run);
    const auto begin = reversed ? at.end_glyph + 1 : at.start_glyph,
               end = reversed ? at.start_glyph + 1 : at.end_glyph;
    std::ranges::move(shared_out(as_utf32({text + at.start_index, text + at.end_index}),
                                 static_cast<std::size_t>(end - begin), reversed),
                      letters.begin() + begin);
  }
  return letters;
}

/// A run of a line, or a part of one, and how far from the line's left end it stands in Pango's
/// units.
struct PlacedRun {
  std::shared_ptr<PangoGlyphItem> run;
  int pen;
};

int width_of(PangoGlyphItem* run) {
  return pango_glyph_string_get_width(run->glyphs);
}

std::shared_ptr<PangoGlyphItem> owned(PangoGlyphItem* run) {
  return {run, pango_glyph_item_free};
}

/// The part of a run that the bytes from `begin` to `end` of the layout's text are of; null if none
/// are.
PlacedRun part_of(PangoGlyphItem* run, int pen, const char* text, int begin, int end) {
  const int first = run->item->offset, last = first + run->item->length;
  if (begin <= first && last <= end) return {{run, [](PangoGlyphItem*) {}}, pen};
  if (last <= begin || end <= first) return {nullptr, pen};
  std::shared_ptr<PangoGlyphItem> rest = owned(pango_glyph_item_copy(run));
  const bool reversed = from_right(run);
  if (begin > first) {
    const auto before = owned(pango_glyph_item_split(rest.get(), text, begin - first));
    if (!reversed) pen += width_of(before.get());
  }
  if (end < last) {
    const auto kept = owned(pango_glyph_item_split(rest.get(), text, end - rest->item->offset));
    if (reversed) pen += width_of(rest.get());
    rest = kept;
  }
  return {std::move(rest), pen};
}

/// From left to right.
std::vector<PlacedRun> placed_runs(const ShapedLine& line, std::size_t begin, std::size_t end) {
  const auto first = static_cast<int>(line.begins_at() + begin),
             last = end == std::string::npos ? G_MAXINT : static_cast<int>(line.begins_at() + end);
  std::vector<PlacedRun> runs;
  int pen = 0;
  for (PangoGlyphItem* const run : line.glyph_items()) {
    PlacedRun part = part_of(run, pen, line.whole_text(), first, last);
    pen += width_of(run);
    if (part.run) runs.push_back(std::move(part));
  }
  return runs;
}

/// `pen` is in Pango's units from the line's left end.
void add(const PangoGlyphItem* run, const char* text, int pen, Stretch& stretch) {
  const std::vector<std::u32string> letters = letters_of(run, text);
  for (std::size_t i = 0; i < letters.size(); ++i) {
    const PangoGlyphInfo& info = run->glyphs->glyphs[i];
    const PangoGlyphGeometry& place = info.geometry;
    if (info.glyph != PANGO_GLYPH_EMPTY) {
      stretch.glyphs.push_back({info.glyph, static_cast<double>(pen + place.x_offset) / PANGO_SCALE,
                                static_cast<double>(place.y_offset) / PANGO_SCALE});
      stretch.letters.push_back(letters[i]);
    }
    pen += place.width;
  }
}

/// True if a glyph of the line in this font stands for a letter from the right.
bool has_letters_from_right(const ShapedLine& line, const PangoFont* font) {
  for (const PangoGlyphItem* const run : line.glyph_items()) {
    const PangoItem* const item = run->item;
    if (item->analysis.font != font || item->analysis.level % 2 == 0) continue;
    const std::string_view own(line.whole_text() + item->offset,
                               static_cast<std::size_t>(item->length));
    if (std::ranges::any_of(as_utf32(own), runs_from_right)) return true;
  }
  return false;
}

/// A glyph must stand for the same on the whole page, or cairo says at each what it stands for.
bool is_for_letters_from_right(PangoFont* font) {
  constexpr gunichar arabic_alef = 0x627, hebrew_alef = 0x5D0;
  return pango_font_has_char(font, arabic_alef) != 0 || pango_font_has_char(font, hebrew_alef) != 0;
}

/// From left to right. Numbers in a phrase from the right are of its font, and of its stretch.
std::vector<Stretch> stretches_of(const ShapedLine& line, const std::vector<PlacedRun>& runs) {
  std::vector<Stretch> stretches;
  int level = 0;
  for (const auto& [run, pen] : runs) {
    PangoFont* const font = run->item->analysis.font;
    const bool same_font = !stretches.empty() && stretches.back().font == font;
    if (!same_font || (!stretches.back().from_right && level != run->item->analysis.level)) {
      stretches.push_back({font,
                           has_letters_from_right(line, font),
                           is_for_letters_from_right(font),
                           run->item->offset,
                           {},
                           {}});
    }
    level = run->item->analysis.level;
    Stretch& last = stretches.back();
    last.offset = std::min(last.offset, run->item->offset);
    add(run.get(), line.whole_text(), pen, last);
  }
  return stretches;
}

void show(cairo_t* cr, Stretch& stretch, double x, double y) {
  if (stretch.glyphs.empty()) return;
  std::string text;
  std::vector<cairo_text_cluster_t> clusters;
  for (std::size_t i = 0; i < stretch.glyphs.size(); ++i) {
    stretch.glyphs[i].x += x;
    stretch.glyphs[i].y += y;
    const std::string letters =
        stretch.stands_in ? stand_in(stretch.letters[i]) : as_utf8(stretch.letters[i]);
    text += letters;
    clusters.push_back({static_cast<int>(letters.size()), 1});
  }
  cairo_set_scaled_font(cr, pango_cairo_font_get_scaled_font(PANGO_CAIRO_FONT(stretch.font)));
  cairo_show_text_glyphs(cr, text.data(), static_cast<int>(text.size()), stretch.glyphs.data(),
                         static_cast<int>(stretch.glyphs.size()), clusters.data(),
                         static_cast<int>(clusters.size()), cairo_text_cluster_flags_t{});
}
}  // namespace

void show_line(cairo_t* cr, const ShapedLine& line, std::size_t begin, std::size_t end) {
  bool any_from_right = line.from_right();
  for (const PangoGlyphItem* const run : line.glyph_items()) {
    any_from_right = any_from_right || from_right(run);
  }
  double x = 0, y = 0;
  cairo_get_current_point(cr, &x, &y);
  const std::vector<PlacedRun> runs = placed_runs(line, begin, end);
  if (!any_from_right) {
    for (const auto& [run, pen] : runs) {
      // Pango sets a script beside one with another baseline a little higher.
      cairo_move_to(cr, x + static_cast<double>(pen) / PANGO_SCALE,
                    y - static_cast<double>(run->y_offset) / PANGO_SCALE);
      pango_cairo_show_glyph_item(cr, line.whole_text(), run.get());
    }
    return;
  }
  std::vector<Stretch> stretches = stretches_of(line, runs);
  std::ranges::stable_sort(stretches, {}, &Stretch::offset);
  for (Stretch& stretch : stretches) show(cr, stretch, x, y);
}
}  // namespace furnish
