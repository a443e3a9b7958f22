#pragma once

#include <cstdint>
#include <vector>

#include "sheet/parts.h"

namespace furnish {

/// A card's two layers: above, what can hurt and how to handle; below, the work.
enum class CardLayer : std::uint8_t { dog, work };

/// What the front of a card keeps; where it does not hold all, the last of these goes over to the
/// other side first. `door`: what is needed at the kennel's door, dangers, warnings and places that
/// no tool may touch among it. `cautions`: the pet's own. `work`: bath, drying, finish. `hand`:
/// what is ticked and written by hand. `plan`: the plan's cautions. `advice`: notices, and what no
/// work waits for. `history`: what earlier visits left, and what the plan adds to the trim.
enum class Kept : std::uint8_t { door, trim, cautions, work, hand, plan, advice, history };

/// How much a front keeps: up to so much; without the pet's cautions where they would leave no room
/// for the work.
struct Front {
  Kept most = Kept::history;
  bool cautions = true;
  bool keeps(Kept one) const { return one <= most && (cautions || one != Kept::cautions); }
};

/// Whether what is as the style has it is said again, or only what differs from it.
enum class StyleLines : std::uint8_t { all, differing };

struct CardRow : SheetRow {
  CardLayer layer = CardLayer::dog;
  Kept kept = Kept::work;
  bool with_next = false;  ///< both are short: they may share a line
  bool asks = false;       ///< nothing but a line for what the file lacks
};

/// All rows of a card but its alerts, layer by layer in the order in which they are needed; what is
/// not there takes no row, unless a hand should write it.
std::vector<CardRow> card_rows(const SheetDesk&, StyleLines = StyleLines::all);
/// For the other side of a card, where there is one: its vaccinations, and visits before the last.
std::vector<SheetRow> history_rows(const SheetDesk&);
/// The rows of the upper layer, and of the lower.
std::vector<CardRow> dog_rows(const SheetDesk&);
std::vector<CardRow> work_rows(const SheetDesk&, StyleLines);

/// True if the pet was never here before: its card asks for what the file lacks.
bool is_new_client(const SheetInput&);
/// Every label that a row of a card may have, so that the texts of all cards begin at one edge.
std::vector<Phrase> card_labels();
}  // namespace furnish
