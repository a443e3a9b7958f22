#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "plan/front_desk.h"
#include "sheet/sheet.h"

namespace furnish {

// What a front desk asked for, as pages for the desk: a pet a row, with a box to tick, how to reach
// its owner, and "staff only" in the foot, since numbers stand there. Long lists go on over further
// pages. Empty iff an error was reported.

/// What all of them are set from.
struct DeskListInput {
  const Salon& salon;
  Date today;
  Paper paper;
  std::vector<std::string> missing{};  ///< keys of pets that cannot be read: the page names them
  bool all = true;  ///< false: something of pets that are there cannot be read
};

/// Who is due by a day.
std::optional<Sheet> make_list(std::span<const DueRow>, Date by, const DeskListInput&,
                               const SheetVoice&, DiagnosticSink&);
/// Vaccinations that ran out, or will by a day.
std::optional<Sheet> make_list(std::span<const ExpiringRow>, Date by, const DeskListInput&,
                               const SheetVoice&, DiagnosticSink&);
/// Pets that words were found of.
std::optional<Sheet> make_list(std::span<const FoundRow>, const std::string& words,
                               const DeskListInput&, const SheetVoice&, DiagnosticSink&);
}  // namespace furnish
