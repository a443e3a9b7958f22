#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "base/diagnostic.h"
#include "page/frame.h"

namespace furnish {

/// The page as a PNG picture on white paper that carries its resolution and title. `dpi` is dots to
/// the inch, 10 to 1200. Same input, same bytes. Empty iff an error was reported: a page that
/// check_page() refuses, a dpi out of bounds, or a picture of more than 200 megapixels.
std::optional<std::string> to_png(const Frame& page, const DocumentInfo& info, int dpi,
                                  DiagnosticSink& sink);
/// The bytes by which each side of a sheet carries its title; empty if it has none.
std::string png_title(const DocumentInfo&);
}  // namespace furnish
