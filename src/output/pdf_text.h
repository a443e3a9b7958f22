#pragma once

#include <string>
#include <string_view>

namespace furnish {

/// A page's content without the spans that cairo puts round spaces and ligatures to say what they
/// stand for, where one glyph stands for two characters: after with_plain_characters() the glyphs
/// say it themselves. Poppler, and the screen readers that use it, loses the rest of an element
/// after such a span. Empty if there is none.
std::string without_plain_spans(std::string_view content);

/// A font's map to Unicode in which ligatures are their letters, so that "stiff" is found by them,
/// and a no-break space is a space. Empty if it has neither.
std::string with_plain_characters(std::string_view to_unicode);
}  // namespace furnish
