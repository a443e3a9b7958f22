#include <catch2/catch.hpp>

#include <nlohmann/json.hpp>

#include "desk/edits_json.h"

namespace {
using furnish::Edit;
using Json = nlohmann::ordered_json;
namespace desk = furnish::desk;
}  // namespace

TEST_CASE("edits and values come back as they were sent", "[edits]") {
  const Json sent = Json::parse(R"([
    {"op": "set", "path": ["trim", "ears"], "value": {"shears": "straight", "leave": "25 mm"}},
    {"op": "append", "path": ["alert"], "value": {"level": "danger", "on": {"date": "2026-11-24"}}},
    {"op": "set", "path": ["alert", 0, "n"], "value": [1, 2.5, true, {"time": "09:30"}]},
    {"op": "remove", "path": ["bath"]}])");
  Json back = Json::array();
  for (const Edit& edit : desk::edits_in(sent)) back.push_back(desk::edit_json(edit));
  CHECK(back == sent);
}

TEST_CASE("what is no edit is refused as JSON of another shape", "[edits]") {
  for (const char* const text :
       {R"([{"op": "move", "path": []}])", R"([{"path": []}])", R"([1])", R"({"op": "set"})",
        R"([{"op": "set", "path": ["a"]}])", R"([{"op": "set", "path": ["a"], "value": null}])",
        R"([{"op": "set", "path": [-1], "value": 1}])", R"([{"op": "set", "path": "a"}])"}) {
    INFO(text);
    CHECK_THROWS_AS(desk::edits_in(Json::parse(text)), Json::exception);
  }
}

TEST_CASE("a value never gets out of its quotes", "[edits]") {
  auto text = desk::text_to_edit("pet", "[pet]\nname = \"Rex\"\n");
  const Json sent =
      Json::parse(R"([{"op": "set", "path": ["pet", "colour"], "value": "x\"\n[evil]\ny = 1"}])");
  REQUIRE(text.apply(desk::edits_in(sent).front()));
  const Json tree = desk::tree_json(text);
  CHECK(tree["pet"]["colour"] == "x\"\n[evil]\ny = 1");
  CHECK_FALSE(tree.contains("evil"));
}

TEST_CASE("the tree of a text that is no TOML is null", "[edits]") {
  CHECK(desk::tree_json(desk::text_to_edit("pet", "[pet\n")).is_null());
}
