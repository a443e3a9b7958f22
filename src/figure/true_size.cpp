#include "figure/true_size.h"

#include <algorithm>
#include <memory>
#include <utility>

#include "figure/hatching.h"
#include "figure/set_text.h"

namespace furnish {
namespace {
constexpr Length bar_height = 3.2_mm, gap = 2_mm, rule_length = 50_mm, line = 0.15_mm;

/// One bar or the rule, with its words beside or under it.
struct Entry {
  Length bar;  ///< how far it reaches
  std::shared_ptr<const ShapedText> words;
  bool beside = true;
  Length height;
};

class Bars final : public Block {
 public:
  Bars(std::vector<TrueSizeBar> bars, std::string note, Origin origin)
      : Block(std::move(origin)), bars_(std::move(bars)), note_(std::move(note)) {}

  Extent measure(Length width, const Setting& setting) const override {
    Extent extent;
    for (const Entry& entry : entries(width, setting)) extent.wanted += entry.height;
    extent.least = extent.wanted;
    extent.too_wide = std::max(Length{}, rule_length - width);
    return extent;
  }

  void place(const Rect& box, const Setting& setting, Frame& frame) const override {
    const std::vector<Entry> all = entries(box.size.width, setting);
    Length y = box.top();
    for (std::size_t i = 0; i < all.size(); ++i) {
      const Point at{box.left(), y};
      if (i < bars_.size()) {
        if (all[i].bar > Length{}) draw_bar(bars_[i].left, at, frame);
      } else {
        draw_rule(at, frame);
      }
      draw_words(all[i], at, frame);
      y += all[i].height;
    }
  }

 private:
  std::vector<Entry> entries(Length width, const Setting& setting) const {
    std::vector<Entry> out;
    const auto add = [&](Length bar, const std::string& words) {
      const std::vector<SizedText> text{
          {words, Face::regular, Role::label, setting.type[Role::label]}};
      Entry entry{bar > width ? Length{} : bar, nullptr, true, {}};
      const Length room = entry.bar > Length{} ? width - entry.bar - gap : width;
      entry.beside = setting.shaper.natural_width(text) <= room;
      entry.words = setting.shaper.shape(text, entry.beside ? room : width, Breaking::balanced);
      const Length words_height = pitch(entry) * static_cast<int>(entry.words->lines.size());
      entry.height = entry.beside ? std::max(words_height, bar_height) + gap / 2
                                  : bar_height + words_height + gap / 2;
      out.push_back(std::move(entry));
    };
    for (const TrueSizeBar& bar : bars_) add(bar.left.high, bar.label);
    if (!note_.empty()) add(rule_length, note_);
    return out;
  }

  static Length pitch(const Entry& entry) {
    return Length::points(entry.words->lines.front()->points() * 1.15);
  }

  /// Solid to the low end, hatched to the high one; every mark ends inside, so that lengths are
  /// true.
  static void draw_bar(LengthRange left, Point at, Frame& frame) {
    const auto fill = [&](Length x, Length dy, Length width, Length height) {
      frame.marks.emplace_back(FillMark{{{at.x + x, at.y + dy}, {width, height}}, Ink::text});
    };
    if (left.low > Length{}) fill({}, {}, left.low, bar_height);
    if (left.high <= left.low) return;
    const Length more = left.high - left.low;
    frame.marks.emplace_back(
        HatchMark{{rectangle_contour({{at.x + left.low, at.y}, {more, bar_height}})},
                  45,
                  0.8_mm,
                  0.15_mm,
                  Ink::text,
                  false});
    fill(left.low, {}, more, line);
    fill(left.low, bar_height - line, more, line);
    fill(left.high - std::min(line, more), {}, std::min(line, more), bar_height);
  }

  static void draw_rule(Point at, Frame& frame) {
    constexpr Length thick = 0.3_mm, tick = 0.2_mm, tall = 2.4_mm, low = 1.4_mm;
    const auto fill = [&](Length x, Length dy, Length width, Length height) {
      frame.marks.emplace_back(FillMark{{{at.x + x, at.y + dy}, {width, height}}, Ink::text});
    };
    fill({}, bar_height - thick, rule_length, thick);
    for (int cm = 0; cm <= 5; ++cm) {
      const Length x = 10_mm * cm, height = cm % 5 == 0 ? tall : low;
      const Length from = cm == 0 ? x : cm == 5 ? x - tick : x - tick / 2;
      fill(from, bar_height - height, tick, height);
    }
  }

  static void draw_words(const Entry& entry, Point at, Frame& frame) {
    const Length capital = capitals(*entry.words->lines.front());
    const Length x = entry.beside && entry.bar > Length{} ? at.x + entry.bar + gap : at.x;
    Length baseline = entry.beside ? at.y + (bar_height + capital) / 2
                                   : at.y + bar_height + (pitch(entry) + capital) / 2;
    if (entry.beside) baseline = std::max(baseline, at.y + (pitch(entry) + capital) / 2);
    const TagScope tag(frame, Structure::paragraph);
    for (const auto& words : entry.words->lines) {
      frame.marks.emplace_back(
          TextMark{{x, baseline}, words, Ink::text, std::string(name(Role::label))});
      baseline += pitch(entry);
    }
  }

  std::vector<TrueSizeBar> bars_;
  std::string note_;
};
}  // namespace

BlockPtr true_size_bars(std::vector<TrueSizeBar> bars, std::string print_note, Origin origin) {
  return std::make_shared<Bars>(std::move(bars), std::move(print_note), std::move(origin));
}
}  // namespace furnish
