#pragma once

#include <string>

#include "figure/figure.h"
#include "sheet/sheet.h"

namespace furnish {

/// What the figure shows, in words: build, coat, and the trim region by region. `lead` is what it
/// begins with: "Rex".
std::string figure_text(const FigureInput&, const std::string& lead, const SheetVoice&);
}  // namespace furnish
