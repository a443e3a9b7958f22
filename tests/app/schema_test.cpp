#include <catch2/catch.hpp>

#include "app/program.h"
#include "sheet/desk.h"

// The schemas as other programs have them: a validator of the Debian packages reads them, and the
// samples with Python's own TOML.

namespace furnish::test {
namespace {
constexpr std::string_view validate = R"(
import json, sys, tomllib, datetime
from jsonschema import Draft7Validator

def plain(value):
    if isinstance(value, dict):
        return {key: plain(one) for key, one in value.items()}
    if isinstance(value, list):
        return [plain(one) for one in value]
    if isinstance(value, (datetime.date, datetime.time)):
        return value.isoformat()
    return value

with open(sys.argv[1]) as file:
    schema = json.load(file)
Draft7Validator.check_schema(schema)
validator = Draft7Validator(schema)
for path in sys.argv[2:]:
    with open(path, "rb") as file:
        for fault in validator.iter_errors(plain(tomllib.load(file))):
            print(path, list(fault.path), fault.message[:80])
print("read", len(sys.argv) - 2)
)";
}  // namespace

TEST_CASE("schema prints what another program's validator takes, and the samples keep it",
          "[schema]") {
  const TemporaryFolder folder;
  const std::string script = folder.file("validate.py", std::string(validate));
  const std::string salon = sample("lantern-street");
  const std::pair<const char*, std::string> kinds[] = {
      {"salon", salon + "/salon.toml"},      {"pet", salon + "/pets/*.toml"},
      {"style", salon + "/styles/*.toml"},   {"day", salon + "/days/*.toml"},
      {"visit", salon + "/visits/*/*.toml"}, {"products", ""}};
  for (const auto& [kind, files] : kinds) {
    INFO(kind);
    const auto printed = furnish("schema " + std::string(kind));
    CHECK(printed.status == 0);
    CHECK(printed.err == "");
    const std::string schema = folder.file(std::string(kind) + ".json", printed.out);
    const auto ran = run("python3 " + script + " " + schema + " " + files);
    INFO(ran.err);
    CHECK(ran.status == 0);
    CHECK(ran.out.starts_with("read "));
  }
  // A slip is found without furnish.
  const std::string rex = folder.file("rex.toml", "[pet]\nname = \"Rex\"\ncoat = \"fluffy\"\n");
  const auto ran = run("python3 " + script + " " + folder.path("pet.json") + " " + rex);
  CHECK(ran.out.find("coat") != std::string::npos);
}

TEST_CASE("an unknown kind of file is told the nearest", "[schema]") {
  const auto ran = furnish("schema pets");
  CHECK(ran.status == 2);
  CHECK(ran.out == "");
  CHECK(ran.err.find("did you mean pet?") != std::string::npos);
}
}  // namespace furnish::test
