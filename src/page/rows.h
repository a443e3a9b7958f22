#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "page/paragraph.h"

namespace furnish {

/// The edge that the texts of a page share: the widest label that was announced, and a gutter. Rows
/// and alerts of one page hold the same one, so that all their texts begin at one line.
class LabelColumn {
 public:
  LabelColumn() = default;
  /// An edge that is the same whatever labels a page has: pages of one set share it.
  explicit LabelColumn(Length fixed) : fixed_(fixed) {}
  /// Announces a label, before the page is measured; Rows and Alerts do so themselves. `indent` is
  /// what stands around it, in parts of the rhythm.
  void add(std::string label, Role = Role::label, Face = Face::semibold, double indent = 0);
  /// From the left edge of the column to that of the texts; never over 40 % of `width`, in which
  /// case labels take two lines. One that is fixed leaves the texts 45 %.
  Length width(Length width, const Setting&) const;

 private:
  struct Label {
    std::shared_ptr<const Block> text;
    double indent;
  };
  std::vector<Label> labels_;
  std::optional<Length> fixed_;
};

/// A row: a small semibold label, and beside it, on the same baseline, what it says. An empty label
/// leaves its place free. Tagged as a list item of label and text.
struct LabelRow {
  std::string label;
  BlockPtr content;
  Origin origin{};
  bool with_next = false;  ///< stands beside the next row where that takes less height
};

/// Rows under each other, a quiet hairline between them and a stronger rule to close the group.
/// Two that stand beside each other have half the width each, with a label's column of its own.
class Rows final : public Block {
 public:
  enum class Close : std::uint8_t { rule, open };
  /// What a label is to a listener: that of an item in a list, or a heading to go to.
  enum class Labels : std::uint8_t { items, headings };
  Rows(std::vector<LabelRow>, std::shared_ptr<LabelColumn>, Close = Close::rule, Origin = {},
       Labels = Labels::items);
  Extent measure(Length width, const Setting&) const override;
  void place(const Rect&, const Setting&, Frame&) const override;
  std::vector<Part> parts(Length width, const Setting&) const override;

 private:
  class Row;
  BlockPtr stack_;  ///< null if there are no rows
};
}  // namespace furnish
