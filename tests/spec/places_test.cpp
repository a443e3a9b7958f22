#include <catch2/catch.hpp>

#include "model/trim.h"
#include "spec/said.h"

namespace furnish::test {
namespace {
/// The blade at a place, after all of a file's rules; "-" if it is left alone.
std::string blade_at(const char* trim, Place place) {
  Desk desk;
  const auto pet = desk.pet(std::string("[pet]\nname = \"Rex\"\n[trim]\n") + trim);
  INFO(trim << desk.said());
  REQUIRE(pet);
  const TrimPart* const part = find_part(pet->trim, place);
  if (part == nullptr) return "-";
  return std::string(std::get<Clip>(part->entry.tool).blade->name);
}

struct Row {
  const char* trim;
  Place place;
  const char* blade;
};
}  // namespace

TEST_CASE("the more specific wins: a side over a region, a region over its group", "[trim]") {
  constexpr auto group = "legs = { blade = \"4F\" }\n";
  constexpr auto region = "legs = { blade = \"4F\" }\nhocks = { blade = \"5F\" }\n";
  constexpr auto side = "\"left hock\" = { blade = \"10\" }\nlegs = { blade = \"4F\" }\n";
  constexpr auto all =
      "right-hock = { blade = \"15\" }\nhocks = { blade = \"5F\" }\nlegs = { blade = \"4F\" }\n";
  const Row rows[] = {
      {group, {Region::front_legs}, "4F"},
      {group, {Region::hocks, Side::left}, "4F"},
      {group, {Region::feet}, "-"},
      {region, {Region::front_legs}, "4F"},
      {region, {Region::hocks}, "5F"},
      {side, {Region::hocks, Side::left}, "10"},
      {side, {Region::hocks, Side::right}, "4F"},
      {all, {Region::hocks, Side::right}, "15"},
      {all, {Region::hocks, Side::left}, "5F"},
      {all, {Region::rear_legs, Side::left}, "4F"},
  };
  for (const Row& row : rows) {
    INFO(row.trim << to_text(row.place));
    CHECK(blade_at(row.trim, row.place) == row.blade);
  }
}

TEST_CASE("two groups may meet where they say the same, or where the region is named", "[trim]") {
  constexpr auto same = "head = { blade = \"10\" }\nfurnishings = { blade = \"10\" }\n";
  CHECK(blade_at(same, {Region::ears}) == "10");
  constexpr auto named =
      "head = { blade = \"10\" }\nfurnishings = { blade = \"4F\" }\nears = { blade = \"15\" }\n";
  CHECK(blade_at(named, {Region::ears}) == "15");
  CHECK(blade_at(named, {Region::crown}) == "10");
  CHECK(blade_at(named, {Region::tail}) == "4F");
  constexpr auto sides =
      "head = { blade = \"10\" }\nfurnishings = { blade = \"4F\" }\n"
      "left-ear = { blade = \"15\" }\nright-ear = { blade = \"30\" }\n";
  CHECK(blade_at(sides, {Region::ears, Side::left}) == "15");
  CHECK(blade_at(sides, {Region::ears, Side::right}) == "30");
}

TEST_CASE("rules stand in order of place, each place once", "[trim]") {
  Desk desk;
  const auto pet = desk.pet(
      "[pet]\nname = \"Rex\"\n[trim]\ntail = { brush = true }\nlegs = { brush "
      "= true }\nleft-hock = { blade = \"10\" }\ncrown = { brush = true }\n");
  REQUIRE(pet);
  std::vector<std::string> places;
  for (const PlacedEntry& rule : pet->own_trim) places.push_back(to_text(rule.place));
  CHECK(places ==
        std::vector<std::string>{"crown", "front legs", "rear legs", "hocks", "left hock", "tail"});
}

TEST_CASE("a group in keep_under stands for its regions, a region for itself", "[preferences]") {
  Desk desk;
  const auto pet = desk.pet(
      "[pet]\nname = \"Rex\"\n[preferences]\nkeep_under = { legs = \"30 mm\", "
      "hocks = \"10 mm\" }\n");
  REQUIRE(pet);
  REQUIRE(pet->preferences.keep_under.size() == 3);
  CHECK(pet->preferences.keep_under[0].length == 30_mm);
  CHECK(pet->preferences.keep_under[2].place.region == Region::hocks);
  CHECK(pet->preferences.keep_under[2].length == 10_mm);
}
}  // namespace furnish::test
