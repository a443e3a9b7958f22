#include <catch2/catch.hpp>
#include <filesystem>
#include <string>

#include "app/desk_salon.h"
#include "app/program.h"
#include "output/tool.h"

// What a pet may be called, and what must not be moved or shown on the way.

namespace furnish::test {
namespace {
namespace fs = std::filesystem;

/// A salon of one pet with a visit.
class OnePet {
 public:
  OnePet() {
    put(folder_, "salon.toml", "[salon]\nname = \"Test\"\n");
    put(folder_, "pets/otter.toml", "[pet]\nname = \"Otter\"\ncoat = \"curly\"\n");
  }
  std::string path(const std::string& in) const { return folder_.path(in); }
  ToolOutput rename(const std::string& from, const std::string& to) const {
    return furnish("rename " + from + " " + to + " --salon " + test::quoted(folder_.path("")));
  }

 protected:
  TemporaryFolder folder_;
};
}  // namespace

TEST_CASE("what cannot be looked for is not taken for absent when a pet is renamed") {
  const OnePet salon;
  // A link to itself can be read by nobody, whatever their rights.
  fs::create_symlink("visits", salon.path("visits"));
  const auto ran = salon.rename("otter", "ott");
  CHECK(ran.status == 1);
  CHECK(has(ran.err, "cannot be read"));
  CHECK(fs::exists(salon.path("pets/otter.toml")));
  CHECK_FALSE(fs::exists(salon.path("pets/ott.toml")));
}

TEST_CASE("no pet is renamed to what cannot be seen or steers a terminal") {
  const OnePet salon;
  for (const char* const name :
       {"$'a\\nb'", "$'\\x1b[31m'", "$'\\u202Erev'", "$'\\u200B'", "$'r\\xffx'"}) {
    INFO(name);
    const auto ran = run("bash -c " + test::quoted(std::string(FURNISH_PROGRAM) + " rename otter " +
                                                   name + " --salon " + salon.path("")));
    CHECK(ran.status == 1);
    CHECK(fs::exists(salon.path("pets/otter.toml")));
  }
  // From such a name it is: somebody mends it.
  fs::rename(salon.path("pets/otter.toml"), salon.path("pets/o\x1b[31m.toml"));
  CHECK(salon.rename(test::quoted("o\x1b[31m"), "ott").status == 0);
  CHECK(fs::exists(salon.path("pets/ott.toml")));
}

TEST_CASE("the desk opens no file behind a link that is no TOML") {
  const OnePet salon;
  TemporaryFolder elsewhere;
  put(elsewhere, "secret", "secretroot:x:0:0:/root\n");
  fs::create_symlink(elsewhere.path("secret"), salon.path("pets/evil.toml"));
  fs::create_symlink("otter.toml", salon.path("pets/twin.toml"));
  Options options;
  options.salon = salon.path("");
  options.data = FURNISH_SOURCE_DIR;
  options.on = parse_date(demo_date);
  const DiskFiles files;
  SalonAtDesk desk(options, files, system_disk());
  const desk::FileText evil = desk.read({"pet", "evil"});
  CHECK_FALSE(evil.text);
  CHECK(has(evil.fault, "is a link"));
  CHECK(desk.read({"pet", "twin"}).text);
}
}  // namespace furnish::test
