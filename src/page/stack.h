#pragma once

#include <optional>
#include <vector>

#include "page/block.h"
#include "page/remembered.h"

namespace furnish {

/// Space. `least` and `wanted` are in parts of the rhythm; spare room goes to gaps by `stretch`.
class Gap final : public Block {
 public:
  explicit Gap(double wanted = 1, double least = 0.5, int stretch = 1);
  Extent measure(Length width, const Setting&) const override;
  void place(const Rect&, const Setting&, Frame&) const override {}

 private:
  double wanted_, least_;
  int stretch_;
};

/// Weights of rules, heaviest first: under the name, under heads, closing a group, between rows.
inline constexpr Length rule_name = Length::mm(0.9), rule_head = Length::mm(0.35),
                        rule_group = Length::mm(0.25), rule_row = Length::mm(0.12);

/// A line as wide as the column; takes as much height as its weight.
class Rule final : public Block {
 public:
  explicit Rule(Length weight, Ink ink = Ink::text) : weight_(weight), ink_(ink) {}
  Extent measure(Length width, const Setting&) const override;
  void place(const Rect&, const Setting&, Frame&) const override;

 private:
  Length weight_;
  Ink ink_;
};

/// Blocks one under the other. Spare room goes to whatever has stretch, evenly.
class Column final : public Block {
 public:
  explicit Column(std::vector<BlockPtr>, Origin = {}, std::optional<Structure> = std::nullopt);
  Extent measure(Length width, const Setting&) const override;
  void place(const Rect&, const Setting&, Frame&) const override;
  Length natural_width(const Setting&) const override;
  std::vector<Part> parts(Length width, const Setting&) const override;

 private:
  Extent worked_out(Length width, const Setting&) const;
  std::vector<BlockPtr> blocks_;
  std::optional<Structure> structure_;
  mutable Remembered<Extent> measured_;
};

/// Blocks side by side.
class Beside final : public Block {
 public:
  enum class Line : std::uint8_t { top, baseline, bottom, last_baseline };
  struct Cell {
    BlockPtr block;
    /// Fixed width; without one the cell shares what is left by `flex`.
    std::optional<Length> width{};
    int flex = 1;
  };
  Beside(std::vector<Cell>, Length gutter, Line = Line::baseline, Origin = {});
  Extent measure(Length width, const Setting&) const override;
  void place(const Rect&, const Setting&, Frame&) const override;
  Length natural_width(const Setting&) const override;
  std::vector<Part> parts(Length width, const Setting&) const override;

 private:
  std::vector<Length> widths(Length width) const;
  Extent worked_out(Length width, const Setting&) const;
  std::vector<Cell> cells_;
  Length gutter_;
  Line line_;
  mutable Remembered<Extent> measured_;
};

/// Something at each end of one line: the head's name and facts, the foot's salon and date. The
/// start takes its natural width, the end the rest. If both do not fit on a line and the end would
/// have less than two fifths of the width, it goes below.
class Ends final : public Block {
 public:
  /// `below` stands for `end` where that goes below, if it is to look different there; may be null.
  Ends(BlockPtr start, BlockPtr end, Length gutter, Beside::Line = Beside::Line::baseline,
       BlockPtr below = {}, Origin = {});
  Extent measure(Length width, const Setting&) const override;
  void place(const Rect&, const Setting&, Frame&) const override;
  std::vector<Part> parts(Length width, const Setting&) const override;

 private:
  BlockPtr arranged(Length width, const Setting&) const;
  BlockPtr start_, end_, below_;
  Length gutter_;
  Beside::Line line_;
};
}  // namespace furnish
