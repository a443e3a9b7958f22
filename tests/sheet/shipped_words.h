#pragma once

#include <memory>
#include <string>

#include "base/files.h"
#include "sheet/words.h"
#include "spec/catalogue_library.h"

namespace furnish::test {

/// The shipped texts of one language, read as the program does.
class ShippedWords {
 public:
  /// Fails the test, with what was said, if they cannot be read.
  explicit ShippedWords(const std::string& language);

  const Words& words() const { return *words_; }
  const CatalogueChain& chain() const { return *chain_; }
  const DiagnosticSink& sink() const { return sink_; }
  std::string say(Phrase phrase, const std::vector<WordArgument>& arguments = {}) const {
    return words_->say(phrase, arguments);
  }

 private:
  DiskFiles files_;
  SourceSet sources_;
  DiagnosticSink sink_;
  CatalogueLibrary library_;
  std::optional<CatalogueChain> chain_;
  std::unique_ptr<Words> words_;
};
}  // namespace furnish::test
