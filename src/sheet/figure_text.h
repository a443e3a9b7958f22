#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "figure/figure.h"
#include "sheet/sheet.h"

namespace furnish {

/// The keys under [figure] in a catalogue.
std::vector<std::string_view> figure_keys();

/// The pet as it is drawn, but for the lengths of its coat: build, coat, weight, how its tail ends,
/// and what of its trim shows as a line.
FigureInput figure_of(const Pet&, const Plan&);

/// Whether a figure's words say how long the coat was left.
enum class FigureSays : std::uint8_t { lengths, shape };
/// What the figure shows, in words: build, coat, and the trim region by region. `lead` is what it
/// begins with: "Rex".
std::string figure_text(const FigureInput&, const std::string& lead, const SheetVoice&,
                        FigureSays = FigureSays::lengths);
}  // namespace furnish
