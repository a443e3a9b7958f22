#include <catch2/catch.hpp>

#include <algorithm>

#include "base/text.h"
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
  std::size_t sides = 0;
  bool handled = false, trimmed = false;  ///< on the front
  std::string front, all;
};
std::optional<Set> set(const std::string& pet, const char* paper) {
  Desk table = desk(pet);
  const auto sheet = table.card(table.kennel(), paper);
  if (!sheet) return std::nullopt;
  const Frame& frame = sheet->page.frame;
  Set out{sheet->page.layout,
          sheet->page.more.size() + 1,
          test::says(frame, "under the jaw") || test::says(frame, "Under the jaw"),
          test::says(frame, "thinning shears"),
          test::text_of(frame),
          {}};
  for (const Frame& side : sides(sheet->page)) out.all += test::text_of(side);
  return out;
}

bool has(const std::string& text, const std::string& what) {
  return test::without_space(text).find(test::without_space(what)) != std::string::npos;
}

/// A giant of whom nothing is short.
constexpr const char* long_pet = R"(
[pet]
name = "Bartholomew Montgomery the Magnificent of Windermere"
breed = "Newfoundland cross"
coat = "double"
colour = "black with a white chest"
sex = "male, neutered"
born = 2017-03-02
weight = "68 kg"
[owner]
name = "Ottoline Featherstone"
collects = ["Ottoline Featherstone", "her brother Anselm"]
[[alert]]
level = "danger"
text = "Bites without warning when his hind feet are held"
do = "Two people, and a basket muzzle from the door on; never alone with him."
[[alert]]
level = "warning"
text = "Has seizures: the last one in September, after the dryer"
do = "Stop at the first stare or twitch, note the time, ring the vet."
[[alert]]
level = "caution"
text = "Old scar behind the left elbow opens easily"
avoid = ["front-legs"]
[[alert]]
level = "caution"
text = "Deaf on the left"
do = "Come from his right."
[handling]
hold = "under the jaw, never by the collar"
lift = "use the ramp and two people"
stop = "when he pants with his tongue curled up"
rest_every = "15 min"
comes_with = ["a blue lead"]
[health]
conditions = ["seizures", "arthritis", "heart disease"]
[bath]
before = "brush out the undercoat first"
shampoo = { product = "oat shampoo", dwell = "5 min" }
dry = "towel, then stand dryer on low"
[trim]
style = "natural-tidy"
visit_every = "8 weeks"
belly = { blade = "10", note = "only where he lies" }
tail = { shears = "thinning", leave = "60 mm", note = "a soft edge and no points" }
breeches = { shears = "thinning", leave = "40 mm", note = "even on both sides" }
[finish]
nails = "short, with the grinder"
[preferences]
dislikes = ["scent", "bows"]
)";
}  // namespace

TEST_CASE("a card is set closer before it turns over, and its front keeps what it can",
          "[layout]") {
  bool turned = false;
  std::vector<std::string> seen;
  for (int words = 0; words < 20; ++words) {
    const auto one = set(crowded(words, 1), "A6");
    INFO(words);
    REQUIRE(one);
    if (seen.empty() || seen.back() != one->layout) seen.push_back(one->layout);
    // Once more words have turned it over, still more do not turn it back.
    CHECK((one->sides > 1 || !turned));
    turned = one->sides > 1;
    CHECK(has(one->front, "Continues on the other side") == turned);
    CHECK(has(one->all, "1/2") == (one->sides == 2));
    CHECK(one->handled);
    for (const char* place : {"Muzzle", "Crown", "Neck", "Back", "Chest", "Belly", "Tail"}) {
      CHECK(has(one->all, place));
    }
  }
  CHECK(turned);
  CHECK(seen.size() >= 4);
}

TEST_CASE("larger paper takes on one side what smaller cannot", "[layout]") {
  const std::string pet = crowded(5, 1);
  CHECK(set(pet, "A6")->sides > 1);
  const auto a4 = set(pet, "A4");
  REQUIRE(a4);
  CHECK(a4->trimmed);
  CHECK(a4->sides == 1);
}

TEST_CASE("a giant of whom everything is long has a card on every paper", "[layout]") {
  for (const Paper& paper : papers) {
    const auto one = set(long_pet, std::string(paper.name).c_str());
    INFO(paper.name);
    REQUIRE(one);
    CHECK(one->sides <= 2);
    for (const char* grave : {"Bartholomew Montgomery", "Bites without warning", "basket muzzle",
                              "Has seizures", "ring the vet"}) {
      INFO(grave);
      CHECK(has(one->front, grave));
    }
    for (const char* said :
         {"under the jaw", "use the ramp", "tongue curled up", "Deaf on the left", "front legs",
          "only where he lies", "a soft edge and no points", "even on both sides", "oat shampoo",
          "stand dryer on low", "with the grinder", "bows", "Anselm", "blue lead", "Done by"}) {
      INFO(said);
      CHECK((has(one->all, said) || has(one->all, capitalised(said))));
    }
  }
}

TEST_CASE("many alerts flow over several sides, the gravest first", "[layout]") {
  const auto one = set(crowded(1, 24), "4x6 in");
  REQUIRE(one);
  CHECK(one->sides > 2);
  for (int i = 0; i < 24; ++i) CHECK(has(one->all, "number " + std::to_string(i) + "."));
}

TEST_CASE("what alone is taller than the paper goes on, cut between words", "[layout]") {
  std::string text;
  while (text.size() < 480) text += "mind him ";
  const std::string alert =
      "[[alert]]\nlevel = \"danger\"\ntext = \"" + text + "\"\ndo = \"" + text + "\"\n";
  const std::string name(500, 'W');
  for (const Paper& paper : papers) {
    const auto one = set("[pet]\nname = \"" + name + "\"\nbreed = \"" + text + "\"\n" + alert,
                         std::string(paper.name).c_str());
    INFO(paper.name);
    REQUIRE(one);
    CHECK(has(one->all, name));
    const std::string all = test::without_space(one->all);
    std::size_t minded = 0;
    for (std::size_t at = 0; (at = all.find("indhim", at)) != std::string::npos; ++at) ++minded;
    CHECK(minded == 3 * 54);
    // Every side after the front begins with what can hurt; of what is too long for that, with
    // where it is read.
    CHECK((one->sides == 1 || has(one->all, "DANGER Other side")));
  }
}

TEST_CASE("a fit is bounded, and nearly always sets the page once", "[layout]") {
  Desk table(test::sample("lantern-street"));
  for (const std::string& key : table.pets()) {
    const test::Kennel kennel = table.kennel(key);
    for (const Paper& paper : papers) {
      const auto sheet = table.card(kennel, paper.name);
      REQUIRE(sheet);
      INFO(key << " on " << paper.name << ": " << sheet->page.layout);
      // compose.h: log2(steps + 1) drafts and one before, and at most steps + 2 measures a layout;
      // of eleven, and of 63 divisions with two rests.
      const int tried = sheet->page.more.empty() ? 11 : 11 + 63 + 2;
      CHECK(sheet->page.drafts <= tried * 5);
      CHECK(sheet->page.measures <= tried * 14);
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
