#include "page/paragraph.h"

#include <algorithm>
#include <string_view>

#include "page/sketch.h"
#include "page/stack.h"

namespace furnish {
namespace {
/// What a line needs to be stacked: its largest size, and how far its ink reaches from its
/// baseline.
struct Strip {
  Length width;
  double points;
  Length above, below;
};

bool is_ascii(const std::string& text) {
  return std::ranges::all_of(text, [](char c) { return static_cast<unsigned char>(c) < 0x80; });
}

/// Plain Latin in the bundled family stays within these parts of the size above and below its
/// baseline; a test holds every such character to them.
constexpr double plain_above = 0.78, plain_below = 0.26;

Strip plain(Length width, double points) {
  return {width, points, Length::points(points * plain_above),
          Length::points(points * plain_below)};
}

/// The white before a large first letter, which would set it in from the edge that small text
/// shows.
Length bearing(const ShapedLine& line) {
  constexpr double large_points = 18;
  return line.points() < large_points ? Length{} : std::max(Length{}, line.ink().left());
}

std::vector<Strip> strips(const ShapedText& text) {
  std::vector<Strip> result;
  for (const auto& line : text.lines) {
    Strip& strip = result.emplace_back(plain(line->width(), line->points()));
    if (is_ascii(line->text())) continue;  // what the ink of others reaches costs to find out
    const Rect ink = line->ink();
    strip.above = -ink.top();
    strip.below = ink.bottom();
  }
  return result;
}

std::vector<Strip> strips(const std::vector<SketchedLine>& lines) {
  std::vector<Strip> result;
  for (const SketchedLine& line : lines) result.push_back(plain(line.width, line.points));
  return result;
}
/// Sentences apart from each other (UAX #9) that nothing but a space parts are set apart as one: on
/// a page from right to left each would begin to the left of the one before it, and who reads both
/// would join the end of one line with the start of the other.
void join_isolates(std::vector<TextSpan>& spans) {
  constexpr std::string_view begin = "\u2068", end = "\u2069";
  TextSpan* last = nullptr;  // the text with the latest end, if only spaces came after it
  std::size_t ended = 0;
  for (TextSpan& span : spans) {
    for (std::size_t i = 0; i < span.text.size();) {
      if (last != nullptr && span.text.compare(i, begin.size(), begin) == 0) {
        span.text.erase(i, begin.size());
        last->text.erase(ended, end.size());
        if (last == &span) i -= end.size();
        last = nullptr;
      } else if (span.text.compare(i, end.size(), end) == 0) {
        last = &span;
        ended = i;
        i += end.size();
      } else {
        if (span.text[i] != ' ') last = nullptr;
        ++i;
      }
    }
  }
}
}  // namespace

/// Baselines of a paragraph's lines from its top, its height, and its widest line.
struct Paragraph::Lines {
  std::vector<Length> baselines;
  Length height, width;
};

/// The distance between lines is that of the style unless ink would meet, as it can where accents
/// are piled up or a fallback font is tall.
Paragraph::Lines Paragraph::lines(Length width, const Setting& setting) const {
  const FontSet& fonts = setting.shaper.fonts();
  const Length indent = indent_ ? indent_(setting) : Length{};
  const std::vector<Strip> all = setting.precision == Precision::draft
                                     ? strips(sketched(width, setting, style_.breaking, indent))
                                     : strips(*shaped(width, setting));
  // The middle of small letters stands in the middle of the line, so that text between two rules
  // looks centred.
  const double leading = style_.leading * setting.leading;
  const double up = leading / 2 + fonts.small_height() / 2, down = leading - up;
  Lines lines;
  Length below;  // what the line above reaches down to, from its baseline
  for (const Strip& strip : all) {
    const double points = strip.points > 0 ? strip.points : setting.type[style_.role].points();
    const Length above = Length::points(points * up);
    if (lines.baselines.empty()) {
      lines.baselines.push_back(std::max(above, strip.above));
    } else {
      lines.baselines.push_back(lines.baselines.back() +
                                std::max(Length::points(points * leading), below + strip.above));
    }
    below = strip.below;
    lines.height = lines.baselines.back() + std::max(Length::points(points * down), below);
    lines.width = std::max(lines.width, strip.width);
  }
  return lines;
}

Paragraph::Paragraph(std::vector<TextSpan> spans, TextStyle style, Origin origin)
    : Block(std::move(origin)), spans_(std::move(spans)), style_(style) {
  join_isolates(spans_);
}

Paragraph::Paragraph(std::string text, TextStyle style, Origin origin)
    : Paragraph(std::vector<TextSpan>{{std::move(text)}}, style, std::move(origin)) {}

std::vector<SizedText> Paragraph::sized(const Setting& setting) const {
  std::vector<SizedText> parts;
  for (const TextSpan& span : spans_) {
    const Role role = span.role.value_or(style_.role);
    parts.push_back({span.text, span.face.value_or(style_.face), role, setting.type[role]});
  }
  return parts;
}

std::vector<SketchedLine> Paragraph::sketched(Length width, const Setting& setting,
                                              Breaking breaking, Length indent) const {
  const FontSet& fonts = setting.shaper.fonts();
  if (!sketch_ || sketched_with_ != &fonts) {
    sketch_ = std::make_shared<const Sketch>(sized(setting), fonts);
    sketched_with_ = &fonts;
  }
  std::vector<TypeSize> sizes;
  for (const TextSpan& span : spans_) {
    sizes.push_back(setting.type[span.role.value_or(style_.role)]);
  }
  return sketch_->lines(sizes, width, breaking, indent);
}

std::shared_ptr<const ShapedText> Paragraph::shaped(Length width, const Setting& setting) const {
  return setting.shaper.shape(sized(setting), width, style_.breaking, origin().span,
                              indent_ ? indent_(setting) : Length{});
}

Extent Paragraph::measure(Length width, const Setting& setting) const {
  return measured_.of(width, setting, [&] { return worked_out(width, setting); });
}

Extent Paragraph::worked_out(Length width, const Setting& setting) const {
  const Lines all = lines(width, setting);
  Extent extent{all.height, all.height};
  extent.baseline = all.baselines.front();
  extent.last_baseline = all.baselines.back();
  extent.too_wide = std::max(Length{}, all.width - width);
  return extent;
}

void Paragraph::place(const Rect& box, const Setting& setting, Frame& frame) const {
  const auto text = shaped(box.size.width, setting);
  const Lines all = lines(box.size.width, setting);
  std::optional<TagScope> tag;
  const bool blank =
      std::ranges::all_of(text->lines, [](const auto& line) { return line->text().empty(); });
  if (style_.structure && !blank) {
    tag.emplace(frame, OpenTag{*style_.structure, {}, {}, {}, style_.language});
  }
  for (std::size_t i = 0; i < text->lines.size(); ++i) {
    const auto& line = text->lines[i];
    if (line->text().empty()) continue;
    const Length indent = i == 0 && indent_ ? indent_(setting) : Length{};
    const Length x = style_.align == Align::start ? box.left() + indent - bearing(*line)
                                                  : box.right() - line->width();
    frame.marks.emplace_back(TextMark{
        {x, box.top() + all.baselines[i]}, line, style_.ink, std::string(name(style_.role))});
  }
}

Length Paragraph::natural_width(const Setting& setting) const {
  if (setting.precision == Precision::draft) {
    const auto all = sketched({}, setting, Breaking::never, {});
    return std::ranges::max(all, {}, &SketchedLine::width).width;
  }
  return setting.shaper.natural_width(sized(setting), origin().span);
}

Length Paragraph::first_line_width(Length width, const Setting& setting) const {
  return shaped(width, setting)->lines.front()->width();
}

BlockPtr passage(std::vector<TextSpan> spans, ApartText apart, TextStyle style,
                 const Origin& origin) {
  if (apart.empty()) return paragraph(std::move(spans), std::move(style), origin);
  TextStyle other = style;
  other.language = std::move(apart.language);
  return std::make_shared<Column>(
      std::vector<BlockPtr>{paragraph(std::move(spans), std::move(style), origin),
                            paragraph(std::move(apart.spans), std::move(other), origin)});
}

BlockPtr paragraph(std::string text, TextStyle style, Origin origin) {
  return std::make_shared<Paragraph>(std::move(text), style, std::move(origin));
}
BlockPtr paragraph(std::vector<TextSpan> spans, TextStyle style, Origin origin) {
  return std::make_shared<Paragraph>(std::move(spans), style, std::move(origin));
}
}  // namespace furnish
