#pragma once

#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "base/geometry.h"
#include "base/source.h"
#include "page/frame.h"
#include "page/shaper.h"
#include "page/type.h"

namespace furnish {

/// How blocks measure: by the widths of single characters, which is a hundred times cheaper and
/// good enough to choose a size, or by setting the text.
enum class Precision : std::uint8_t { draft, exact };

/// All that blocks are set with. One is made for each growth step.
struct Setting {
  TypeScale type;
  Length rhythm;  ///< the unit of space: 4 mm, or 3 on small cards
  TextShaper& shaper;
  Precision precision = Precision::exact;
  /// Of every style's distance between lines, how much is used: a crowded layout sets closer.
  double leading = 1;
};

/// What a block needs at a given width.
struct Extent {
  Length least;            ///< height with every gap at its least
  Length wanted;           ///< height as designed; never under `least`
  int stretch = 0;         ///< its part of spare room beyond `wanted`; 0 stays as it is
  Length baseline{};       ///< first baseline from the top; zero if there is no text
  Length last_baseline{};  ///< the last one, at the height wanted
  Length too_wide{};  ///< by how much its widest unbreakable piece exceeds the width; else zero
};

/// Where a block came from, for messages: a short name ("alerts") and the entry in the file.
struct Origin {
  std::string name;
  SourceSpan span;
};

class Block;
/// Blocks never change once made, so layouts may share them.
using BlockPtr = std::shared_ptr<const Block>;

/// A rectangle of content that does not know where it will stand.
class Block {
 public:
  struct Part {
    const Block* block;
    Extent extent;
  };

  explicit Block(Origin origin = {}) : origin_(std::move(origin)) {}
  virtual ~Block() = default;
  Block(const Block&) = delete;
  Block& operator=(const Block&) = delete;

  /// Phase 1 decides: lines, rows. Depends on the width and the setting, never on the page.
  virtual Extent measure(Length width, const Setting&) const = 0;
  /// Phase 2 obeys: adds marks inside `box`, nothing outside it.
  /// pre: the same setting, and box.size.height >= measure(box.size.width).least.
  virtual void place(const Rect& box, const Setting&, Frame&) const = 0;
  /// Width that it takes if no line is broken; zero if it takes what it is given.
  virtual Length natural_width(const Setting&) const { return {}; }
  /// The blocks it is made of, and what each takes at this width; for messages about overflow.
  virtual std::vector<Part> parts(Length /*width*/, const Setting&) const { return {}; }

  const Origin& origin() const { return origin_; }

 private:
  Origin origin_;
};
}  // namespace furnish
