#pragma once

#include <optional>

#include "page/compose.h"

namespace furnish {

/// The sheet on two sides or more, by its divisions; what fit() does where no layout fits.
/// Empty, with an error, if one piece is taller or wider than a whole side.
/// pre: there are divisions, each with some `rest`
std::optional<FittedPage> divide(const PageRequest&, TextShaper&, DiagnosticSink&);
}  // namespace furnish
