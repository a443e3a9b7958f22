#include <catch2/catch.hpp>

#include <sys/stat.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>

#include "desk/drafts.h"
#include "desk/mark.h"
#include "desk/start_page.h"

namespace {
namespace fs = std::filesystem;
using furnish::desk::Drafts;
using furnish::desk::FileId;
using Json = nlohmann::ordered_json;

/// An empty folder that goes with the test.
struct Folder {
  Folder() {
    std::string name = (fs::temp_directory_path() / "furnish-drafts-XXXXXX").string();
    REQUIRE(::mkdtemp(name.data()) != nullptr);
    path = name;
  }
  ~Folder() { fs::remove_all(path); }
  fs::path path;
};

Json draft(const char* value) {
  return {{"kind", "pet"},
          {"id", "marlow"},
          {"mark", "1-2"},
          {"edits", {{{"op", "set"}, {"path", {"pet", "name"}}, {"value", value}}}}};
}
mode_t mode(const fs::path& path) {
  struct stat status {};
  REQUIRE(::lstat(path.c_str(), &status) == 0);
  return status.st_mode & 07777;
}
const FileId marlow{"pet", "marlow"};
}  // namespace

TEST_CASE("a draft is kept until it is saved, one a file", "[drafts]") {
  const Folder folder;
  const std::string into = folder.path / "state/furnish/desk/1";
  Drafts drafts(into, furnish::system_disk());
  CHECK(drafts.all().empty());
  CHECK(drafts.keep(marlow, draft("A")).empty());
  CHECK(drafts.keep(marlow, draft("B")).empty());
  CHECK(drafts.keep({"pet", "rex"}, draft("C")).empty());
  REQUIRE(drafts.all().size() == 2);
  // Another desk, after a crash of this one.
  const Json found = Drafts(into, furnish::system_disk()).all();
  CHECK((found == Json{draft("B"), draft("C")} || found == Json{draft("C"), draft("B")}));
  drafts.forget(marlow);
  CHECK(drafts.all() == Json{draft("C")});
  Json none = draft("C");
  none["edits"] = Json::array();
  CHECK(drafts.keep({"pet", "rex"}, none).empty());
  CHECK(drafts.all().empty());
}

TEST_CASE("nobody else may read a draft", "[drafts]") {
  const Folder folder;
  const fs::path into = folder.path / "state/desk";
  Drafts drafts(into, furnish::system_disk());
  REQUIRE(drafts.keep(marlow, draft("A")).empty());
  CHECK(mode(into) == 0700);
  CHECK(mode(into.parent_path()) == 0700);
  int files = 0;
  for (const auto& file : fs::directory_iterator(into)) {
    CHECK(mode(file.path()) == 0600);
    CHECK(file.path().filename().string().find("marlow") == std::string::npos);
    ++files;
  }
  CHECK(files == 1);
}

TEST_CASE("drafts do not fill a disk, and a broken one is left out", "[drafts]") {
  const Folder folder;
  Drafts drafts(folder.path, furnish::system_disk());
  CHECK_FALSE(drafts.keep(marlow, draft(std::string(Drafts::largest, 'x').c_str())).empty());
  for (std::size_t i = 0; i < Drafts::most; ++i) {
    REQUIRE(drafts.keep({"pet", std::to_string(i)}, draft("A")).empty());
  }
  CHECK_FALSE(drafts.keep({"pet", "one more"}, draft("A")).empty());
  CHECK(drafts.keep({"pet", "0"}, draft("B")).empty());
  std::ofstream(folder.path / "broken.json") << "{";
  CHECK(drafts.all().size() == Drafts::most);
}

TEST_CASE("without a place for them drafts are refused, not lost unsaid", "[drafts]") {
  Drafts drafts("", furnish::system_disk());
  CHECK_FALSE(drafts.keep(marlow, draft("A")).empty());
  CHECK(drafts.all().empty());
}

TEST_CASE("the start page is its owner's alone, and goes with the desk", "[drafts]") {
  std::string path;
  {
    furnish::DiagnosticSink sink;
    const auto page =
        furnish::desk::StartPage::write("http://127.0.0.1:1/secret/", sink, furnish::system_disk());
    REQUIRE(page);
    path = page->path();
    CHECK(mode(path) == 0600);
    std::ifstream file(path);
    const std::string text(std::istreambuf_iterator<char>(file), {});
    CHECK(text.find("url=http://127.0.0.1:1/secret/") != std::string::npos);
  }
  CHECK_FALSE(fs::exists(path));
}

TEST_CASE("texts that were given out are known by their marks, the latest", "[mark]") {
  using furnish::desk::GivenTexts;
  GivenTexts given;
  const std::string first = given.give("first");
  REQUIRE(given.find(first) != nullptr);
  CHECK(*given.find(first) == "first");
  CHECK(given.find(furnish::desk::mark_of("other")) == nullptr);
  for (std::size_t i = 1; i < GivenTexts::most; ++i) given.give(std::to_string(i));
  CHECK(given.give("first") == first);  // as if it were new
  given.give("last");
  CHECK(given.find(first) != nullptr);
  CHECK(given.find(furnish::desk::mark_of("1")) == nullptr);
}
