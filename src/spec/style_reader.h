#pragma once

#include <optional>
#include <string>

#include "model/style.h"
#include "spec/context.h"

namespace furnish {

/// One style's file by itself; what it extends is not yet laid under it.
struct StyleFile {
  Style style;
  std::optional<Located<std::string>> extends;
  std::uint32_t file = SourceSpan::no_file;
  bool good = false;  ///< no faults in it; else the rest is what could be read
};

/// Adds the file to the sources even if it cannot be read.
StyleFile read_style_file(const ReadContext&, const std::string& path);
/// Lays `lower` under what `style` says itself.
void extend(Style& style, const Style& lower);
}  // namespace furnish
