#pragma once

#include <optional>
#include <string>

#include "sheet/sheet.h"

namespace furnish {

/// What is done to a place in an owner's words, which tell brushed, clipped, scissored and stripped
/// apart: "clipped to about 3 mm". Of a coat that is brushed or stripped
/// no length is said, nor one that is not known.
std::string owner_work(const Tool&, std::optional<LengthRange> left, const SheetVoice&);
/// The coat that such work left there, always known of a blade or comb: measured when the pet went
/// out, else by the tool.
std::optional<LengthRange> left_there(const PlacedEntry&, const SheetInput&);
}  // namespace furnish
