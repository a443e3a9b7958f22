#include <catch2/catch.hpp>

#include <map>

#include "spec/catalogue_library.h"
#include "spec/said.h"

namespace furnish::test {
namespace {
constexpr const char* english =
    "[sheet]\nage-years = \"{0, plural, one {# year} other {# years}}\"\nhold = \"Hold\"\n";

/// A library over files in memory: shipped/words/… and styles/words/….
struct Made {
  explicit Made(std::map<std::string, std::string> texts)
      : files(std::move(texts)), library({files, sources, sink}, "shipped", "styles") {}
  /// The paths of a chain's files, in order; "-" after an error.
  std::vector<std::string> paths(const std::string& language) {
    const auto chain = library.chain(language);
    if (!chain) return {"-"};
    std::vector<std::string> out;
    for (const Catalogue* const one : chain->catalogues) {
      out.push_back(sources.at(one->span.file).path());
    }
    return out;
  }
  MemoryFiles files;
  SourceSet sources;
  DiagnosticSink sink;
  CatalogueLibrary library;
};
using Paths = std::vector<std::string>;
}  // namespace

TEST_CASE("a chain goes from the salon's own to the shipped, to the parents, to English",
          "[catalogue]") {
  Made made({{"shipped/words/en.toml", english},
             {"shipped/words/es.toml", "[sheet]\nhold = \"Sujetar\"\n"},
             {"shipped/words/pt-BR.toml", "[sheet]\n"},
             {"styles/words/es.toml", "[sheet]\nhold = \"Agarrar\"\n"},
             {"styles/words/es-US.toml", "[sheet]\n"},
             {"styles/words/en.toml", "[sheet]\nhold = \"Grip\"\n"},
             {"styles/natural-tidy.toml", "a style is no catalogue"}});
  CHECK(made.paths("en") == Paths{"styles/words/en.toml", "shipped/words/en.toml"});
  CHECK(made.paths("en-GB") == Paths{"styles/words/en.toml", "shipped/words/en.toml"});
  CHECK(made.paths("es") == Paths{"styles/words/es.toml", "shipped/words/es.toml",
                                  "styles/words/en.toml", "shipped/words/en.toml"});
  CHECK(made.paths("ES-us") == Paths{"styles/words/es-US.toml", "styles/words/es.toml",
                                     "shipped/words/es.toml", "styles/words/en.toml",
                                     "shipped/words/en.toml"});
  CHECK(made.paths("pt") == Paths{"styles/words/en.toml", "shipped/words/en.toml"});
  CHECK(made.library.languages() == Paths{"en", "es", "es-US", "pt-BR"});
  CHECK(made.library.own_languages() == Paths{"en", "es", "es-US"});
  CHECK(made.sink.all().empty());
}

TEST_CASE("a broken catalogue is told with its place and key, once", "[catalogue]") {
  Made made(
      {{"shipped/words/en.toml", english},
       {"styles/words/es.toml",
        "[sheet]\nholt = \"Sujetar\"\nage-years = 3\n[sheat]\nhold = \"x\"\n[sheet.deep]\n"}});
  CHECK(made.paths("es") == Paths{"-"});
  CHECK(said(made.sink, made.sources) ==
        R"(styles/words/es.toml:2:1: error: no key 'holt' in a catalogue
  holt = "Sujetar"
  ^^^^
  hint: did you mean 'hold'?
styles/words/es.toml:3:13: error: age-years: expected words in quotes, found the number 3
  age-years = 3
              ^
  hint: write "3"
styles/words/es.toml:4:2: error: no section 'sheat' in a catalogue
  [sheat]
   ^^^^^
  hint: did you mean 'sheet'?
styles/words/es.toml:6:8: error: no key 'deep' in a catalogue
  [sheet.deep]
         ^^^^
  hint: the English catalogue has them all
)");
  const std::size_t before = made.sink.all().size();
  CHECK(made.paths("es-AR") == Paths{"-"});
  CHECK(made.sink.all().size() == before);
}

TEST_CASE("without the shipped English there are no words", "[catalogue]") {
  Made made(std::map<std::string, std::string>{{"styles/words/en.toml", english}});
  CHECK(made.paths("en") == Paths{"-"});
  CHECK(made.paths("es") == Paths{"-"});
  CHECK(said(made.sink, made.sources) ==
        "furnish: error: there is no shipped/words/en.toml\n"
        "  hint: name the folder with the program's fonts/ and styles/ with --data\n");
}

TEST_CASE("a catalogue is named after its language", "[catalogue]") {
  Made made({{"shipped/words/en.toml", english}, {"styles/words/spanish.toml", "[sheet]\n"}});
  CHECK(made.paths("spanish") == Paths{"-"});
  CHECK(said(made.sink, made.sources) ==
        "styles/words/spanish.toml: error: 'spanish' is not a language tag\n"
        "  hint: name the file after its language, such as es.toml or pt-BR.toml\n");
}
}  // namespace furnish::test
