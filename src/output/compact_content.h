#pragma once

#include <string>
#include <string_view>

namespace furnish {

/// A page's content drawn with fewer bytes, as nobody's eye can tell: points of paths to a
/// hundredth of a point where cairo writes a thousandth and more, those of curves to a tenth (0.035
/// mm: a dot of 700 an inch), lines that run as good as straight on as one, four straight lines
/// round a rectangle as one, the squares of a code as a mask, and a row of round dots as one line
/// of dashes without length (ISO 32000-1, 8.4.3.6).
std::string compact_content(std::string_view content);
}  // namespace furnish
