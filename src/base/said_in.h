#pragma once

#include <string>
#include <string_view>

namespace furnish {

// A sentence of the page may hold words in another language, which are to be read aloud in that.
// Marks that no page shows go with them through all that puts sentences together: Unicode's
// language tag, U+E0001 and the tag in characters of its own, before them, and U+E007F after them.

/// What is no language at all (ISO 639-2): a line of underscores is drawn, but not read.
inline constexpr std::string_view no_words = "zxx";
inline constexpr std::string_view language_begins = "\U000E0001", language_ends = "\U000E007F";

/// `text` as one in `language` (BCP 47); inside the marks of direction that it stands between.
std::string said_in(std::string_view language, std::string_view text);
/// Without the marks.
std::string without_languages(std::string_view text);
/// How many bytes at the start of `text` say which language begins; 0 if none does.
std::size_t language_mark(std::string_view text);

/// Follows the marks through a text.
class LanguageMarks {
 public:
  /// True if the character is of a mark, and no text.
  bool take(char32_t);
  /// Of the text from here on; empty: the page's. What is no language counts as none.
  const std::string& language() const { return language_; }

 private:
  std::string language_;
  bool reading_ = false;  ///< the name of a language
};
}  // namespace furnish
