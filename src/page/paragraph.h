#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "page/block.h"
#include "page/remembered.h"

namespace furnish {

class Sketch;
struct SketchedLine;

/// Part of a paragraph. What is not given is the paragraph's.
struct TextSpan {
  std::string text;
  std::optional<Face> face{};
  std::optional<Role> role{};  ///< another size
};

/// Spans in another language than the page's, which stand in a paragraph of their own.
struct ApartText {
  std::vector<TextSpan> spans;
  std::string language;  ///< BCP 47
  bool empty() const { return spans.empty(); }
};

enum class Align : std::uint8_t { start, end };

struct TextStyle {
  Role role = Role::body;
  Face face = Face::regular;
  Ink ink = Ink::text;
  Align align = Align::start;
  Breaking breaking = Breaking::balanced;
  std::optional<Structure> structure = Structure::paragraph;  ///< none: its parent has a tag
  std::string language{};  ///< BCP 47, if it is another than the page's
  double leading = 1.24;   ///< from baseline to baseline, in parts of the size
};

/// Text in lines. No hyphens; the lines of right-to-left text run right to left but keep the page's
/// edge. Too wide only if it may not break, or if not even one character fits.
class Paragraph final : public Block {
 public:
  Paragraph(std::vector<TextSpan>, TextStyle = {}, Origin = {});
  Paragraph(std::string text, TextStyle = {}, Origin = {});
  Extent measure(Length width, const Setting&) const override;
  void place(const Rect& box, const Setting&, Frame&) const override;
  Length natural_width(const Setting&) const override;
  /// Room at the start of the first line, for a mark that runs into the text. Before it is shared.
  void indent_first_line(std::function<Length(const Setting&)> indent) {
    indent_ = std::move(indent);
  }
  /// Of the first line as it is set in `width`.
  Length first_line_width(Length width, const Setting&) const;
  const TextStyle& style() const { return style_; }

 private:
  struct Lines;
  std::vector<SizedText> sized(const Setting&) const;
  std::shared_ptr<const ShapedText> shaped(Length width, const Setting&) const;
  std::vector<SketchedLine> sketched(Length width, const Setting&, Breaking, Length indent) const;
  Lines lines(Length width, const Setting&) const;
  Extent worked_out(Length width, const Setting&) const;
  std::vector<TextSpan> spans_;
  TextStyle style_;
  std::function<Length(const Setting&)> indent_;
  mutable Remembered<Extent> measured_;
  mutable std::shared_ptr<const Sketch> sketch_;
  mutable const FontSet* sketched_with_ = nullptr;
};

/// A paragraph and, under it, what stands apart in another language: read aloud in that.
BlockPtr passage(std::vector<TextSpan>, ApartText, TextStyle = {}, const Origin& = {});

/// Shorthands that most sheets need.
BlockPtr paragraph(std::string, TextStyle = {}, Origin = {});
BlockPtr paragraph(std::vector<TextSpan>, TextStyle = {}, Origin = {});
}  // namespace furnish
