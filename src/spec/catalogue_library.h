#pragma once

#include <cstdint>
#include <functional>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "model/catalogue.h"
#include "spec/context.h"

namespace furnish {

/// The catalogues of words: those shipped with furnish and the salon's own, which go before them
/// text by text. Each file is read once, when first asked for.
class CatalogueLibrary {
 public:
  /// Folders of styles, in which catalogues lie under words/; either may be empty or missing. Keeps
  /// the references in `context`.
  CatalogueLibrary(const ReadContext& context, const std::string& shipped_styles,
                   const std::string& salon_styles);

  /// Languages that have a catalogue, sorted.
  std::vector<std::string> languages() const;
  /// True if the language or one of its parents has a catalogue.
  bool has(std::string_view language) const;
  /// Those of them for which the salon has a catalogue of its own.
  std::vector<std::string> own_languages() const;
  /// The salon's catalogue of a language, the shipped one, those of its parents (es for es-US), and
  /// English last. Empty after an error: one of them is faulty, or the shipped English is missing.
  std::optional<CatalogueChain> chain(const std::string& language);
  /// The shipped English alone. Empty after an error.
  std::optional<CatalogueChain> shipped_english();

 private:
  enum class State : std::uint8_t { unread, good, bad };
  struct Shelf {
    std::string path;
    State state = State::unread;
    Catalogue catalogue;
  };
  /// A salon's catalogue goes before the shipped one.
  struct Language {
    std::string tag;
    std::optional<Shelf> own, shipped;
  };
  /// The shipped English, or null after an error.
  const Catalogue* english();
  const Catalogue* read(Shelf&, const Catalogue* english);

  ReadContext context_;
  std::string shipped_words_;
  std::map<std::string, Language, std::less<>> languages_;  ///< by tag in lower case
  bool listed_ = true;  ///< false: a folder of words cannot be looked into
  bool english_missing_said_ = false;
};
}  // namespace furnish
