#pragma once

#include <vector>

#include "page/alerts.h"
#include "sheet/card_rows.h"

namespace furnish {

/// An alert of a card, and whether its front keeps it.
struct CardAlert {
  AlertEntry entry;
  Kept kept = Kept::door;
};

/// Notices as they are, or all in one row.
enum class Notices : std::uint8_t { apart, in_one };

/// Gravest first, signal words as large as labels.
std::vector<CardAlert> card_alerts(const SheetDesk&, Notices = Notices::apart);
/// The same in pieces that any paper holds: long texts are cut between words.
std::vector<AlertEntry> cut(const AlertEntry&);
}  // namespace furnish
