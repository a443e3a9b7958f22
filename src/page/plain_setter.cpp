#include "page/plain_setter.h"

#include <pango/pango.h>

#include <algorithm>
#include <limits>
#include <utility>

#include "page/direction.h"
#include "page/kept_together.h"
#include "page/line_breaks.h"
#include "page/shaper.h"

namespace furnish {
namespace {
/// Latin letters without marks of their own, and signs that no other script has for itself.
bool is_plain(char32_t c) {
  constexpr std::u32string_view signs = U"\u2007•…\u202F′″‹›⁄€←↑→↓−≈≤≥";
  if (c < 0x7F) return c >= 0x20;
  if (c <= 0x17F) return c >= 0xA0 && c != 0xA9 && c != 0xAD && c != 0xAE;
  if (c >= 0x1E00 && c <= 0x1EFF) return true;
  if (c >= 0x2150 && c <= 0x215E) return true;
  if (c >= 0x2010 && c <= 0x201F) return c != 0x2011 && c != 0x2015 && c != 0x2016 && c != 0x2017;
  return signs.find(c) != std::u32string_view::npos;
}

bool is_latin(char32_t c) {
  if (c < 0x80) return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
  return g_unichar_get_script(c) == G_UNICODE_SCRIPT_LATIN;
}

/// In vertical text these stand upright, and so Pango sets them apart from their neighbours even
/// where no text is vertical (Unicode's Vertical_Orientation U, of the signs that are plain).
bool is_upright(char32_t c) {
  return c == 0xA7 || c == 0xB1 || (c >= 0xBC && c <= 0xBE) || c == 0xD7 || c == 0xF7 ||
         (c >= 0x2150 && c <= 0x215E);
}

/// Neither empty paragraphs, which have a height of their own, nor spaces at the end of one.
bool is_plain(const Prepared& prepared) {
  const std::string& text = prepared.text;
  char32_t last = U'\n';
  const char* const end = text.data() + text.size();
  for (const char* at = text.data(); at < end; at = g_utf8_next_char(at)) {
    const char32_t c = g_utf8_get_char(at);
    if (c == U'\n' ? last == U' ' || last == U'\n' : !is_plain(c)) return false;
    last = c;
  }
  return last != U' ' && last != U'\n' &&
         std::ranges::all_of(prepared.pieces, [](const Piece& one) { return one.family.empty(); });
}
}  // namespace

/// A stretch of the text that is set as one.
struct PlainSetter::Cut {
  std::size_t begin, end;  ///< bytes
  Face face;
  TypeSize size;
  bool latin;
};

/// A glyph in Pango's units.
struct PlainSetter::Placed {
  LineGlyph glyph;  ///< `at` is a byte of the whole text
  int kerning;      ///< of its width
  std::size_t cut;
  bool joined;  ///< to the glyph before: parting them would change one of them
};

/// Part of the text that is to be one line.
struct PlainSetter::Span {
  std::size_t begin, end;  ///< glyphs
  std::size_t from, to;    ///< bytes
  int width;
  bool wrapped;  ///< the text goes on in the next line
};

/// One text in one width.
class PlainSetter::Job {
 public:
  using Spans = std::optional<std::vector<Span>>;

  Job(PlainSetter& setter, const Prepared& prepared) : setter_(setter), prepared_(prepared) {
    cut_up();
    for (std::size_t i = 0; i < cuts_.size(); ++i) {
      place(i, cuts_[i].begin, cuts_[i].end, glyphs_);
    }
  }

  std::optional<Lines> lines(int width, int indent, Breaking breaking) {
    Spans spans = kept(breaking == Breaking::never ? -1 : width, indent);
    if (spans && breaking == Breaking::balanced) spans = balanced(*std::move(spans), width, indent);
    if (!spans) return std::nullopt;
    Lines lines;
    for (const Span& span : *spans) {
      std::vector<Placed> glyphs = glyphs_of(span);
      if (span.wrapped && width_of(glyphs) > span.width) return std::nullopt;
      lines.push_back(line(span, std::move(glyphs)));
    }
    return lines;
  }

 private:
  const std::string& text() const { return prepared_.text; }

  void cut_up() {
    std::size_t paragraph = 0;  // the first of its cuts
    bool latin = false, upright = false;
    const Piece* last = nullptr;
    const auto end_paragraph = [&] {
      for (; paragraph < cuts_.size(); ++paragraph) cuts_[paragraph].latin = latin;
      latin = false;
      last = nullptr;
    };
    for (const Piece& piece : prepared_.pieces) {
      const char* const end = text().data() + piece.end;
      for (const char* at = text().data() + piece.begin; at < end; at = g_utf8_next_char(at)) {
        const char32_t c = g_utf8_get_char(at);
        if (c == U'\n') {
          end_paragraph();
          continue;
        }
        const std::size_t begin = static_cast<std::size_t>(at - text().data());
        if (!last || !last->set_like(piece) || is_upright(c) != upright) {
          cuts_.push_back({begin, begin, piece.face, piece.size, false});
        }
        last = &piece;
        upright = is_upright(c);
        latin = latin || is_latin(c);
        cuts_.back().end = begin + static_cast<std::size_t>(g_utf8_next_char(at) - at);
      }
    }
    end_paragraph();
  }

  /// Adds the glyphs of a part of a cut, rounded as HarfBuzz does in a font of that size.
  void place(std::size_t cut, std::size_t begin, std::size_t end, std::vector<Placed>& into) const {
    const Cut& from = cuts_[cut];
    const std::int64_t size = from.size.quarters() * PANGO_SCALE / 4,
                       scale = (size << 16) / setter_.fonts_.open_face(from.face).units_per_em();
    const auto scaled = [&](int units) {
      return static_cast<int>((units * scale + (1 << 15)) >> 16);
    };
    const std::string_view part(text().data() + begin, end - begin);
    for (const UnitGlyph& glyph : setter_.units(part, from.face, from.latin)) {
      const int kerning = scaled(glyph.kerning);
      into.push_back({{glyph.glyph, begin + glyph.at, scaled(glyph.advance) + kerning,
                       scaled(glyph.x), -scaled(glyph.y)},
                      kerning,
                      cut,
                      glyph.joined});
    }
  }

  /// What is kept together is, unless a word would have to be parted for that.
  Spans kept(int width, int indent) {
    for (const Keeping kept : {Keeping::labels, Keeping::numbers, Keeping::nothing}) {
      keeping_ = kept;
      const Breaks* breaks = nullptr;
      Spans spans = broken(width, indent, breaks);
      if (!strained(spans) || !breaks || !breaks->pairs) return spans;
    }
    return std::nullopt;
  }

  /// True if a line would have to end within a word, or does within the name of a file.
  bool strained(const Spans& spans) const {
    return !spans || std::ranges::any_of(*spans, [&](const Span& span) {
      return span.from > 0 && text()[span.from - 1] == '/';
    });
  }

  /// Each line takes as much as it has room for. Empty if not even one word fits. `breaks` stays
  /// null if all paragraphs fit as they are.
  Spans broken(int width, int indent, const Breaks*& breaks) {
    std::vector<Span> spans;
    std::size_t begin = 0, from = 0;
    while (true) {
      const std::size_t to = std::min(text().find('\n', from), text().size());
      std::size_t last = begin;
      std::int64_t all = 0;
      for (; last < glyphs_.size() && glyphs_[last].glyph.at < to; ++last) {
        all += glyphs_[last].glyph.width;
      }
      for (int shorter = indent; begin < last; shorter = 0) {
        const int room = width < 0 ? std::numeric_limits<int>::max() : std::max(0, width - shorter);
        if (all <= room) {
          spans.push_back({begin, last, from, to, static_cast<int>(all), false});
          break;
        }
        if (!breaks) breaks = &setter_.breaks(text(), keeping_);
        const Span span = first_line(begin, last, from, room, *breaks);
        if (span.end == begin) return std::nullopt;
        for (; begin < span.end; ++begin) all -= glyphs_[begin].glyph.width;
        from = span.to;
        spans.push_back(span);
      }
      begin = last;
      from = to + 1;
      if (to == text().size()) return spans;
    }
  }

  /// Of glyphs that do not fit in one. Without an end if no place to break has room.
  Span first_line(std::size_t begin, std::size_t last, std::size_t from, int room,
                  const Breaks& breaks) const {
    constexpr int kerning = 2 * PANGO_SCALE;  // may take as much back
    Span span{begin, begin, from, from, 0, true};
    int width = 0;
    for (std::size_t i = begin; i < last; ++i) {
      const std::size_t at = glyphs_[i].glyph.at;
      const bool space = at > from && text()[at - 1] == ' ';
      if (!space && width > room + kerning) break;
      if (i > begin && breaks.before[at] && at != glyphs_[i - 1].glyph.at) {
        const int less = space       ? glyphs_[i - 1].glyph.width
                         : parted(i) ? glyphs_[i - 1].kerning
                                     : 0;
        if (width - less <= room) span = {begin, i, from, at, width - less, true};
      }
      width += glyphs_[i].glyph.width;
    }
    return span;
  }

  /// True if a line's end before this glyph changes it or the one before.
  bool parted(std::size_t glyph) const {
    return glyph > 0 && glyph < glyphs_.size() && glyphs_[glyph].joined &&
           glyphs_[glyph].cut == glyphs_[glyph - 1].cut;
  }

  bool one_short_word(const Span& span, int width) const {
    std::size_t to = span.to;
    while (to > span.from && text()[to - 1] == ' ') --to;
    return std::string_view(text()).substr(span.from, to - span.from).find(' ') ==
               std::string_view::npos &&
           span.width * 3 < width;
  }

  /// Takes the last word of the line above down to a single short word, if that costs no line and
  /// parts no word.
  std::vector<Span> balanced(std::vector<Span> spans, int width, int indent) {
    if (spans.size() < 2 || text().find('\n') != std::string::npos) return spans;
    if (!one_short_word(spans.back(), width)) return spans;
    const Breaks* breaks = nullptr;
    const Spans other = broken(spans[spans.size() - 2].width - 1, indent, breaks);
    const bool better =
        !strained(other) && other->size() == spans.size() && !one_short_word(other->back(), width);
    return better ? *other : std::move(spans);
  }

  std::vector<Placed> glyphs_of(const Span& span) const {
    std::vector<Placed> glyphs;
    if (parted(span.begin) || parted(span.end)) {
      for (std::size_t i = 0; i < cuts_.size(); ++i) {
        const std::size_t begin = std::max(cuts_[i].begin, span.from),
                          end = std::min(cuts_[i].end, span.to);
        if (begin < end) place(i, begin, end, glyphs);
      }
    } else {
      glyphs.assign(glyphs_.begin() + static_cast<std::ptrdiff_t>(span.begin),
                    glyphs_.begin() + static_cast<std::ptrdiff_t>(span.end));
    }
    // The space that a line break took the place of.
    if (span.wrapped && text()[span.to - 1] == ' ') glyphs.back().glyph.width = 0;
    return glyphs;
  }

  static int width_of(const std::vector<Placed>& glyphs) {
    int width = 0;
    for (const Placed& one : glyphs) width += one.glyph.width;
    return width;
  }

  std::shared_ptr<const ShapedLine> line(const Span& span, std::vector<Placed> glyphs) const {
    std::vector<LineStretch> stretches;
    std::size_t cut = cuts_.size();
    for (Placed& one : glyphs) {
      if (one.cut != cut) {
        cut = one.cut;
        stretches.push_back({cuts_[cut].face,
                             cuts_[cut].size,
                             std::max(cuts_[cut].begin, span.from) - span.from,
                             std::min(cuts_[cut].end, span.to) - span.from,
                             {}});
      }
      one.glyph.at -= span.from;
      stretches.back().glyphs.push_back(one.glyph);
    }
    return std::make_shared<const ShapedLine>(
        setter_.fonts_, text().substr(span.from, span.to - span.from), std::move(stretches),
        runs_of(prepared_, span.from, span.to, setter_.fonts_));
  }

  PlainSetter& setter_;
  const Prepared& prepared_;
  std::vector<Cut> cuts_;
  std::vector<Placed> glyphs_;
  Keeping keeping_ = Keeping::labels;
};

PlainSetter::PlainSetter(FontSet& fonts, std::string language)
    : fonts_(fonts),
      language_(std::move(language)),
      knows_language_(!right_to_left(language_) &&
                      pango_language_includes_script(pango_language_from_string(language_.c_str()),
                                                     PANGO_SCRIPT_LATIN)) {}

std::optional<PlainSetter::Lines> PlainSetter::set(const Prepared& prepared, int width, int indent,
                                                   Breaking breaking) {
  if (!knows_language_ || !is_plain(prepared)) return std::nullopt;
  for (const Piece& piece : prepared.pieces) {
    if (!fonts_.can_draw(piece.face)) return std::nullopt;
  }
  return Job(*this, prepared).lines(width, indent, breaking);
}

void PlainSetter::forget() {
  const auto forget = [](auto& all) {
    std::erase_if(all, [](const auto& one) { return !one.second.asked; });
    for (auto& [key, one] : all) one.asked = false;
  };
  forget(units_);
  forget(breaks_);
}

const std::vector<UnitGlyph>& PlainSetter::units(std::string_view text, Face face, bool latin) {
  std::string key(1, static_cast<char>('0' + static_cast<int>(face) * 2 + (latin ? 1 : 0)));
  key += text;
  const auto [at, fresh] = units_.try_emplace(std::move(key));
  if (fresh) at->second.glyphs = fonts_.open_face(face).set(text, latin, language_);
  at->second.asked = true;
  return at->second.glyphs;
}

const PlainSetter::Breaks& PlainSetter::breaks(const std::string& text, Keeping kept) {
  std::string key(1, static_cast<char>('0' + static_cast<int>(kept)));
  key += text;
  const auto [at, fresh] = breaks_.try_emplace(std::move(key));
  Breaks& breaks = at->second;
  breaks.asked = true;
  if (!fresh) return breaks;
  PangoAttrList* const attributes = pango_attr_list_new();
  keep_ranges(text, attributes);
  breaks.pairs = keep_pairs(text, kept, attributes);
  const int length = static_cast<int>(text.size()),
            places = static_cast<int>(g_utf8_strlen(text.data(), length)) + 1;
  std::vector<PangoLogAttr> found(static_cast<std::size_t>(places));
  pango_get_log_attrs(text.data(), length, 0, pango_language_from_string(language_.c_str()),
                      found.data(), places);
  pango_attr_break(text.data(), length, attributes, 0, found.data(), places);
  pango_attr_list_unref(attributes);
  breaks.before.resize(text.size());
  const char* next = text.data();
  for (std::size_t i = 0; i + 1 < found.size(); ++i, next = g_utf8_next_char(next)) {
    breaks.before[static_cast<std::size_t>(next - text.data())] = found[i].is_line_break;
  }
  return breaks;
}
}  // namespace furnish
