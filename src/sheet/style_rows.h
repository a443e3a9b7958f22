#pragma once

#include <optional>
#include <string>
#include <vector>

#include "figure/figure.h"
#include "plan/matters.h"
#include "sheet/sheet.h"

namespace furnish {

/// What happens to the places of a row.
enum class RowKind : std::uint8_t { no_tool, brush, cut };

/// Places of a row with the same note and finish.
struct RowPart {
  std::vector<Place> places;
  std::string names;               ///< "chest", "body", "hocks and left ear"
  const TrimPart* part = nullptr;  ///< of the first place; null where no tool may touch
  std::string finish;              ///< of ears, tail or feet
  std::string instead;             ///< what the drawer lacks, and the difference
};

/// A row of the style sheet's table, which is the order of work: places cut alike, done while one
/// tool is in hand, that leave the same length. They share one number on the figure.
struct StyleRow {
  int number = 0;
  RowKind kind = RowKind::cut;
  std::vector<Place> places;  ///< of all its parts
  std::string names;
  std::vector<RowPart> parts;            ///< at least one
  std::string tool;                      ///< in hand, said once a group
  std::optional<ToolKind> kind_of_tool;  ///< how the figure hatches it
  bool opens_group = false;
  bool differs = false;
  std::optional<LengthRange> left;
  bool wash_first = false;               ///< the tool was where none goes to a face from
  bool natural = false;                  ///< brushed: the coat's own length
  std::vector<Matter> restraints;        ///< what the plan forbids or limits there
  std::vector<const Caution*> standing;  ///< of the plan: advice that is said here and nowhere else
  std::string id() const { return "row-" + std::to_string(number); }
};
/// First what no tool may touch, then what is only brushed, then tool by tool as the plan has it.
std::vector<StyleRow> style_rows(const SheetDesk&);
/// The dog that wears the trim, numbered like the rows.
FigureInput style_figure(const std::vector<StyleRow>&, const SheetDesk&);

/// More numbers than this on one figure are not followed (common practice, no source): brushed
/// places then share one too, and what is not seen from the side goes without.
inline constexpr std::size_t most_numbers = 12;
}  // namespace furnish
