#pragma once

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "base/diagnostic.h"
#include "model/catalogue.h"
#include "sheet/phrase.h"

namespace furnish {

/// What stands for a placeholder.
using WordArgument = std::variant<std::string, int>;

/// The texts of one reader. Patterns are ICU's MessageFormat with numbered places: "{0, plural, one
/// {# year} other {# years}}". For use by one thread.
class Words {
 public:
  /// Which catalogues are looked through: a salon's own, or the shipped ones too.
  enum class Check : std::uint8_t { own, all };
  /// Checks every text of the chain's catalogues, those shipped with the program only if `all` are
  /// to be: that takes longer than a sheet does, and the program's tests do it. A text must be a
  /// pattern that ICU takes, with the places of the English one, and count only what English counts
  /// or leaves as a number. English must have every phrase and term. Null after an error. Texts
  /// that only English has are one warning, with how many they are and the first. The catalogues
  /// may go once this is made.
  static std::unique_ptr<Words> open(const CatalogueChain&, DiagnosticSink&, Check = Check::own);
  ~Words();
  Words(const Words&) = delete;
  Words& operator=(const Words&) = delete;

  /// pre: an argument for each place of the English text, and numbers where it counts.
  std::string say(Phrase, const std::vector<WordArgument>& arguments = {}) const;
  /// What the trade's tables have: term("place", "left-hock"). pre: it is one of term_keys().
  std::string term(std::string_view section, std::string_view key,
                   const std::vector<WordArgument>& arguments = {}) const;
  /// What a person wrote: as it is, unless a catalogue has exactly these words under [written], as
  /// it has for those of the shipped styles. Where the page runs from right to left, Latin words
  /// are marked so that they keep their own direction and their full stop.
  std::string written(std::string_view text) const;
  /// What a person wrote in other words than these, as a catalogue has it: under [written], or as a
  /// stock phrase (trade/stock.h) in English or in the `salons` words, which may be null. Empty if
  /// no catalogue knows it.
  std::optional<std::string> translated(std::string_view text, const Words* salons) const;
  bool right_to_left() const;
  /// BCP 47, as the chain has it.
  const std::string& language() const;

 private:
  struct Parts;
  struct Text;
  explicit Words(std::unique_ptr<Parts>);
  std::string said(Text&, const std::vector<WordArgument>&) const;
  std::unique_ptr<Parts> parts_;
};
}  // namespace furnish
