#pragma once

#include <optional>
#include <string>

#include "base/diagnostic.h"
#include "page/frame.h"

namespace furnish {

/// The page as an SVG picture, text as outlines so that it looks the same without the fonts. Same
/// input, same bytes. Empty iff an error was reported.
std::optional<std::string> to_svg(const Frame& page, const DocumentInfo& info,
                                  DiagnosticSink& sink);
/// The bytes by which each side of a sheet carries its title.
std::string svg_title(const DocumentInfo&);
}  // namespace furnish
