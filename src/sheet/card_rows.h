#pragma once

#include <string>
#include <vector>

#include "page/alerts.h"
#include "page/paragraph.h"
#include "sheet/sheet.h"

namespace furnish {

/// Between a label and the text that runs on after it: a figure space, half an em wide. The family
/// has no en or em space, for which a font of the machine would be searched.
inline constexpr const char* after_label = "\u2007";

/// One row of a card before it is decided how it is set: a label, a text, points of which some
/// differ from the style, and lines that wait for a hand.
struct CardRow {
  struct Point {
    std::vector<TextSpan> text;
    bool differs = false;
  };
  std::string label;
  std::vector<TextSpan> text;
  std::vector<Point> points;
  std::vector<std::string> hand_lines;  ///< label of each
  Role role = Role::body;
  Origin origin{};
  bool at_the_door = false;  ///< needed to open the kennel and to hand the dog back
};

/// Whoever opens the kennel needs every danger and warning, and what is about the dog, its bath and
/// its drying. Cautions about single cuts are for the table: they stand on the style sheet.
bool belongs_on_card(const Caution&);

/// Which of the plan's cautions stand among the alerts: those that belong on a card and nobody
/// accepted, or all, accepted ones marked as such. None on an owner's page: they are about the work.
enum class CautionScope : std::uint8_t { none, card, all };
/// The pet's alerts and the plan's cautions, gravest first; of one gravity the pet's own come
/// first. The plan's are set smaller.
std::vector<AlertEntry> alert_entries(const SheetInput&, const SheetVoice&, CautionScope);
/// The rows under the alerts, in the order they are needed; what is not there takes no row, unless
/// a hand should write it.
std::vector<CardRow> card_rows(const SheetInput&, const SheetVoice&);
/// Boxes to tick, in the order of the work of this plan.
std::vector<std::string> card_ticks(const SheetInput&, const SheetVoice&);

/// "Spitz cross, orange sable" and "male, neutered · 5 years · 4.6 kg": so that the right dog comes
/// out.
std::vector<TextSpan> looks_text(const SheetInput&, const SheetVoice&);
std::vector<TextSpan> facts_text(const SheetInput&, const SheetVoice&);
/// First letter in upper case, a full stop at the end unless there is one or another mark.
std::string sentence(const std::string&);
}  // namespace furnish
