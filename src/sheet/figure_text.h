#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "figure/figure.h"
#include "sheet/sheet.h"

namespace furnish {

/// The keys under [figure] in a catalogue.
std::vector<std::string_view> figure_keys();

/// What the figure shows, in words: build, coat, and the trim region by region. `lead` is what it
/// begins with: "Rex".
std::string figure_text(const FigureInput&, const std::string& lead, const SheetVoice&);
}  // namespace furnish
