#include <catch2/catch.hpp>

#include <algorithm>

#include "sheet/card.h"
#include "sheet/rows.h"

namespace furnish {
namespace {
using test::desk;
using test::Desk;

/// A pet with so many words in the rows that wait for the table, and so many at the door.
std::string crowded(int table_notes, int alerts) {
  std::string out = "[pet]\nname = \"Rex\"\n";
  for (int i = 0; i < alerts; ++i) {
    out += "[[alert]]\nlevel = \"caution\"\ntext = \"He does not care for number " +
           std::to_string(i) + "\"\ndo = \"Go round it, slowly, and talk to him.\"\n";
  }
  constexpr const char* places[] = {"muzzle", "crown", "neck", "back", "chest", "belly", "tail"};
  out += "[trim]\n";
  for (const char* place : places) {
    out += std::string(place) + " = { shears = \"thinning\", leave = \"20 mm\", note = \"" + place;
    for (int i = 0; i < table_notes; ++i) out += " and a little more of it";
    out += "\" }\n";
  }
  return out + "[handling]\nhold = \"under the jaw\"\n";
}

struct Set {
  std::string layout;
  bool warned = false, says_short = false, handled = false, trimmed = false;
};
std::optional<Set> set(const std::string& pet, const char* paper) {
  Desk table = desk(pet);
  const auto sheet = table.card(table.kennel(), paper);
  if (!sheet) return std::nullopt;
  const Frame& frame = sheet->page.frame;
  return Set{sheet->page.layout, table.says("short-card"),
             test::says(frame, "Trim, bath and finish: on the style sheet"),
             test::says(frame, "under the jaw") || test::says(frame, "Under the jaw"),
             test::says(frame, "thinning shears")};
}
}  // namespace

TEST_CASE("layouts are tried in order, and the last says what it leaves out", "[layout]") {
  const std::vector<std::string> order{"columns", "run-in", "dense", "at the door"};
  std::size_t last = 0;
  std::vector<std::string> seen;
  for (int words = 0; words < 20; ++words) {
    const auto one = set(crowded(words, 1), "A6");
    INFO(words);
    REQUIRE(one);
    const auto at = static_cast<std::size_t>(std::ranges::find(order, one->layout) - order.begin());
    REQUIRE(at < order.size());
    // A dense card may be squeezed before the last resort, so the names never step back.
    CHECK(at >= last);
    last = at;
    if (seen.empty() || seen.back() != one->layout) seen.push_back(one->layout);
    const bool at_the_door = one->layout == "at the door";
    CHECK(one->warned == at_the_door);
    CHECK(one->says_short == at_the_door);
    CHECK(one->handled);
    CHECK(one->trimmed == !at_the_door);
  }
  CHECK(seen.back() == "at the door");
  CHECK(seen.size() >= 3);
}

TEST_CASE("larger paper takes what smaller cannot", "[layout]") {
  const std::string pet = crowded(8, 1);
  REQUIRE(set(pet, "A6")->layout == "at the door");
  const auto a4 = set(pet, "A4");
  REQUIRE(a4);
  CHECK(a4->trimmed);
  CHECK_FALSE(a4->warned);
}

TEST_CASE("more than the door needs is an error that names what takes the room", "[layout]") {
  Desk table = desk(crowded(1, 12));
  CHECK_FALSE(table.card(table.kennel(), "4x6 in"));
  CHECK(table.says("page-overflow"));
  const std::string said = table.said();
  INFO(said);
  CHECK(said.find("too tall for 4x6 in") != std::string::npos);
  // The notes point at lines of the file.
  CHECK(said.find("pets/rex.toml:") != std::string::npos);
  CHECK(said.find("' takes ") != std::string::npos);
  CHECK(said.find("larger paper") != std::string::npos);
}

TEST_CASE("a fit is bounded, and nearly always sets the page once", "[layout]") {
  Desk table(test::sample("lantern-street"));
  for (const std::string& key : table.pets()) {
    const test::Kennel kennel = table.kennel(key);
    for (const Paper& paper : papers) {
      const auto sheet = table.card(kennel, paper.name);
      REQUIRE(sheet);
      INFO(key << " on " << paper.name << ": " << sheet->page.layout);
      // fit.h: log2(steps + 1) drafts and at most steps + 2 measures a layout, of four layouts.
      CHECK(sheet->page.drafts <= 4 * 4);
      CHECK(sheet->page.measures <= 4 * 14);
    }
  }
}

TEST_CASE("a card is set the same however often", "[layout]") {
  Desk table(test::sample("lantern-street"));
  const test::Kennel kennel = table.kennel("juniper");
  const auto first = table.card(kennel, "A6"), second = table.card(kennel, "A6");
  REQUIRE(first);
  REQUIRE(second);
  CHECK(to_text(first->page.frame) == to_text(second->page.frame));
}
}  // namespace furnish
