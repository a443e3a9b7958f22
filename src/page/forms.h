#pragma once

#include <string>
#include <vector>

#include "page/block.h"

namespace furnish {

// What waits for a pen has no words of its own: whoever finishes the page gives each the words that
// a listener hears (sheet/spoken.h).

/// Boxes to tick, spread over the width, each with its label below; more rows if they would meet.
class TickRow final : public Block {
 public:
  enum class Labels : std::uint8_t { below, right };
  explicit TickRow(std::vector<std::string> labels, Labels = Labels::below, Origin = {});
  Extent measure(Length width, const Setting&) const override;
  void place(const Rect&, const Setting&, Frame&) const override;

 private:
  struct Plan;
  Plan plan(Length width, const Setting&) const;
  std::vector<std::string> labels_;
  Labels where_;
};

/// A box to tick before the first line of what it is for.
class Ticked final : public Block {
 public:
  /// `role`: the size of the first line.
  Ticked(BlockPtr content, Role role);
  Extent measure(Length width, const Setting&) const override;
  void place(const Rect&, const Setting&, Frame&) const override;
  Length natural_width(const Setting&) const override;

 private:
  Length indent(const Setting&) const;
  Length box(const Setting&) const;
  /// From the block's top to the content's, so that the box stands below the top.
  Length drop(const Extent& content, const Setting&) const;
  BlockPtr content_;
  Role role_;
};

/// A dotted line to write on by hand, at least 7 mm high, with a label before it if there is one.
class BlankLine final : public Block {
 public:
  explicit BlankLine(std::string label = {}, int lines = 1, Origin = {});
  Extent measure(Length width, const Setting&) const override;
  void place(const Rect&, const Setting&, Frame&) const override;

 private:
  std::string label_;
  int lines_;
};

/// Room that a hand needs for a line of writing (common practice, no source).
inline constexpr Length writing_height = Length::mm(7);
}  // namespace furnish
