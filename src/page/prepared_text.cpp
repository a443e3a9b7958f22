#include "page/prepared_text.h"

#include <glib.h>

#include <algorithm>
#include <string_view>

#include "base/said_in.h"
#include "page/direction.h"
#include "page/fonts.h"
#include "page/shaper.h"

namespace furnish {
namespace {
constexpr char32_t box = 0x25A1;
/// From right to left a narrow space is set as a full one: some programs that extract text take so
/// little room for none, and then have the number after its unit.
constexpr char32_t narrow_space = 0x202F, no_break_space = 0xA0, middle_dot = 0xB7;

/// Characters that take no room and need no glyph: joiners, direction marks, variation selectors.
bool ignorable(char32_t c) {
  return c == 0xAD || c == 0x34F || c == 0x61C || (c >= 0x200B && c <= 0x200F) ||
         (c >= 0x202A && c <= 0x202E) || (c >= 0x2060 && c <= 0x206F) ||
         (c >= 0xFE00 && c <= 0xFE0F) || c == 0xFEFF || (c >= 0xE0100 && c <= 0xE01EF);
}

/// Control characters have no glyph; line ends stay, in one form.
char32_t without_controls(char32_t c) {
  const bool line_end = c == '\n' || c == 0x2028 || c == 0x2029 || c == 0x85;
  if (line_end) return U'\n';
  return c < 0x20 || (c >= 0x7F && c < 0xA0) ? U' ' : c;
}

/// Joins it to the last one if that is alike.
void add_piece(std::vector<Piece>& pieces, Piece piece) {
  if (!pieces.empty() && pieces.back().set_like(piece) &&
      pieces.back().language == piece.language) {
    pieces.back().end = piece.end;
  } else {
    pieces.push_back(std::move(piece));
  }
}

/// Joins the stretches and finds a family for every character.
class Preparation {
 public:
  Preparation(FontSet& fonts, const std::string& language, const std::set<char32_t>& boxed)
      : fonts_(fonts), language_(language), boxed_(boxed) {}

  Prepared run(const std::vector<SizedText>& parts) {
    const bool from_right = right_to_left(language_);
    for (const SizedText& part : parts) {
      marks_ = {};
      const char* const end = part.text.data() + part.text.size();
      for (const char* at = part.text.data(); at < end; at = g_utf8_next_char(at)) {
        const char32_t read = g_utf8_get_char_validated(at, end - at);
        const char32_t c = without_controls(read > 0x10FFFF ? box : read);
        if (marks_.take(c)) continue;
        if (const std::size_t dot = between_dot({at, end}); dot > 0) {
          for (const char32_t one : {U' ', middle_dot, no_break_space}) add(one, part);
          at += dot;
          continue;
        }
        add(from_right && c == narrow_space ? no_break_space : c, part);
      }
    }
    return std::move(done_);
  }

 private:
  /// Bytes from the first character to the last of a dot between spaces; 0 if there is none. It
  /// parts what stands on one line: where that ends it goes along to the next.
  static std::size_t between_dot(std::string_view text) {
    for (const std::string_view dot : {"\u00A0· ", " · ", "\u00A0·\u00A0", " ·\u00A0"}) {
      if (text.starts_with(dot)) return dot.size() - (dot.ends_with(' ') ? 1 : 2);
    }
    return 0;
  }

  void add(char32_t c, const SizedText& part) {
    std::string family;
    if (c >= 0x80 && !ignorable(c)) {
      if (boxed_.contains(c)) {
        c = box;
      } else if (!fonts_.covers(c)) {
        family = family_for(c);
        if (family.empty()) {
          done_.missing.push_back(c);
          c = box;
        }
      }
    }
    const std::size_t begin = done_.text.size();
    append(done_.text, c);
    if (!family.empty() && g_unichar_ismark(c)) take_base_along(family);
    add_piece(done_.pieces, {begin, done_.text.size(), family, part.face, part.role, part.size,
                             marks_.language()});
  }

  std::string family_for(char32_t c) {
    for (const std::string& family : families_) {
      if (fonts_.family_covers(family, c)) return family;
    }
    std::string family = fonts_.fallback_family(c, language_);
    if (!family.empty()) families_.push_back(family);
    return family;
  }

  /// A mark and the letter it stands on must be of one font to be placed on each other.
  void take_base_along(const std::string& family) {
    if (done_.pieces.empty() || done_.pieces.back().family == family) return;
    Piece& last = done_.pieces.back();
    const char* const end = done_.text.data() + last.end;
    const char* const base = g_utf8_find_prev_char(done_.text.data() + last.begin, end);
    if (!base || !fonts_.family_covers(family, g_utf8_get_char(base))) return;
    Piece moved = last;
    moved.begin = static_cast<std::size_t>(base - done_.text.data());
    moved.family = family;
    last.end = moved.begin;
    if (last.begin == last.end) done_.pieces.pop_back();
    done_.pieces.push_back(moved);
  }

  FontSet& fonts_;
  const std::string& language_;
  const std::set<char32_t>& boxed_;
  Prepared done_;
  std::vector<std::string> families_;
  LanguageMarks marks_;
};

/// A character of the text with what is known of it.
struct Sign {
  std::size_t begin;
  char32_t character;
  const Piece* piece;
};

bool is_neutral(const Sign& sign) {
  return sign.piece->family.empty() && !g_unichar_isalpha(sign.character) &&
         !g_unichar_ismark(sign.character) && !ignorable(sign.character) && sign.character != U'\n';
}

std::vector<Sign> signs_of(const Prepared& prepared) {
  std::vector<Sign> signs;
  for (const Piece& piece : prepared.pieces) {
    const char* const end = prepared.text.data() + piece.end;
    for (const char* at = prepared.text.data() + piece.begin; at < end; at = g_utf8_next_char(at)) {
      signs.push_back(
          {static_cast<std::size_t>(at - prepared.text.data()), g_utf8_get_char(at), &piece});
    }
  }
  return signs;
}

/// The family of a letter from the right; empty of anything else.
std::string family_from_right(const Sign& sign) {
  return runs_from_right(sign.character) || g_unichar_ismark(sign.character) ? sign.piece->family
                                                                             : std::string();
}

/// Gives neutral signs (UAX #9) that stand between letters from the right the family of those; on a
/// page from right to left, those too that stand on one side of them.
void give_neutrals(Prepared& prepared, const FontSet& fonts, bool page_from_right) {
  const std::vector<Sign> signs = signs_of(prepared);
  std::vector<Piece> pieces;
  const auto add = [&](std::size_t begin, std::size_t end, const Piece& like,
                       const std::string& family) {
    Piece piece = like;
    piece.begin = begin;
    piece.end = end;
    piece.family = family;
    add_piece(pieces, std::move(piece));
  };
  const auto end_of = [&](std::size_t sign) {
    return sign + 1 < signs.size() ? signs[sign + 1].begin : prepared.text.size();
  };
  for (std::size_t i = 0; i < signs.size();) {
    std::size_t last = i;
    while (last < signs.size() && is_neutral(signs[last])) ++last;
    if (last == i) {
      add(signs[i].begin, end_of(i), *signs[i].piece, signs[i].piece->family);
      ++i;
      continue;
    }
    const std::string before = i > 0 ? family_from_right(signs[i - 1]) : std::string();
    const std::string after = last < signs.size() ? family_from_right(signs[last]) : std::string();
    std::string family = before == after || page_from_right ? before : std::string();
    if (family.empty() && page_from_right) family = after;
    for (; i < last; ++i) {
      const bool takes = !family.empty() && fonts.family_covers(family, signs[i].character);
      add(signs[i].begin, end_of(i), *signs[i].piece, takes ? family : std::string());
    }
  }
  prepared.pieces = std::move(pieces);
}
}  // namespace

bool Piece::set_like(const Piece& other) const {
  return family == other.family && face == other.face && role == other.role && size == other.size;
}

void append(std::string& text, char32_t c) {
  char bytes[6];
  text.append(bytes, static_cast<std::size_t>(g_unichar_to_utf8(c, bytes)));
}

std::u32string as_utf32(std::string_view utf8) {
  std::u32string text;
  const char* const end = utf8.data() + utf8.size();
  for (const char* at = utf8.data(); at < end; at = g_utf8_next_char(at)) {
    text += g_utf8_get_char(at);
  }
  return text;
}

bool runs_from_right(char32_t letter) {
  switch (g_unichar_get_script(letter)) {
    case G_UNICODE_SCRIPT_ARABIC:
    case G_UNICODE_SCRIPT_HEBREW:
    case G_UNICODE_SCRIPT_SYRIAC:
    case G_UNICODE_SCRIPT_THAANA:
    case G_UNICODE_SCRIPT_NKO:
      return true;
    default:
      return false;
  }
}

Prepared prepare(const std::vector<SizedText>& parts, FontSet& fonts, const std::string& language,
                 const std::set<char32_t>& boxed) {
  Prepared prepared = Preparation(fonts, language, boxed).run(parts);
  for (const Piece& piece : prepared.pieces) {
    if (piece.family.empty()) continue;
    give_neutrals(prepared, fonts, right_to_left(language));
    break;
  }
  return prepared;
}

std::vector<ShapedRun> runs_of(const Prepared& prepared, std::size_t begin, std::size_t end,
                               const FontSet& fonts) {
  std::vector<ShapedRun> runs;
  for (const Piece& piece : prepared.pieces) {
    const std::size_t from = std::max(piece.begin, begin), to = std::min(piece.end, end);
    if (from >= to) continue;
    runs.push_back({from - begin, to - begin,
                    piece.family.empty() ? std::string(FontSet::family()) : piece.family,
                    piece.face, piece.role, piece.size.points(),
                    scaled(piece.size.length(), fonts.capital_height(piece.face)), piece.language});
  }
  return runs;
}
}  // namespace furnish
