#include <fmt/format.h>
#include <catch2/catch.hpp>

#include <algorithm>
#include <random>

#include "plan/places.h"
#include "plan/restraints.h"
#include "sheet/desk.h"
#include "sheet/restraint_text.h"
#include "sheet/style_rows.h"
#include "trade/tools.h"

// What a caution forbids or limits stands in every row that it touches, in words; and no row says
// the opposite.

namespace furnish {
namespace {
using test::Desk;
using test::without_space;

/// A pet of which much is known and that is cut with anything anywhere.
std::string any_pet(unsigned seed) {
  std::mt19937 random(seed);
  const auto some = [&](std::size_t of) { return static_cast<std::size_t>(random() % of); };
  constexpr const char* coats[] = {"double", "curly", "drop", "silky", "wire"};
  constexpr const char* lays[] = {"with", "against", "across"};
  constexpr const char* shears[] = {"straight", "curved", "thinning"};
  std::string out = fmt::format("[pet]\nname = \"Rex\"\ncoat = \"{}\"\nborn = 2021-05-05\n",
                                coats[some(std::size(coats))]);
  if (some(2) == 0) out += "[health]\nconditions = [\"thin skin\"]\n";
  if (some(3) == 0)
    out += "[[alert]]\nlevel = \"caution\"\ntext = \"Sore.\"\navoid = [\"belly\"]\n";
  out += "[bath]\nbefore = \"brush\"\ndry = \"towel\"\n[trim]\n";
  for (const RegionInfo& row : regions()) {
    std::string tool = "brush = true";
    const std::size_t kind = some(4);
    if (kind == 0) tool = fmt::format("blade = \"{}\"", blades()[some(blades().size())].name);
    if (kind == 1) tool = some(2) == 0 ? "comb = \"1/2 in\"" : "comb = \"1/4 in\", over = \"10\"";
    if (kind == 2) {
      tool = fmt::format("shears = \"{}\", leave = \"{} mm\"", shears[some(3)], 5 + some(60));
    }
    if (kind < 2) tool += fmt::format(", lay = \"{}\"", lays[some(3)]);
    out += fmt::format("{} = {{ {} }}\n", row.key, tool);
  }
  if (some(2) == 0) out += "[preferences]\ndislikes = [\"thinning shears\"]\n";
  if (some(3) == 0) {
    out += "[[accept]]\nrule = \"comb-base\"\nreason = \"so\"\nsigned = 2026-02-01\n";
  }
  return out;
}

std::string visit_of(unsigned seed) {
  std::string out = "date = 2026-10-06\n[came_in]\nbreeches = { mats = 2 }\ntail = { mats = 2 }\n";
  out += "[[finding]]\nregion = \"";
  return out + (seed % 2 == 0 ? "belly\"\nwhat = \"hot spot\"\n"
                              : "cheeks\"\nside = \"left\"\nwhat = \"wart\"\n");
}

std::string text_of(const std::vector<TextSpan>& spans) {
  std::string out;
  for (const TextSpan& span : spans) out += span.text;
  return without_space(out);
}

std::size_t count_of(const std::string& text, const std::string& what) {
  std::size_t out = 0;
  for (std::size_t at = 0; (at = text.find(what, at)) != std::string::npos; at += what.size())
    ++out;
  return out;
}

bool has(const std::vector<Matter>& found, RuleId id) {
  return std::ranges::any_of(found, [&](const Matter& matter) {
    return std::ranges::find(matter.cautions, id, &Caution::rule) != matter.cautions.end();
  });
}

/// How many of the plan's cautions it saw beside how many rows.
std::size_t check_rows(Desk& table, const test::Kennel& kennel) {
  const auto sheet = table.style(kennel);
  INFO(kennel.pet.key << "\n" << table.said());
  REQUIRE(sheet);
  std::string page;
  for (const Frame& side : sides(sheet->page)) page += without_space(test::text_of(side));
  const SheetInput input = table.input(kennel, "A4", kinds::style);
  const SheetDesk desk{input, table.voice()};
  const std::vector<StyleRow> rows = style_rows(desk);
  std::size_t touched = 0, against = 0, across = 0;
  for (const StyleRow& row : rows) {
    if (row.kind == RowKind::no_tool) continue;
    for (const RowPart& part : row.parts) {
      const Lay lay = taken(*part.part, input.plan.cautions).lay;
      against += lay == Lay::against ? 1 : 0;
      across += lay == Lay::across ? 1 : 0;
      // What a person wrote stays as it is.
      against += count_of(part.part->entry.note, "against the lay");
    }
    for (const Caution& one : input.plan.cautions) {
      const Touches touches = rule(one.rule).touches;
      if (one.accepted || (touches != Touches::cut && touches != Touches::lay)) continue;
      const bool there = std::ranges::any_of(row.places, [&](Place place) {
        return std::ranges::any_of(one.places, [&](Place at) { return meets(at, place); });
      });
      if (!there) continue;
      ++touched;
      INFO(rule(one.rule).key << " in row " << row.number << ": " << row.names);
      CHECK(has(row.restraints, one.rule));
      const std::string says = text_of(restraint_text(row.restraints, row.places, desk));
      CHECK_FALSE(says.empty());
      const auto same = std::ranges::count_if(rows, [&](const StyleRow& other) {
        return text_of(restraint_text(other.restraints, other.places, desk)) == says;
      });
      CHECK(count_of(page, says) >= static_cast<std::size_t>(same));
    }
  }
  // Directions are said by rows alone, each as often as it holds.
  CHECK(count_of(page, without_space("against the lay")) == against);
  CHECK(count_of(page, without_space("across the lay")) == across);
  return touched;
}
}  // namespace

TEST_CASE("every row of the samples' style sheets has beside it what a caution says of it",
          "[restraints]") {
  std::size_t touched = 0;
  for (const char* const salon : {"lantern-street", "us-corner"}) {
    Desk table(test::sample(salon));
    table.speak("en");
    for (const std::string& key : table.pets()) touched += check_rows(table, table.kennel(key));
  }
  CHECK(touched >= 4);
}

TEST_CASE("no row of a generated style sheet names what a caution forbids without its mark",
          "[restraints]") {
  std::size_t touched = 0;
  for (unsigned seed = 0; seed < 12; ++seed) {
    INFO(seed);
    Desk table({{"salon.toml", ""},
                {"pets/rex.toml", any_pet(seed)},
                {"visits/rex/2026-10-06.toml", visit_of(seed)}});
    touched += check_rows(table, table.kennel());
  }
  CHECK(touched > 60);
}

TEST_CASE("a card says beside a line of its trim what no alert of the card says", "[restraints]") {
  Desk table = test::desk(
      "[pet]\nname = \"Rex\"\ncoat = \"curly\"\n[health]\nconditions = [\"thin skin\"]\n[trim]\n"
      "throat = { blade = \"10\", lay = \"against\" }\nchest = { comb = \"1/2 in\", over = \"10\" "
      "}\n");
  table.speak("en");
  const auto card = table.card(table.kennel());
  REQUIRE(card);
  const Frame& front = card->page.frame;
  CHECK(test::says(front, "With the lay, #10 or longer"));  // the alert
  CHECK(test::says(front, "Throat: #10; WARNING"));
  CHECK_FALSE(test::says(front, "against the lay"));
  CHECK(test::says(front, "CAUTION put it over a #30 or #40"));
}
}  // namespace furnish
