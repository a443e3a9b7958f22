#include "output/text_stretches.h"

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

#include "base/said_in.h"
#include "page/shaped_line.h"

namespace furnish {
namespace {
/// How a stretch of text is to be read.
struct Manner {
  std::string language;
  Tag tag = Tag::span;
  friend bool operator==(const Manner&, const Manner&) = default;
};

struct Stretch {
  const Mark* mark;
  TextRange range;
  Manner manner;
};

int weight(Face face) {
  return face == Face::bold ? 2 : face == Face::semibold ? 1 : 0;
}

const TextMark* text_of(const Part& part) {
  const auto* text = part.mark != nullptr ? std::get_if<TextMark>(part.mark) : nullptr;
  return text != nullptr && text->line != nullptr ? text : nullptr;
}

/// The lightest weight there is: what is heavier stands out from it.
int lightest(const std::vector<Part>& parts) {
  int least = weight(Face::bold);
  for (const Part& part : parts) {
    const TextMark* const text = text_of(part);
    if (text == nullptr) continue;
    for (const ShapedRun& run : text->line->runs()) least = std::min(least, weight(run.face));
  }
  return least;
}

bool all_italic(const std::vector<Part>& parts) {
  return std::ranges::all_of(parts, [](const Part& part) {
    const TextMark* const text = text_of(part);
    return text == nullptr || std::ranges::all_of(text->line->runs(), [](const ShapedRun& run) {
             return run.face == Face::italic;
           });
  });
}

bool only_spaces(std::string_view text) {
  constexpr std::array<std::string_view, 3> spaces{" ", "\u00A0", "\u2007"};
  while (!text.empty()) {
    const auto space =
        std::ranges::find_if(spaces, [&](std::string_view one) { return text.starts_with(one); });
    if (space == spaces.end()) return false;
    text.remove_prefix(space->size());
  }
  return true;
}

/// Every line's text in stretches of one manner; a space alone goes with what is before it.
std::vector<Stretch> stretches_of(const std::vector<Part>& parts) {
  const int least = lightest(parts);
  const bool italic = all_italic(parts);
  std::vector<Stretch> out;
  for (const Part& part : parts) {
    const TextMark* const text = text_of(part);
    if (text == nullptr) continue;
    bool begun = false;  // the line
    const std::string& letters = text->line->text();
    for (const ShapedRun& run : text->line->runs()) {
      Manner manner{run.language, weight(run.face) > least              ? Tag::strong
                                  : run.face == Face::italic && !italic ? Tag::emphasis
                                                                        : Tag::span};
      const std::string_view own(letters.data() + run.begin, run.end - run.begin);
      if (begun && (only_spaces(own) || out.back().manner == manner)) {
        out.back().range.end = run.end;
        continue;
      }
      out.push_back({part.mark, {begun ? run.begin : 0, run.end}, std::move(manner)});
      begun = true;
    }
    if (begun) out.back().range.end = std::string::npos;
  }
  return out;
}
}  // namespace

void part_stretches(Element& element) {
  const bool parted = std::ranges::any_of(
      element.parts, [](const Part& part) { return part.element || part.range.begin > 0; });
  if (parted) return;
  const std::vector<Stretch> stretches = stretches_of(element.parts);
  if (stretches.empty()) return;
  const auto differs = [&](const Stretch& one) { return one.manner != stretches.front().manner; };
  if (std::ranges::none_of(stretches, differs)) {
    if (stretches.front().manner.language == no_words) return;
    if (element.language.empty()) element.language = stretches.front().manner.language;
    return;
  }
  std::vector<Part> parts;
  const Manner* last = nullptr;
  for (Part& part : element.parts) {
    if (text_of(part) == nullptr) parts.push_back(std::move(part));
  }
  for (const Stretch& stretch : stretches) {
    if (stretch.manner.language == no_words) {
      last = nullptr;
      parts.push_back({stretch.mark, nullptr, stretch.range});
      continue;
    }
    if (last == nullptr || *last != stretch.manner) {
      Element made{stretch.manner.tag, nullptr, nullptr, {}, stretch.manner.language};
      parts.push_back({nullptr, std::make_unique<Element>(std::move(made))});
    }
    last = &stretch.manner;
    parts.back().element->parts.push_back({stretch.mark, nullptr, stretch.range});
  }
  element.parts = std::move(parts);
}
}  // namespace furnish
