#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "page/alerts.h"
#include "page/rows.h"
#include "sheet/sheet.h"

namespace furnish {

/// Whoever opens the kennel needs every danger and warning, and what is about the dog, its bath and
/// its drying. Cautions about single cuts are for the table: they stand on the style sheet.
bool belongs_on_card(const Caution&);

/// Which of the plan's cautions that nobody accepted stand among the alerts: those that belong on a
/// card, or all. None on an owner's page: they are about the work.
enum class CautionScope : std::uint8_t { none, card, all };
/// The pet's alerts and the plan's cautions, gravest first, one row a matter; of one gravity the
/// pet's own come first, after what
/// says that a visit's file, or a part of the salon's, could not be read. A caution that an alert's
/// places cause is said in the alert's row, at the gravity of the two. Dangers and warnings are set
/// for the distance of alerts, the rest as body.
std::vector<AlertEntry> alert_entries(const SheetDesk&, CautionScope);
/// What says that these parts of the salon's file are not known; empty if there are none.
std::string salon_unread_text(const std::vector<std::string>& parts, const Words&);
/// "WARNING"
std::string signal_word(Signal, const Words&);
/// What stands in their place where there are none, in a row or as one text.
BlockPtr no_alerts(const SheetDesk&, const std::shared_ptr<LabelColumn>&);
BlockPtr no_alerts_run_in(const SheetDesk&, std::string_view after_its_label);
}  // namespace furnish
