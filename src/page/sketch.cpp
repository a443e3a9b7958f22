#include "page/sketch.h"

#include <glib.h>

#include <algorithm>

#include "base/said_in.h"
#include "page/kept_together.h"

namespace furnish {
namespace {
/// In points; what a width loses by being rounded to micrometres must not break a line.
constexpr double slack = 0.01;

/// Collects words into lines. Widths in points.
class Sketcher {
 public:
  Sketcher(double room, double indent) : room_(room), line_(indent) {}

  void letters(double width, double points) {
    word_ += width;
    word_points_ = std::max(word_points_, points);
  }
  void kept_space(double width) { word_ += width; }
  void space(double width) {
    end_word();
    spaces_ += width;
  }

  void end_word() {
    if (word_ <= 0) return;
    if (line_ > 0 && line_ + spaces_ + word_ > room_ + slack) {
      lines_.push_back({Length::points(line_), points_});
      line_ = spaces_ = points_ = 0;
    }
    points_ = std::max(points_, word_points_);
    line_ += spaces_ + word_;
    // A word that is broken anywhere; a line holds about one letter, however narrow it is.
    const double room = std::max(room_, points_);
    while (line_ > room + slack) {
      lines_.push_back({Length::points(room), points_});
      line_ -= room;
    }
    word_ = spaces_ = word_points_ = 0;
  }

  void end_line() {
    end_word();
    lines_.push_back({Length::points(line_), points_});
    line_ = spaces_ = points_ = 0;
  }

  std::vector<SketchedLine> finish() {
    end_line();
    return std::move(lines_);
  }

 private:
  double room_, word_ = 0, spaces_ = 0, line_ = 0, points_ = 0, word_points_ = 0;
  std::vector<SketchedLine> lines_;
};
}  // namespace

Sketch::Sketch(const std::vector<SizedText>& parts, const FontSet& fonts) {
  char32_t before = U'\n', ended_by = U'\n';  // the character before; the last one before a space
  std::vector<Bit> pending;                   // spaces of which it is not known yet what they part
  for (std::size_t part = 0; part < parts.size(); ++part) {
    LanguageMarks marks;
    const std::string& text = parts[part].text;
    const char* const end = text.data() + text.size();
    for (const char* at = text.data(); at < end; at = g_utf8_next_char(at)) {
      const char32_t c = g_utf8_get_char_validated(at, end - at);
      if (marks.take(c)) continue;
      if (c == U'\n') {
        pending.clear();
        add(Step::line_end, part, 0);
        before = ended_by = U'\n';
        continue;
      }
      const double width = fonts.advance(parts[part].face, c);
      if (c == U' ') {
        if (before != U' ') ended_by = before;
        pending.push_back({Step::space, part, width});
      } else {
        const bool kept = !pending.empty() && kept_together(ended_by, c);
        for (const Bit& bit : pending) {
          add(kept ? Step::kept_space : Step::space, bit.part, bit.width);
        }
        pending.clear();
        add(Step::letters, part, width);
        // Scripts of East Asia break between any two letters, Latin after hyphens and dashes.
        if (g_unichar_iswide(c) || c == U'-' || c == 0x2010 || c == 0x2013 || c == 0x2014) {
          add(Step::may_end, part, 0);
        }
      }
      before = c;
    }
  }
}

void Sketch::add(Step step, std::size_t part, double width) {
  const bool like_last = !bits_.empty() && bits_.back().step == step && bits_.back().part == part;
  if (like_last && step != Step::line_end) {
    bits_.back().width += width;
  } else {
    bits_.push_back({step, part, width});
  }
}

std::vector<SketchedLine> Sketch::lines(const std::vector<TypeSize>& sizes, Length width,
                                        Breaking breaking, Length indent) const {
  Sketcher sketcher(breaking == Breaking::never ? 1e9 : width.in_points(), indent.in_points());
  for (const Bit& bit : bits_) {
    const double points = sizes[bit.part].points(), wide = bit.width * points;
    switch (bit.step) {
      case Step::letters:
        sketcher.letters(wide, points);
        break;
      case Step::kept_space:
        sketcher.kept_space(wide);
        break;
      case Step::space:
        sketcher.space(wide);
        break;
      case Step::may_end:
        sketcher.end_word();
        break;
      case Step::line_end:
        sketcher.end_line();
        break;
    }
  }
  return sketcher.finish();
}
}  // namespace furnish
