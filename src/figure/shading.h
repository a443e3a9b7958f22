#pragma once

#include <cstdint>
#include <vector>

#include "page/block.h"
#include "page/paragraph.h"

namespace furnish {

/// What fills fields of the figure that are told apart without colour, from the most to the least:
/// the more often, the darker; and what is worst of all, crossed. In print each is a grey of its
/// own and a pattern of its own; see shading_test.
enum class Shade : std::uint8_t { crossed, dark, middle, light };
inline constexpr std::size_t shade_count = 4;

/// Adds the marks that fill an area.
void shade(const std::vector<Contour>& area, Shade, Frame&);

/// The small sign of a shade, where a patch has no room: the darker, the fuller a disc.
/// pre: dark or middle
void shade_mark(Shade, Point centre, Length size, Frame&);

/// A framed patch of a shade, for a key: it is as wide as the box it is given, and as high as it
/// asks for. `marked`: with its small sign after it.
BlockPtr shade_patch(Shade, Length height, bool marked = false);

/// What a sign in the figure stands for: a patch, or a mark, and its words a row, in the order
/// given.
struct KeyEntry {
  BlockPtr sign;
  std::vector<TextSpan> words;
};
BlockPtr figure_key(const std::vector<KeyEntry>&, TextStyle = {}, Origin = {});
/// How high a sign stands in a key.
inline constexpr Length key_sign = Length::mm(4.4);
}  // namespace furnish
