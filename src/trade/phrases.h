#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace furnish {

/// A text's sentences, each without its point (a full stop, an exclamation or question mark, a
/// semicolon before a space or the end) and without spaces around it; "2.5 mm" is one.
std::vector<std::string_view> sentences_in(std::string_view text);

/// One word of free text, in lower case, and whether the text takes it back ("no", "never",
/// "without").
struct FreeWord {
  std::string text;
  bool denied = false;
};
using Clause = std::vector<FreeWord>;

/// Free words cut into clauses: at punctuation, "and", "but", "then". A negation ("no", "not",
/// "never", "without", "avoid", "instead of", "don't", …) takes back the rest of its clause; at the
/// end of a clause, or alone in one, all of the clause or of the one before ("cage dryer: never";
/// "force dryer not used"). In doubt a word stands, so that a safety rule speaks rather than keeps
/// silent.
std::vector<Clause> read_clauses(std::string_view text);

/// True if the words of `phrase` stand one after another in one clause and are not taken back. A
/// word also matches its plural, and hyphens count as spaces.
bool affirms(std::string_view text, std::string_view phrase);
/// Phrases that are looked for in many texts, taken apart once.
class PhraseList {
 public:
  explicit PhraseList(std::span<const std::string_view> phrases);
  /// The number of the first that the text affirms; empty if it affirms none.
  std::optional<std::size_t> first_affirmed(std::string_view text) const;

 private:
  std::vector<std::vector<std::string>> phrases_;
};
/// True if they stand there and are taken back.
bool denies(std::string_view text, std::string_view phrase);
/// True if the words stand there at all, each as a beginning of one: "oat" in "oatmeal", not in
/// "goat".
bool mentions(std::string_view text, std::string_view phrase);
}  // namespace furnish
