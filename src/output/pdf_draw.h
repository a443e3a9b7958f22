#pragma once

#include <optional>
#include <span>
#include <string>

#include "base/diagnostic.h"
#include "output/pdf.h"
#include "page/frame.h"

namespace furnish {

/// The pages as cairo writes them: tagged, with outline and links, but short of what finish_pdf()
/// adds. Empty iff cairo failed, which is an error. pre: checked pages, info and outline.
std::optional<std::string> draw_pdf(std::span<const Frame> pages, const DocumentInfo&,
                                    std::span<const OutlineEntry>, DiagnosticSink&);
}  // namespace furnish
