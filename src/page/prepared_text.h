#pragma once

#include <cstddef>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "page/fonts.h"
#include "page/type.h"

namespace furnish {

struct ShapedRun;
struct SizedText;

/// A stretch of the whole text in one family, face and size.
struct Piece {
  std::size_t begin, end;
  std::string family;  ///< empty: the bundled one
  Face face;
  Role role;
  TypeSize size;
  std::string language{};             ///< BCP 47, if it is another than the page's
  bool set_like(const Piece&) const;  ///< in the same letters
};

/// Stretches of text as one text, with a family for every character.
struct Prepared {
  std::string text;
  std::vector<Piece> pieces;
  std::vector<char32_t> missing;  ///< no font has them; the text has boxes instead
};

/// Families chosen for this text are tried first, so that a word is not set in two fonts; earlier
/// texts have no say, so the same text is always set alike. Spaces and signs in a phrase that runs
/// from right to left are of the phrase's family, so that it is one run: where each word is one by
/// itself, programs that extract a PDF's text give them from left to right. `boxed` are to be boxes
/// whatever the fonts say.
Prepared prepare(const std::vector<SizedText>&, FontSet&, const std::string& language,
                 const std::set<char32_t>& boxed);

/// The pieces of the bytes from `begin` to `end`, which are to be a line, counted from its start.
std::vector<ShapedRun> runs_of(const Prepared&, std::size_t begin, std::size_t end, const FontSet&);

/// As UTF-8.
void append(std::string& text, char32_t);
std::u32string as_utf32(std::string_view utf8);
/// True of letters of scripts that are written from right to left.
bool runs_from_right(char32_t letter);
}  // namespace furnish
