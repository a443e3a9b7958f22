#pragma once

#include <string_view>

namespace furnish {

/// The orientation in a block of Exif that begins with its TIFF header; 1 if it says none.
int exif_orientation(std::string_view block);
}  // namespace furnish
