#include "sheet/spoken.h"

#include <optional>

#include "base/said_in.h"

namespace furnish {
namespace {
std::optional<Phrase> phrase_of(Structure role) {
  switch (role) {
    case Structure::tick:
      return Phrase::box_to_tick;
    case Structure::form:
      return Phrase::line_to_write;
    case Structure::sign:
      return Phrase::differs_says;
    default:
      return std::nullopt;
  }
}
}  // namespace

void give_words(Frame& frame, const Words& words) {
  for (Mark& mark : frame.marks) {
    if (auto* const link = std::get_if<LinkMark>(&mark)) link->says = without_languages(link->says);
    auto* const tag = std::get_if<OpenTag>(&mark);
    if (tag == nullptr) continue;
    // A text that stands for a drawing is in one language, so its marks would only be in the way.
    tag->alt = without_languages(tag->alt);
    const auto phrase = phrase_of(tag->role);
    if (phrase && tag->alt.empty()) tag->alt = words.say(*phrase);
  }
}
}  // namespace furnish
