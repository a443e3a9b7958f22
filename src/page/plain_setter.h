#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "page/open_face.h"
#include "page/prepared_text.h"
#include "page/shaped_line.h"

namespace furnish {

enum class Breaking : std::uint8_t;
enum class Keeping : std::uint8_t;

/// Sets plain text: Latin letters in the bundled family, from left to right, in lines that end
/// where Pango says that they may. A stretch is set once, in units of its face, and then only
/// scaled and broken anew for each size and width that is tried. What needs more is Pango's, and a
/// test holds what is set here to what Pango makes of it.
class PlainSetter {
 public:
  using Lines = std::vector<std::shared_ptr<const ShapedLine>>;

  /// Keeps the reference. `language` is BCP 47.
  PlainSetter(FontSet&, std::string language);

  /// The lines of a text, with distances in Pango's units (1024 to a point); `width` is negative if
  /// only a line end breaks one. Empty if the text needs more than is known here: other scripts,
  /// marks and signs, a word to be parted, a font that cannot be opened.
  std::optional<Lines> set(const Prepared&, int width, int indent, Breaking);
  /// As TextShaper::forget().
  void forget();

 private:
  struct Breaks {
    std::vector<bool> before;  ///< by byte: a line may begin there
    bool pairs = false;        ///< something is kept together that could be parted
    bool asked = true;         ///< since forget() was called last
  };
  struct Units {
    std::vector<UnitGlyph> glyphs;
    bool asked = true;
  };
  struct Cut;
  struct Placed;
  struct Span;
  class Job;

  const std::vector<UnitGlyph>& units(std::string_view text, Face, bool latin);
  const Breaks& breaks(const std::string& text, Keeping);

  FontSet& fonts_;
  std::string language_;
  bool knows_language_;
  std::unordered_map<std::string, Units> units_;
  std::unordered_map<std::string, Breaks> breaks_;
};
}  // namespace furnish
