#pragma once

#include <string>
#include <string_view>

namespace furnish {

std::string as_utf8(std::u32string_view);

/// What cairo is told that a glyph of a phrase from right to left stands for, as UTF-8. It would
/// put a glyph for a Latin sign, a space or a full stop, into a font of its own, and one for two
/// letters into marked content: either would break the phrase. So such a glyph stands for one
/// character of Unicode's private use, which without_stand_ins() takes back.
std::string stand_in(std::u32string_view letters);

/// A font's map to Unicode with what the stand-ins stand for; empty if it has none. The two letters
/// of a ligature are in the order of all glyphs of a phrase, from left to right.
std::string without_stand_ins(std::string_view to_unicode);
}  // namespace furnish
