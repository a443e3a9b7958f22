#pragma once

#include <memory>
#include <string>

#include "page/block.h"

namespace furnish {

/// One line of text in a role's size.
inline std::shared_ptr<const ShapedLine> set_line(const std::string& text, Face face, Role role,
                                                  const Setting& setting) {
  return setting.shaper.shape({{text, face, role, setting.type[role]}}, Length{}, Breaking::never)
      ->lines.front();
}

/// Height of capitals of a line, to centre it by.
inline Length capitals(const ShapedLine& line) {
  return line.runs().empty() ? Length{} : line.runs().front().capital_height;
}
}  // namespace furnish
