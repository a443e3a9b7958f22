#include "plan/restraints.h"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <random>

#include "plan/made.h"
#include "plan/places.h"
#include "plan/plan_json.h"
#include "plan/plan_text.h"
#include "plan/tool_rules.h"

using namespace furnish;
using namespace furnish::made;

namespace {
Pet thin_skinned() {
  Pet dog = pet(Coat::silky);
  dog.conditions = {{Condition::thin_skin, {}}};
  dog.trim = {part("throat", blade("10"), Lay::against, {}, 4),
              part("back", blade("10"), Lay::with, {}, 5)};
  for (TrimPart& one : dog.trim) one.entry.lay_given = true;
  return dog;
}

/// Every region with some tool in some direction, on a pet of which much is known.
Pet any_pet(unsigned seed) {
  std::mt19937 random(seed);
  const auto some = [&](std::size_t of) { return static_cast<std::size_t>(random() % of); };
  Pet dog = pet(static_cast<Coat>(some(7)));
  std::uint32_t number = 10;
  for (const RegionInfo& row : regions()) {
    TrimPart one;
    one.place = {row.region, Side::both};
    one.entry.tool = Brush{};
    const std::size_t kind = some(4);
    if (kind == 0) one.entry.tool = Clip{&blades()[some(blades().size())]};
    if (kind == 1)
      one.entry.tool = comb(guard_combs()[some(guard_combs().size())], some(2) == 0 ? "30" : "10");
    if (kind == 2) {
      one.entry.tool = Scissor{static_cast<Shears>(some(4))};
      one.entry.leave = Length::mm(5 + static_cast<double>(some(60)));
    }
    one.entry.lay = static_cast<Lay>(some(3));
    one.entry.span = line(number++);
    dog.trim.push_back(one);
  }
  if (some(2) == 0) dog.conditions = {{Condition::thin_skin, {}}};
  if (some(2) == 0) dog.preferences.dislikes = {"thinning shears"};
  if (some(3) == 0) dog.alerts = {avoiding("belly")};
  if (some(3) == 0) dog.accepted = {{{RuleId::comb_base, {}}, "so", day("2026-02-01"), line(9)}};
  return dog;
}

Visit matted(unsigned seed) {
  Visit out = visit("2026-10-01");
  std::mt19937 random(seed);
  for (const char* const place : {"left ear", "breeches", "tail", "belly"}) {
    if (random() % 2 == 0) out.came_in.regions.push_back(state(place, {}, 2));
  }
  if (random() % 2 == 0) {
    Finding sore;
    sore.place = {at("belly"), line(3)};
    sore.what = "hot spot";
    out.findings = {sore};
  }
  return out;
}

bool has(const std::vector<Matter>& found, RuleId id) {
  return std::ranges::any_of(found, [&](const Matter& matter) {
    return std::ranges::find(matter.cautions, id, &Caution::rule) != matter.cautions.end();
  });
}
}  // namespace

TEST_CASE("what only may go with the lay is cut so, and leaves what that leaves") {
  const Pet dog = thin_skinned();
  const Made made = plan(salon(), dog);
  REQUIRE(made.caution(RuleId::thin_skin) != nullptr);
  const std::vector<Place> throat{at("throat")}, back{at("back")};
  CHECK(has(restraints(made.plan.cautions, throat), RuleId::thin_skin));
  CHECK(restraints(made.plan.cautions, back).empty());
  const TrimEntry cut = taken(dog.trim.front(), made.plan.cautions);
  CHECK(cut.lay == Lay::with);
  CHECK_FALSE(cut.lay_given);
  CHECK(dog.trim.front().entry.lay == Lay::against);  // what a person wrote stays
  const PartLength* const length = find_length(made.plan.lengths, at("throat"));
  REQUIRE(length != nullptr);
  CHECK(length->lay == Lay::with);
  CHECK(length->left == left_by_blade(find_blade("10")->length(), Lay::with));
  CHECK(plan_text(made.plan, salon(), dog, words()).find("against the lay") == std::string::npos);
  CHECK(plan_text(made.plan, salon(), dog, words()).find("[warning: thin-skin]") !=
        std::string::npos);
  const auto json = nlohmann::json::parse(plan_json(made.plan, dog, words()));
  for (const auto& row : json.at("lengths")) CHECK(row.at("lay") == "with");
  bool marked = false;
  for (const auto& step : json.at("order")) {
    for (const auto& rule : step.at("restrained_by")) marked = marked || rule == "thin-skin";
  }
  CHECK(marked);
}

TEST_CASE("what was accepted on purpose restrains nothing") {
  Pet dog = thin_skinned();
  dog.accepted = {{{RuleId::thin_skin, {}}, "seen by the vet", day("2026-05-01"), line(30)}};
  const Made made = plan(salon(), dog);
  REQUIRE(made.caution(RuleId::thin_skin) != nullptr);
  CHECK(restraints(made.plan.cautions, std::vector<Place>{at("throat")}).empty());
  CHECK(taken(dog.trim.front(), made.plan.cautions).lay == Lay::against);
}

TEST_CASE("a style that says the same direction is not what the pet differs in") {
  Pet dog = thin_skinned();
  dog.trim.front().said_by = SaidBy::pet;
  dog.trim.front().house = dog.trim.front().entry;
  const Made made = plan(salon(), dog);
  CHECK_FALSE(taken(dog.trim, made.plan.cautions).front().differs());
}

TEST_CASE("a product, the water and the dryer have beside them what is said of them") {
  Pet dog = pet(Coat::curly);
  dog.bath.shampoo = product("oat");
  dog.bath.shampoo->product.contains = {"oat"};
  dog.alerts = {avoiding("left hock")};
  dog.alerts.front().allergens = {{"oat", line(5)}};
  dog.handling.dryer = "force dryer";
  const Made made = plan(salon(), dog, {matted(1)});
  for (const WorkStep& step : made.plan.order) {
    const std::vector<Matter> found = restraints(made.plan.cautions, step);
    CHECK(has(found, RuleId::allergen) ==
          (step.task == Task::shampoo && made.caution(RuleId::allergen) != nullptr));
    CHECK(has(found, RuleId::dryer_face) ==
          (step.task == Task::dry && made.caution(RuleId::dryer_face) != nullptr));
  }
  CHECK(made.caution(RuleId::allergen) != nullptr);
  CHECK(made.caution(RuleId::dryer_face) != nullptr);
}

// Whatever rules say is asked of them anew, tool by tool, so that one which is added to them is
// looked for here too.
TEST_CASE("no step of any plan has a forbidden tool or direction without its caution") {
  std::size_t marked = 0, steps = 0;
  std::vector<bool> seen(rule_count);
  for (unsigned seed = 0; seed < 120; ++seed) {
    const Pet dog = any_pet(seed);
    const Visit last = matted(seed);
    const Made made = plan(salon(), dog, {last});
    const auto accepted = [&](RuleId id) {
      return std::ranges::any_of(dog.accepted,
                                 [&](const Acceptance& one) { return one.rule.value == id; });
    };
    const std::vector<PartLength> wished = lengths_wished(salon(), dog);
    for (const TrimPart& one : dog.trim) {
      const auto place = workable(one.place, dog.alerts);
      if (!place || !cuts(one.entry.tool)) continue;
      const PartLength* const length = find_length(wished, one.place);
      const auto least = length->left ? std::optional(length->left->low) : std::nullopt;
      for (const RuleId id : tool_rules(one.entry.tool, least, *place, dog, &last, one.entry.lay)) {
        if (is_standing(rule(id)) || accepted(id)) continue;
        seen[static_cast<std::size_t>(id)] = true;
        INFO(rule(id).key << " at " << to_text(*place) << ", seed " << seed);
        CHECK(has(restraints(made.plan.cautions, std::vector<Place>{*place}), id));
        for (const WorkStep& step : made.plan.order) {
          if (step.task != Task::cut || std::ranges::find(step.places, *place) == step.places.end())
            continue;
          CHECK(has(restraints(made.plan.cautions, step), id));
          ++steps;
        }
        if (rule(id).touches == Touches::lay) {
          CHECK(taken(one, made.plan.cautions).lay == Lay::with);
          CHECK(find_length(made.plan.lengths, one.place)->lay == Lay::with);
        }
      }
    }
    // And each caution that is about some cutting stands beside all cutting there.
    for (const Caution& one : made.plan.cautions) {
      const Touches touches = rule(one.rule).touches;
      if (one.accepted || (touches != Touches::cut && touches != Touches::lay)) continue;
      for (const WorkStep& step : made.plan.order) {
        const bool there =
            step.task == Task::cut && std::ranges::any_of(step.places, [&](Place at) {
              return std::ranges::any_of(one.places, [&](Place other) { return meets(at, other); });
            });
        if (!there) continue;
        CHECK(has(restraints(made.plan.cautions, step), one.rule));
        ++marked;
      }
    }
  }
  CHECK(steps > 500);
  CHECK(marked > 1000);
  CHECK(std::ranges::count(seen, true) >= 8);
}
