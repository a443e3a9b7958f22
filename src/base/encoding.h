#pragma once

#include <string>
#include <string_view>

namespace furnish {

/// A text that another program wrote, in UTF-8, and what it was in.
struct DecodedText {
  /// Without a byte order mark; ends of lines are "\n" or "\r\n". What is no letter of the encoding
  /// is U+FFFD.
  std::string text;
  std::string_view encoding;  ///< as people call it: "UTF-8", "Windows-1252"
};

/// UTF-8, UTF-16 of either order, or else Windows-1252. A byte order mark decides (Unicode 23.8);
/// without one it is UTF-16 where every other byte of the beginning is zero, and UTF-8 where it is
/// well formed, or where more of its letters beyond ASCII are than are not. All other bytes are
/// taken for Windows-1252.
DecodedText decoded(std::string_view bytes);
}  // namespace furnish
