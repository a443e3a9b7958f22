#pragma once

#include <chrono>
#include <string>

#include "base/length.h"
#include "base/measures.h"
#include "sheet/sheet.h"

namespace furnish {

// Quantities as the reader writes them: to_text() of base/quantity.h with the locale's decimal
// sign and the catalogue's words for units. A range keeps its order where the page runs from right
// to left.

std::string shown(Length, const SheetVoice&);
std::string shown(LengthRange, const SheetVoice&);
/// In units that need not be the reader's own.
std::string shown(LengthRange, Units, const SheetVoice&);
std::string shown(Mass, const SheetVoice&);
std::string shown(Volume, const SheetVoice&);
std::string shown(std::chrono::seconds, const SheetVoice&);
/// How long a visit is expected to take: "about 85 min", and over 90 minutes to the half hour:
/// "about 2½ h".
std::string about(std::chrono::minutes, const SheetVoice&);
/// With one decimal: "12.3".
std::string shown_number(double, const SheetVoice&);
/// A comb by its length: in whole millimetres where the file had them, else in inches.
std::string shown_comb(Length, const SheetVoice&);
}  // namespace furnish
