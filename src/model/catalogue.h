#pragma once

#include <functional>
#include <map>
#include <string>
#include <vector>

#include "base/source.h"

namespace furnish {

/// The texts of one language as one file has them. A text is a pattern of ICU's MessageFormat with
/// numbered places; nothing here has looked at it yet.
struct Catalogue {
  std::string language;  ///< BCP 47, the file's name: "es-US"
  /// By section and key, with a point between: "sheet.age-years".
  std::map<std::string, Located<std::string>, std::less<>> texts;
  SourceSpan span;       ///< the file
  bool shipped = false;  ///< with the program, whose tests hold it to English
};

/// Where the texts for one reader are looked up: the first catalogue that has a text counts.
struct CatalogueChain {
  std::string language;  ///< what the reader asked for, BCP 47
  /// Never empty; the last is the shipped English, which has every text. They live as long as the
  /// library they came from.
  std::vector<const Catalogue*> catalogues;
};
}  // namespace furnish
