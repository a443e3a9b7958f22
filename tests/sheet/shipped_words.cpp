#include "sheet/shipped_words.h"

#include <catch2/catch.hpp>

namespace furnish::test {

ShippedWords::ShippedWords(const std::string& language)
    : library_({files_, sources_, sink_}, std::string(FURNISH_SOURCE_DIR) + "/styles", ""),
      chain_(library_.chain(language)) {
  if (chain_) words_ = Words::open(*chain_, sink_, Words::Check::all);
  std::string said;
  for (const Diagnostic& one : sink_.all()) said += to_text(one, sources_);
  INFO(said);
  REQUIRE(words_);
}
}  // namespace furnish::test
