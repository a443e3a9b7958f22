#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "page/paragraph.h"

namespace furnish {

/// How wide a column of a table is: a fixed width, what its widest cell needs, or a share of what
/// is left.
struct TableColumn {
  enum class Kind : std::uint8_t { fixed, natural, flexible };
  std::string head;
  Kind kind = Kind::flexible;
  Length width{};  ///< of a fixed column
  int flex = 1;    ///< of a flexible one
  Align align = Align::start;
  bool heads_rows = false;  ///< its cells say what the rows are about
};

/// A cell's text and what stands before it.
struct TableCell {
  std::vector<TextSpan> text;
  bool diamond = false;  ///< a solid mark after the first line
  /// A patch of hatching before the text, which says what the same hatching means elsewhere on the
  /// page; the mark's own area is not used.
  std::optional<HatchMark> patch{};
  bool struck = false;  ///< over the patch, crossed, a struck circle: not here
};

struct TableRow {
  std::vector<TableCell> cells;  ///< missing ones at the end are empty, more than columns are a bug
  Origin origin{};
  std::string id{};                  ///< what a link may name
  std::optional<LengthRange> bar{};  ///< on the rule under the row lies this at true size
  bool opens_group = false;          ///< the rule over the row is stronger
  bool joins_next = false;           ///< no rule under it: the row below belongs to it
  bool spans = false;                ///< the last cell given has the width of the missing ones too
};

/// Rows in columns with a head, hairlines between them and a stronger rule to close; all first
/// baselines of a row on one line. Tagged as a table whose rows all have as many columns: what
/// stands empty before the first text of a row or after its last belongs to the cell beside it, so
/// that a listener meets no blank one.
class Table final : public Block {
 public:
  /// `none`: the rows go on under a table that has the head.
  enum class Head : std::uint8_t { shown, none };
  /// Columns stand `least_gutter` apart or, with the rhythm, more.
  Table(std::vector<TableColumn>, std::vector<TableRow>, Role = Role::body, Origin = {},
        Head = Head::shown, Length least_gutter = {});
  Extent measure(Length width, const Setting&) const override;
  void place(const Rect&, const Setting&, Frame&) const override;
  std::vector<Part> parts(Length width, const Setting&) const override;

 private:
  class Row;
  BlockPtr stack_;
};
}  // namespace furnish
