#pragma once

#include <cstdint>
#include <string>
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

/// A framed patch of a shade, for keys and calendars: it fills the box it is given, and asks for
/// `height`.
BlockPtr shade_patch(Shade, Length height);

/// What each shade stands for: a patch and its words a row, in the order given.
struct ShadeMeaning {
  Shade shade{};
  std::string words;
};
BlockPtr shade_key(const std::vector<ShadeMeaning>&, TextStyle = {}, Origin = {});
}  // namespace furnish
