#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

typedef struct hb_font_t hb_font_t;

namespace furnish {

/// A glyph of a stretch of text. Distances are in units of the face.
struct UnitGlyph {
  std::uint32_t glyph;
  std::size_t at;  ///< byte of the stretch that its letters begin at
  int advance;     ///< its own
  int kerning;     ///< what its neighbours add to that
  int x, y;        ///< how far it is moved, right and up
  bool joined;     ///< a line that ended before it would change it or what stands before it
};

/// One font file, opened once, in the units of its face: without a size, nothing is rounded.
class OpenFace {
 public:
  /// Null if the file is no font, or lacks the height of its capitals or its small letters.
  static std::unique_ptr<OpenFace> open(const std::string& path);
  ~OpenFace();
  OpenFace(const OpenFace&) = delete;
  OpenFace& operator=(const OpenFace&) = delete;

  int units_per_em() const { return units_; }
  /// Of the drawn H, in em, and never more than the OS/2 table says: its capital height is that of
  /// the whole family, and the bolder faces of ours stand 1 % lower than it.
  double capital_height() const { return capital_; }
  /// Of the drawn x, likewise.
  double small_height() const { return small_; }
  /// What a line asks for above and below its baseline, in em.
  double ascent() const { return ascent_; }
  double descent() const { return descent_; }
  /// Width of a character in em, without kerning; negative if the face lacks it.
  double advance(char32_t) const;

  /// The glyphs of a text in one line, from left to right, as Pango would choose and place them.
  /// pre: its letters are Latin (`latin`), or it has none. `language` is BCP 47.
  std::vector<UnitGlyph> set(std::string_view text, bool latin, const std::string& language) const;

 private:
  explicit OpenFace(hb_font_t*);
  double outline_height(char32_t) const;
  hb_font_t* font_;
  int units_;
  double capital_ = 0, small_ = 0, ascent_ = 0, descent_ = 0;
};

/// True if a file can be read and begins as fonts do (OpenType specification, "Table directory").
bool begins_as_font(const std::string& path);
}  // namespace furnish
