#include <string>

#include "fuzz/salon_files.h"
#include "fuzz/targets.h"
#include "sheet/pattern.h"
#include "spec/catalogue_library.h"

namespace furnish::fuzz {
void catalogue(std::string_view bytes) {
  static const std::string english =
      "[sheet]\ncomma = \",\"\ncard-title = \"{0}: kennel card\"\nage-years = \"{0, plural, one {# "
      "year} other {# years}}\"\n[region]\nears = \"ears\"\n[stock]\nshy = \"shy\"\n";
  Reading reading({{"shipped/words/en.toml", english},
                   {"shipped/words/es.toml", "[sheet]\ncomma = \",\"\n"},
                   {"styles/words/es.toml", std::string(bytes)}});
  CatalogueLibrary library(reading.context, "shipped", "styles");
  const auto chain = library.chain("es-US");
  hold(chain.has_value() != reading.sink.has_errors(), "a chain of words, or a fault");
  if (chain) {
    for (const Catalogue* const one : chain->catalogues) {
      for (const auto& [key, text] : one->texts) read_pattern(text.value);
    }
  }
  reading.tell();
}
}  // namespace furnish::fuzz
