#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "figure/figure.h"
#include "sheet/parts.h"

namespace furnish {

// What earlier visits and the pet's file hand on to whoever has the dog now; for staff.

/// Whether findings have the numbers of their squares on the figure.
enum class Numbers : std::uint8_t { no, yes };
/// "Belly, left: lump, pea-sized (24 Nov). Advice: vet this week.": a point for each finding that
/// no visit has closed. Seen three times or more, with all its days. Empty if there is none.
std::optional<SheetRow> look_again_row(const SheetDesk&, Numbers);
/// The same places on the figure.
std::vector<FigureSpot> finding_spots(const SheetDesk&);
/// "Mats: legs 4/4." Of what was felted, or matted right round; empty if nothing was.
std::vector<TextSpan> felt_text(const LastVisit&, const SheetVoice&);
/// The last visit, but one of today that is being written: that it was not done, why, and when the
/// last one was; where it was matted, what frightened the dog and what helped, what was done
/// otherwise and why, and its weight where it has another by now. Empty if there is none of all
/// that.
std::optional<SheetRow> last_time_row(const SheetDesk&);

/// Whether the line about the dryer stands among the others; a card has it under "Dry".
enum class DryerLine : std::uint8_t { apart, with_others };
/// How to hold, lift and dry the dog, when to stop and to let it rest. Empty if nobody says.
std::optional<SheetRow> handling_row(const SheetDesk&, DryerLine);
/// What to dry with, as the stricter of the pet's lines has it: "towel, then force dryer", "Not:
/// cage dryer." Empty if nobody says how.
std::string drying_text(const SheetDesk&);
/// The line about the dryer where it says more than that, and does not say what another rules out;
/// else empty.
std::string dryer_text(const SheetDesk&);
/// Conditions as they stand within a line: "blind, deaf". Empty without.
std::string condition_names(const SheetDesk&);
/// Conditions, which all change how a dog is handled: "Blind, deaf". Empty without.
std::string conditions_text(const SheetDesk&);
}  // namespace furnish
