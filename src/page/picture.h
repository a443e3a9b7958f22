#pragma once

#include <array>
#include <optional>
#include <string>

#include "page/canvas.h"
#include "page/photograph.h"

namespace furnish {

/// A photo in a frame of a fixed shape, cropped by crop_to(). Like Canvas it takes the room it is
/// given, from `least` to `most` height by `stretch`, keeps width/height `aspect` and stands in the
/// middle. Tagged as a figure with its alternative text.
class Picture final : public Block {
 public:
  /// pre: a photo, and words that stand for it.
  Picture(PhotographPtr, std::string alt, std::optional<std::array<double, 2>> focus, double aspect,
          Length least, Length most, int stretch, Origin = {});
  Extent measure(Length width, const Setting&) const override;
  void place(const Rect&, const Setting&, Frame&) const override;

 private:
  Canvas canvas_;
};

/// Pictures and what is said under each, set as `block` sets them, which holds as many captions
/// (Structure::caption) as pictures: a listener hears each caption with its picture.
BlockPtr captioned(BlockPtr block);

/// What stands in a photo's place if it cannot be shown: a thin dashed frame of the same shape,
/// with `says` in its middle. Higher than `least` if the words need it.
BlockPtr missing_picture(std::string says, double aspect, Length least, Length most, int stretch,
                         Origin = {});
}  // namespace furnish
