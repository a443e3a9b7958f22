#pragma once

#include <vector>

#include "page/paragraph.h"
#include "sheet/sheet.h"

namespace furnish {

/// `brief`: product, volumes and time, for one line of a card; `full`: bottles too.
enum class MixDetail : std::uint8_t { brief, full };

/// "Oat shampoo **45 ml + 455 ml water**, 4 min."
std::vector<TextSpan> mix_text(const Mix&, const SheetVoice&, MixDetail);
}  // namespace furnish
