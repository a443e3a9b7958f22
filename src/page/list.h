#pragma once

#include <vector>

#include "page/block.h"

namespace furnish {

/// A diamond says that something differs from what is usual; a dot only that a point begins.
enum class Marker : std::uint8_t { none, diamond, dot, ring };

/// Blocks under each other, each with a drawn mark before its first line, or none. The mark is a
/// path and no letter, so that copied text stays clean.
class BulletList final : public Block {
 public:
  struct Item {
    BlockPtr content;
    Marker marker = Marker::diamond;
    bool explains = false;  ///< says itself what the diamond before it means
  };
  explicit BulletList(std::vector<Item>, Origin = {});
  Extent measure(Length width, const Setting&) const override;
  void place(const Rect&, const Setting&, Frame&) const override;
  std::vector<Part> parts(Length width, const Setting&) const override;

 private:
  std::vector<Item> items_;
};

/// A filled circle of the width `size`.
Contour dot(Point centre, Length size);
/// A solid diamond of the width `size` with its middle at `centre`, as one path.
Contour diamond(Point centre, Length size);
}  // namespace furnish
