#include <catch2/catch.hpp>

#include "spec/said.h"

// What is shipped must be free of faults and warnings.

namespace furnish::test {
namespace {
const std::string source = FURNISH_SOURCE_DIR;

void read_folder(const std::string& folder) {
  const DiskFiles files;
  SourceSet sources;
  DiagnosticSink sink;
  const ReadContext context{files, sources, sink};
  StyleLibrary styles(context, source + "/styles", folder + "/styles");
  const auto salon = read_salon(context, folder + "/salon.toml");
  REQUIRE(salon);
  std::size_t pets = 0;
  for (const std::string& name : files.toml_files(folder + "/pets")) {
    const auto pet = read_pet(context, folder + "/pets/" + name, &*salon, styles);
    CHECK(pet);
    if (!pet) continue;
    ++pets;
    const std::string visits = folder + "/visits/" + pet->key + "/";
    for (const std::string& visit : files.toml_files(visits.substr(0, visits.size() - 1))) {
      CHECK(read_visit(context, visits + visit, &*salon, &*pet));
    }
  }
  for (const std::string& day : files.toml_files(folder + "/days")) {
    CHECK(read_day(context, folder + "/days/" + day));
  }
  CHECK(pets > 0);
  CHECK(said(sink, sources) == "");
}
}  // namespace

TEST_CASE("every shipped style reads without a word", "[samples]") {
  const DiskFiles files;
  SourceSet sources;
  DiagnosticSink sink;
  StyleLibrary styles({files, sources, sink}, source + "/styles", "");
  for (const std::string& key : styles.keys()) {
    INFO(key);
    CHECK(styles.find(key, {}) != nullptr);
  }
  CHECK(styles.keys().size() >= 10);
  CHECK(said(sink, sources) == "");
}

TEST_CASE("the sample salons read without a word", "[samples]") {
  read_folder(source + "/samples/lantern-street");
  read_folder(source + "/samples/us-corner");
}
}  // namespace furnish::test
