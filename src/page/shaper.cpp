#include "page/shaper.h"

#include <fmt/format.h>
#include <pango/pangocairo.h>

#include <algorithm>
#include <cmath>
#include <cstring>
#include <string_view>

#include "page/line_breaks.h"
#include "page/plain_setter.h"
#include "page/prepared_text.h"

namespace furnish {
namespace {
struct Releaser {
  void operator()(void* object) const { g_object_unref(object); }
};
using Layout = std::unique_ptr<PangoLayout, Releaser>;

PangoFontDescription* description(const Piece& piece) {
  return FontSet::description(piece.family, piece.face, piece.size);
}

/// True if a letter runs the page's way.
bool is_of_the_page(const std::string& text, PangoDirection page) {
  constexpr gunichar isolate = 0x2068, end_of_isolate = 0x2069;
  const char* const end = text.data() + text.size();
  bool isolates = false, number_outside = false;
  int inside = 0;
  for (const char* at = text.data(); at < end; at = g_utf8_next_char(at)) {
    const gunichar c = g_utf8_get_char(at);
    if (g_unichar_isalpha(c) && runs_from_right(c) == (page == PANGO_DIRECTION_RTL)) return true;
    isolates |= c == isolate;
    inside += c == isolate ? 1 : c == end_of_isolate ? -1 : 0;
    number_outside |= inside <= 0 && g_unichar_isdigit(c);
  }
  // The hour before a name that has been set apart.
  return isolates && number_outside;
}

/// What is kept together is, unless a word would have to be parted for that.
Layout lay_out(const Prepared& prepared, PangoContext* context, int width, int indent,
               Keeping kept = Keeping::labels) {
  Layout layout(pango_layout_new(context));
  PangoAttrList* attributes = pango_attr_list_new();
  // Pango would hyphenate a word that it has to break anywhere; a name has no hyphen of ours in it.
  pango_attr_list_insert(attributes, pango_attr_insert_hyphens_new(FALSE));
  for (std::size_t i = 0; i < prepared.pieces.size(); ++i) {
    // Another language alone is no reason to set letters apart.
    const Piece& piece = prepared.pieces[i];
    while (i + 1 < prepared.pieces.size() && piece.set_like(prepared.pieces[i + 1])) ++i;
    PangoFontDescription* font = description(piece);
    PangoAttribute* attribute = pango_attr_font_desc_new(font);
    attribute->start_index = static_cast<guint>(piece.begin);
    attribute->end_index = static_cast<guint>(prepared.pieces[i].end);
    pango_attr_list_insert(attributes, attribute);
    pango_font_description_free(font);
  }
  // An empty layout still has a line with a height: that of its first piece or of the bundled font.
  const Piece first = prepared.pieces.empty()
                          ? Piece{0, 0, {}, Face::regular, Role::body, TypeSize::quarters(40)}
                          : prepared.pieces.front();
  PangoFontDescription* font = description(first);
  pango_layout_set_font_description(layout.get(), font);
  pango_font_description_free(font);
  keep_ranges(prepared.text, attributes);
  const bool pairs = width >= 0 && keep_pairs(prepared.text, kept, attributes);
  pango_layout_set_attributes(layout.get(), attributes);
  pango_attr_list_unref(attributes);
  pango_layout_set_wrap(layout.get(), PANGO_WRAP_WORD_CHAR);
  pango_layout_set_text(layout.get(), prepared.text.data(), static_cast<int>(prepared.text.size()));
  // A sentence of the page that begins with a name in another script is still the page's sentence.
  // From right to left all paragraphs do, so that what begins one stands where the page begins:
  // what was written the other way is marked as such by whoever wrote it there.
  const PangoDirection page = pango_context_get_base_dir(context);
  if (page == PANGO_DIRECTION_RTL || is_of_the_page(prepared.text, page)) {
    pango_layout_set_auto_dir(layout.get(), FALSE);
  }
  pango_layout_set_indent(layout.get(), indent);
  pango_layout_set_width(layout.get(), width);
  if (pairs && strained(layout.get())) {
    const Keeping less = kept == Keeping::labels ? Keeping::numbers : Keeping::nothing;
    return lay_out(prepared, context, width, indent, less);
  }
  return layout;
}

/// Characters that came out as hex boxes, which would put their digits into the text layer.
std::set<char32_t> unknown_characters(PangoLayout* layout) {
  std::set<char32_t> unknown;
  for (const GSList* line = pango_layout_get_lines_readonly(layout); line; line = line->next) {
    for (GSList* run = static_cast<PangoLayoutLine*>(line->data)->runs; run; run = run->next) {
      const PangoGlyphString* glyphs = static_cast<PangoLayoutRun*>(run->data)->glyphs;
      for (int i = 0; i < glyphs->num_glyphs; ++i) {
        const PangoGlyph glyph = glyphs->glyphs[i].glyph;
        if (glyph != PANGO_GLYPH_EMPTY && (glyph & PANGO_GLYPH_UNKNOWN_FLAG)) {
          unknown.insert(glyph & ~PANGO_GLYPH_UNKNOWN_FLAG);
        }
      }
    }
  }
  return unknown;
}

/// Whether cairo has the file of every font that the text is set in. Without it Pango measures by
/// guess, and nothing or boxes would be drawn.
bool fonts_open(PangoLayout* layout) {
  for (const GSList* line = pango_layout_get_lines_readonly(layout); line; line = line->next) {
    for (GSList* run = static_cast<PangoLayoutLine*>(line->data)->runs; run; run = run->next) {
      PangoFont* const font = static_cast<PangoLayoutRun*>(run->data)->item->analysis.font;
      cairo_scaled_font_t* const scaled =
          PANGO_IS_CAIRO_FONT(font) ? pango_cairo_font_get_scaled_font(PANGO_CAIRO_FONT(font))
                                    : nullptr;
      if (scaled == nullptr || cairo_scaled_font_status(scaled) != CAIRO_STATUS_SUCCESS) {
        return false;
      }
    }
  }
  return true;
}

std::string_view line_text(PangoLayout* layout, int number) {
  const PangoLayoutLine* line = pango_layout_get_line_readonly(layout, number);
  std::string_view text(pango_layout_get_text(layout) + line->start_index,
                        static_cast<std::size_t>(line->length));
  while (text.ends_with(' ')) text.remove_suffix(1);
  return text;
}

int line_width(PangoLayout* layout, int number) {
  PangoRectangle logical{};
  pango_layout_line_get_extents(pango_layout_get_line_readonly(layout, number), nullptr, &logical);
  return logical.width;
}

bool one_short_word(PangoLayout* layout, int number, int width) {
  return line_text(layout, number).find(' ') == std::string_view::npos &&
         line_width(layout, number) * 3 < width;
}

/// Takes the last word of the line above down to a single short word, if that costs no line and
/// parts no word.
void balance(PangoLayout* layout, const Prepared& prepared, int width) {
  const int lines = pango_layout_get_line_count(layout);
  if (lines < 2 || prepared.text.find('\n') != std::string::npos) return;
  if (!one_short_word(layout, lines - 1, width)) return;
  pango_layout_set_width(layout, line_width(layout, lines - 2) - 1);
  if (pango_layout_get_line_count(layout) != lines || one_short_word(layout, lines - 1, width) ||
      strained(layout)) {
    pango_layout_set_width(layout, width);
  }
}

int widest_line(PangoLayout* layout) {
  int widest = 0;
  for (int i = 0; i < pango_layout_get_line_count(layout); ++i) {
    widest = std::max(widest, line_width(layout, i));
  }
  return widest;
}

/// Pango may keep a word on a line that has no room for it (seen in a line of two faces): then the
/// text is broken as in a column that is narrower by as much. What has no place to break stays as
/// it is.
void keep_inside(PangoLayout* layout, int width) {
  const int over = widest_line(layout) - width;
  if (over <= 0) return;
  pango_layout_set_width(layout, std::max(0, width - over));
  if (widest_line(layout) > width) pango_layout_set_width(layout, width);
}

std::vector<ShapedRun> runs_of(const Prepared& prepared, PangoLayout* layout, int number,
                               const FontSet& fonts) {
  const PangoLayoutLine* line = pango_layout_get_line_readonly(layout, number);
  const auto begin = static_cast<std::size_t>(line->start_index);
  return furnish::runs_of(prepared, begin, begin + static_cast<std::size_t>(line->length), fonts);
}

void add_number(std::string& key, std::size_t number) {
  char bytes[sizeof number];
  std::memcpy(bytes, &number, sizeof number);
  key.append(bytes, sizeof number);
}

/// Everything that a shaper's answer depends on, in bytes.
std::string key_of(const std::vector<SizedText>& parts, int width, int indent, Breaking breaking) {
  std::string key;
  add_number(key, static_cast<std::size_t>(static_cast<std::uint32_t>(width)) << 32 |
                      static_cast<std::uint32_t>(indent));
  add_number(key, static_cast<std::size_t>(breaking));
  for (const SizedText& part : parts) {
    add_number(key, static_cast<std::size_t>(part.size.quarters()) << 32 |
                        static_cast<std::size_t>(part.face) << 8 |
                        static_cast<std::size_t>(part.role));
    add_number(key, part.text.size());
    key += part.text;
  }
  return key;
}
}  // namespace

Length ShapedText::width() const {
  Length widest;
  for (const auto& line : lines) widest = std::max(widest, line->width());
  return widest;
}

TextShaper::TextShaper(FontSet& fonts, DiagnosticSink& sink, std::string language, bool pango_only)
    : fonts_(fonts),
      sink_(&sink),
      language_(std::move(language)),
      plain_(pango_only ? nullptr : std::make_unique<PlainSetter>(fonts, language_)) {}

TextShaper::~TextShaper() = default;

std::shared_ptr<const ShapedText> TextShaper::shape(const std::vector<SizedText>& parts,
                                                    Length width, Breaking breaking,
                                                    SourceSpan from, Length indent) {
  const int units = breaking == Breaking::never
                        ? -1
                        : std::max(0, static_cast<int>(width.in_points() * PANGO_SCALE + 1e-6));
  const int shorter = static_cast<int>(indent.in_points() * PANGO_SCALE + 0.5);
  const std::string key = key_of(parts, units, shorter, breaking);
  Kept& kept = kept_[key];
  kept.asked = true;
  const auto report = [&](char32_t missing) {
    if (!reported_.insert(missing).second) return;
    std::string character;
    append(character, missing);
    const auto number = static_cast<std::uint32_t>(missing);
    Diagnostic& said =
        sink_->warning("no-glyph", from,
                       fmt::format("no font has the character '{}' (U+{:04X})", character, number));
    said.hint = "it is printed as a box; install a font that has it, or write it another way";
    said.once = fmt::format("no-glyph {} {:04X}", language_, number);
  };
  if (kept.text) {
    for (const char32_t missing : kept.missing) report(missing);
    return kept.text;
  }
  ++made_;
  std::set<char32_t> boxed;
  Prepared prepared = prepare(parts, fonts_, language_, boxed);
  if (fonts_.broken()) tell_broken(from);
  for (char32_t missing : prepared.missing) report(missing);
  kept.missing.assign(prepared.missing.begin(), prepared.missing.end());
  auto plain = plain_ ? plain_->set(prepared, units, shorter, breaking) : std::nullopt;
  if (plain) {
    kept.text = std::make_shared<const ShapedText>(ShapedText{*std::move(plain)});
    return kept.text;
  }
  PangoContext* const context = fonts_.context(language_);
  Layout layout = lay_out(prepared, context, units, shorter);
  // Without its file a font seems to have no character at all.
  if (holds_fonts(layout.get(), from) && pango_layout_get_unknown_glyphs_count(layout.get()) > 0) {
    boxed = unknown_characters(layout.get());
    for (char32_t missing : boxed) report(missing);
    kept.missing.insert(kept.missing.end(), boxed.begin(), boxed.end());
    prepared = prepare(parts, fonts_, language_, boxed);
    layout = lay_out(prepared, context, units, shorter);
    holds_fonts(layout.get(), from);
  }
  if (breaking == Breaking::balanced) balance(layout.get(), prepared, units);
  if (breaking != Breaking::never) keep_inside(layout.get(), units);

  auto shaped = std::make_shared<ShapedText>();
  for (int i = 0; i < pango_layout_get_line_count(layout.get()); ++i) {
    shaped->lines.push_back(std::make_shared<const ShapedLine>(
        layout.get(), i, runs_of(prepared, layout.get(), i, fonts_)));
  }
  kept.text = std::move(shaped);
  return kept.text;
}

bool TextShaper::holds_fonts(PangoLayout* layout, SourceSpan from) {
  if (fonts_open(layout)) return true;
  fonts_.mark_broken();
  tell_broken(from);
  return false;
}

void TextShaper::tell_broken(SourceSpan from) {
  if (std::exchange(broken_told_, true)) return;
  sink_
      ->error("font-unreadable", from,
              "a font could not be opened when it was needed; its text would be missing")
      .hint = "try again; if that does not help, install furnish and its fonts again";
}

void TextShaper::forget() {
  std::erase_if(kept_, [](const auto& one) { return !one.second.asked; });
  for (auto& [key, kept] : kept_) kept.asked = false;
  reported_.clear();
  if (plain_) plain_->forget();
}

Length TextShaper::natural_width(const std::vector<SizedText>& parts, SourceSpan from) {
  return shape(parts, {}, Breaking::never, from)->width();
}
}  // namespace furnish
