#include "plan/matters.h"

#include <algorithm>

#include "plan/made.h"

using namespace furnish;
using namespace furnish::made;

namespace {
/// What each row says, and what to do: "close-blade: sanitary area + … / …".
std::vector<std::string> rows(const Made& made) {
  std::vector<std::string> out;
  for (const Matter& matter : matters(made.plan.cautions)) {
    std::string row(to_text(matter.gravest()));
    for (const CautionText& text : matter.what) row += " | " + said(text);
    row += " >";
    for (const CautionText& text : matter.instead) row += " | " + said(text);
    out.push_back(std::move(row));
  }
  return out;
}
using Rows = std::vector<std::string>;

Visit matted(std::string_view place, int grade) {
  Visit out = visit("2026-11-24");
  out.came_in.regions.push_back(state(place, std::nullopt, grade));
  return out;
}
}  // namespace

TEST_CASE("a sanitary area with a #30 is one row, with one tool in its advice") {
  Pet dog = pet();
  dog.trim = {part("sanitary", blade("30"))};
  CHECK(rows(plan(salon(), dog)) ==
        Rows{"warning | sanitary-blade: sanitary area | close-blade: sanitary area > | "
             "sanitary-blade-do"});
}

TEST_CASE("a sanitary area with a skip-tooth blade is not sent to two tools") {
  Pet dog = pet();
  dog.conditions = {{Condition::thin_skin, {}}};
  dog.trim = {part("sanitary", blade("7"))};
  CHECK(rows(plan(salon(), dog)) ==
        Rows{"warning | sanitary-blade: sanitary area | skip-tooth: sanitary area | thin-skin: "
             "sanitary area > | sanitary-blade-do"});
}

TEST_CASE("advice is left out only where a stricter one speaks of all its places") {
  Pet dog = pet();
  // One line of the file about both.
  dog.trim = {part("back", blade("30"), Lay::with, {}, 10),
              part("sanitary", blade("30"), Lay::with, {}, 10)};
  CHECK(rows(plan(salon(), dog)) ==
        Rows{"warning | sanitary-blade: sanitary area | close-blade: back, sanitary area > | "
             "sanitary-blade-do | close-blade-do"});
}

TEST_CASE("where nobody works no other advice holds") {
  Pet dog = pet();
  dog.trim = {part("hocks", comb(13_mm))};
  Visit last = matted("hocks", 3);
  last.came_in.regions[0].encircling = true;
  CHECK(rows(plan(salon(), dog, {last})) ==
        Rows{"danger | mat-wound: hocks | comb-on-mats: hocks > | mat-wound-do"});
  dog.conditions = {{Condition::thin_skin, {}}};
  last.came_in.regions[0].encircling = false;
  for (const std::string& row : rows(plan(salon(), dog, {last}))) {
    INFO(row);
    CHECK((row.find("thin-skin-mats:") == std::string::npos ||
           row.ends_with("> | thin-skin-mats-do")));
    CHECK(row.find("comb-on-mats-do") == std::string::npos);
  }
}

TEST_CASE("places of one sentence are named in one sentence, others stay apart") {
  Pet dog = pet(Coat::double_coat);
  dog.trim = {part("back", blade("10"), Lay::with, {}, 10),
              part("rump", blade("4F"), Lay::with, {}, 11),
              part("belly", blade("7"), Lay::with, {}, 12)};
  CHECK(rows(plan(salon(), dog)) ==
        Rows{"warning | skip-tooth: belly > | skip-tooth-twin-do: #7F",
             "warning | double-coat-short: back, rump > | double-coat-short-do"});
}

TEST_CASE("all about the drying is one row, and all about a product") {
  Pet dog = pet();
  dog.conditions = {{Condition::seizures, {}}};
  dog.bath.dry = Located<std::string>{"force dryer, then cage dryer", line(22)};
  dog.bath.shampoo = product("oat");
  dog.bath.shampoo->product.mixed = day("2026-11-01");
  dog.bath.shampoo->product.contains = {"oat"};
  Alert alert;
  alert.level = Signal::warning;
  alert.allergens = {{"oat", line(9)}};
  dog.alerts = {alert};
  const Rows all = rows(plan(salon(), dog));
  REQUIRE(all.size() == 2);
  for (const char* key : {"dryer-heat", "dryer-seizure", "dryer-face-head"}) {
    INFO(key);
    CHECK(all[0].find(key) != std::string::npos);
  }
  CHECK(all[1] ==
        "warning | allergen: oat; oat | mix-age: oat; 2026-11-01; 23 > | allergen-do | "
        "mix-age-do");
}

TEST_CASE("nothing is lost: every caution is in one matter, gravest first") {
  Pet dog = pet(Coat::double_coat);
  dog.born = Birth{day("2010-01-01"), line(2)};
  dog.alerts = {avoiding("left hock")};
  dog.trim = {
      part("back", blade("30"), Lay::with, {}, 10), part("sanitary", blade("7"), Lay::with, {}, 11),
      part("hocks", comb(13_mm), Lay::with, {}, 12), part("pads", blade("4F"), Lay::with, {}, 13)};
  const Made made = plan(salon(), dog, {matted("right hock", 3), matted("back", 2)});
  const std::vector<Matter> all = matters(made.plan.cautions);
  std::size_t cautions = 0;
  for (const Matter& one : all) {
    cautions += one.cautions.size();
    CHECK(std::ranges::is_sorted(one.cautions, {}, &Caution::signal));
    CHECK_FALSE(one.what.empty());
    CHECK_FALSE(one.instead.empty());
  }
  CHECK(cautions == made.plan.cautions.size());
  CHECK(std::ranges::is_sorted(all, {}, &Matter::gravest));
  CHECK(all.size() < cautions);
}

TEST_CASE("each hazard in a row has what to do about it right after it") {
  Pet dog = pet();
  dog.bath.before.reset();
  dog.trim = {part("back", comb(13_mm)), part("neck", blade("7F"))};
  Visit last = matted("back", 3);
  last.came_in.regions.push_back(state("neck", std::nullopt, 2));
  Finding lump;
  lump.place = {at("neck"), {}};
  lump.what = "lump";
  last.findings = {lump};
  std::vector<std::string> said_in_order;
  for (const Matter& matter : matters(plan(salon(), dog, {last}).plan.cautions)) {
    for (const Advice& one : matter.advice) {
      for (const CautionText& what : one.what) said_in_order.push_back(what.key);
      said_in_order.push_back("> " + one.instead.key);
    }
  }
  CHECK(said_in_order == Rows{"comb-on-mats", "> comb-on-mats-do", "mats-before-water",
                              "> mats-before-water-do", "found-there", "> found-there-do"});
  // Advice that is taken back is not given; the hazard goes before what holds instead.
  dog.trim = {part("hocks", comb(13_mm))};
  last = matted("hocks", 3);
  last.came_in.regions[0].encircling = true;
  const std::vector<Matter> all = matters(plan(salon(), dog, {last}).plan.cautions);
  REQUIRE(!all.empty());
  REQUIRE(!all.front().advice.empty());
  CHECK(all.front().advice.front().instead.key == "mat-wound-do");
  for (const Advice& one : all.front().advice) CHECK(one.instead.key != "comb-on-mats-do");
}
