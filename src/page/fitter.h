#pragma once

#include <optional>

#include "page/compose.h"

namespace furnish {

/// The page's parts at one growth step: what the root and the foot need, and the room for the root.
struct Measured {
  Extent root, foot;
  Length room;
  bool wide() const { return root.too_wide > Length{} || foot.too_wide > Length{}; }
  bool fits() const { return !wide() && root.wanted <= room; }
  bool fits_squeezed() const { return !wide() && root.least <= room; }
};

/// Measures one side of a sheet and sets it. The request and the shaper must outlive it.
class Fitter {
 public:
  Fitter(const PageRequest&, SideStyle, TextShaper&);

  Setting setting(int step, Precision) const;
  Measured measure(const Block& root, int step, Precision);
  /// The largest step up to `most` at which the root fits with its gaps as designed; empty if it
  /// fits at none. After this: the step was tried with the text set, not only drafted.
  std::optional<int> largest_step(const Block& root, int most);
  /// True if even a draft at the smallest sizes shows that the root is far too tall, so that
  /// setting its text would be work for nothing.
  bool hopeless(const Block& root);
  /// The finished side; mirrored where the shaper's language runs from right to left.
  Frame set(const Block& root, int step) const;
  /// Reports the root as too tall or too wide, with what takes the most room.
  void report(const Block& root, const Measured&, DiagnosticSink&) const;

  int measures() const { return measures_; }
  int drafts() const { return drafts_; }
  Length width() const { return area_.size.width; }

 private:
  int drafted_step(const Block& root, int most);
  void place(const Block& root, int step, Frame&) const;

  const PageRequest& request_;
  SideStyle style_;
  TextShaper& shaper_;
  Rect area_;
  int measures_ = 0, drafts_ = 0;
};
}  // namespace furnish
