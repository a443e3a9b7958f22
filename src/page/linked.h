#pragma once

#include <string>

#include "page/block.h"

namespace furnish {

/// Content that leads to a place of the document, wherever on it one points.
class Linked final : public Block {
 public:
  /// `says`: where it leads, for who hears it.
  Linked(BlockPtr content, std::string id, std::string says);
  Extent measure(Length width, const Setting&) const override;
  void place(const Rect&, const Setting&, Frame&) const override;
  Length natural_width(const Setting&) const override;
  std::vector<Part> parts(Length width, const Setting&) const override;

 private:
  BlockPtr content_;
  std::string id_, says_;
};
}  // namespace furnish
