#pragma once

#include <string>
#include <vector>

#include "page/block.h"

namespace furnish {

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
