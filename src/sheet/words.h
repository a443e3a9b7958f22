#pragma once

#include <memory>
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
  /// Checks every text of the chain's catalogues: it must be a pattern that ICU takes, with the
  /// places of the English one, and count only what English counts or leaves as a number. English
  /// must have every phrase. Null after an error. Texts that only English has are one warning, with
  /// how many they are and the first. The catalogues may go once this is made.
  static std::unique_ptr<Words> open(const CatalogueChain&, DiagnosticSink&);
  ~Words();
  Words(const Words&) = delete;
  Words& operator=(const Words&) = delete;

  /// pre: as many arguments as the English text has places, and numbers where it counts.
  std::string say(Phrase, const std::vector<WordArgument>& arguments = {}) const;
  /// BCP 47, as the chain has it.
  const std::string& language() const;

 private:
  struct Parts;
  explicit Words(std::unique_ptr<Parts>);
  std::unique_ptr<Parts> parts_;
};
}  // namespace furnish
