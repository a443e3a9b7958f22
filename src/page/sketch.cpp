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

  void add(char32_t c, double width, double points) {
    if (c == ' ') {
      if (before_ != ' ') ended_by_ = before_;
      pending_ += width;
      before_ = c;
      return;
    }
    if (before_ == ' ') {
      if (kept_together(ended_by_, c)) {
        word_ += pending_;
      } else {
        end_word();
        spaces_ += pending_;
      }
      pending_ = 0;
    }
    before_ = c;
    word_ += width;
    word_points_ = std::max(word_points_, points);
    // Scripts of East Asia break between any two letters, Latin after hyphens and dashes.
    if (g_unichar_iswide(c) || c == '-' || c == 0x2010 || c == 0x2013 || c == 0x2014) end_word();
  }

  void end_line() {
    end_word();
    pending_ = 0;
    before_ = ended_by_ = U'\n';
    lines_.push_back({Length::points(line_), points_});
    line_ = spaces_ = points_ = 0;
  }

  std::vector<SketchedLine> finish() {
    end_line();
    return std::move(lines_);
  }

 private:
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

  char32_t before_ = U'\n';    ///< the character before
  char32_t ended_by_ = U'\n';  ///< the last before the space
  double pending_ = 0;         ///< of spaces of which it is not known yet what they part
  double room_, word_ = 0, spaces_ = 0, line_ = 0, points_ = 0, word_points_ = 0;
  std::vector<SketchedLine> lines_;
};
}  // namespace

std::vector<SketchedLine> sketch(const std::vector<SizedText>& parts, Length width,
                                 Breaking breaking, const FontSet& fonts, Length indent) {
  Sketcher sketcher(breaking == Breaking::never ? 1e9 : width.in_points(), indent.in_points());
  for (const SizedText& part : parts) {
    LanguageMarks marks;
    const double points = part.size.points();
    const char* const end = part.text.data() + part.text.size();
    for (const char* at = part.text.data(); at < end; at = g_utf8_next_char(at)) {
      const char32_t c = g_utf8_get_char_validated(at, end - at);
      if (marks.take(c)) continue;
      if (c == '\n') {
        sketcher.end_line();
      } else {
        sketcher.add(c, fonts.advance(part.face, c) * points, points);
      }
    }
  }
  return sketcher.finish();
}
}  // namespace furnish
