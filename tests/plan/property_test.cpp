#include <algorithm>
#include <chrono>
#include <random>

#include "plan/allocations.h"
#include "plan/made.h"
#include "plan/plan_json.h"
#include "plan/plan_text.h"

using namespace furnish;
using namespace furnish::made;

namespace {
/// The densest pet there can be: every region, paired ones apart, every list filled.
struct Dense {
  Salon salon;
  Pet pet;
  std::vector<Visit> visits;
};

Dense dense(unsigned seed) {
  std::mt19937 random(seed);
  const auto some = [&](std::size_t of) { return static_cast<std::size_t>(random() % of); };
  Dense out;
  out.salon.kit = kit({"40", "30", "15", "10", "7F", "5F", "4F"},
                      {Length::inches(1, 8), Length::inches(1, 4), Length::inches(1, 2), 19_mm});
  out.salon.closed = {std::chrono::Sunday, std::chrono::Monday};
  out.salon.vaccinations = {{"rabies", std::chrono::days(28), std::chrono::days(365), true, {}},
                            {"distemper", std::chrono::days(14), std::chrono::days(365), true, {}}};
  Pet& dog = out.pet = pet(static_cast<Coat>(some(7)));
  dog.born = Birth{day("2012-02-29"), line(2)};
  dog.weight = Located<Mass>{Mass::kg(30), line(3)};
  std::uint32_t number = 100;
  for (const RegionInfo& row : regions()) {
    for (const Side side : {Side::left, Side::right}) {
      TrimPart one;
      one.place = {row.region, row.paired ? side : Side::both};
      switch (some(4)) {
        case 0:
          one.entry.tool = Clip{&blades()[some(blades().size())]};
          break;
        case 1:
          one.entry.tool = comb(guard_combs()[some(guard_combs().size())]);
          break;
        case 2:
          one.entry.tool = Scissor{static_cast<Shears>(some(4))};
          one.entry.leave = Length::mm(5 + static_cast<double>(some(60)));
          break;
        default:
          one.entry.tool = Brush{};
      }
      one.entry.lay = static_cast<Lay>(some(3));
      one.entry.span = line(number++);
      dog.trim.push_back(one);
      if (!row.paired) break;
    }
  }
  dog.alerts = {avoiding("left hock"), avoiding("belly")};
  dog.conditions = {{Condition::seizures, {}}, {Condition::wrinkles, {}}};
  dog.handling.dryer = "force dryer";
  dog.bath.shampoo = product("oat");
  dog.bath.conditioner = product("nourish", Dilution{1, 5});
  dog.preferences.keep_under = {{at("ears"), 40_mm, line(70)}, {at("tail"), 90_mm, line(71)}};
  dog.vaccinations = {{"rabies", {day("2020-01-01"), line(80)}, false},
                      {"rabies", {day("2026-01-01"), line(81)}, true}};
  dog.accepted = {{{RuleId::skip_tooth, {}}, "a", day("2026-01-01"), line(90)},
                  {{RuleId::comb_base, {}}, "b", day("2026-02-01"), line(91)}};
  for (int i = 0; i < 8; ++i) {
    Visit one = visit("2025-01-01");
    one.date.value += std::chrono::days(56 * i);
    one.minutes = std::chrono::minutes(80 + some(30));
    one.weight = Located<Mass>{Mass::kg(28 + static_cast<double>(some(4))), line(4)};
    one.came_in.regions = {state("ears", Length::mm(35 + static_cast<double>(some(8))), 1),
                           state("tail", 100_mm)};
    one.went_out = {state("ears", 20_mm), state("tail", 80_mm)};
    out.visits.push_back(one);
  }
  return out;
}

std::string text_of(const Dense& in) {
  const Made made = plan(in.salon, in.pet, in.visits);
  return plan_text(made.plan, in.salon, in.pet, words()) + plan_json(made.plan, in.pet, words());
}
}  // namespace

TEST_CASE("permuting the input never changes the plan") {
  for (unsigned seed = 0; seed < 25; ++seed) {
    const Dense original = dense(seed);
    const std::string expected = text_of(original);
    std::mt19937 random(seed + 1000);
    for (int round = 0; round < 4; ++round) {
      Dense mixed = original;
      const auto mix = [&](auto& list) { std::ranges::shuffle(list, random); };
      mix(mixed.visits);
      mix(mixed.pet.trim);
      mix(mixed.pet.alerts);
      mix(mixed.pet.conditions);
      mix(mixed.pet.vaccinations);
      mix(mixed.pet.accepted);
      mix(mixed.pet.preferences.keep_under);
      mix(mixed.salon.closed);
      mix(mixed.salon.vaccinations);
      mix(mixed.salon.kit->blades);
      mix(mixed.salon.kit->combs);
      mix(mixed.salon.kit->shears);
      for (Visit& one : mixed.visits) mix(one.came_in.regions);
      REQUIRE(text_of(mixed) == expected);
    }
  }
}

TEST_CASE("a plan of the densest pet is made within bounds") {
  std::size_t most = 0;
  for (unsigned seed = 0; seed < 20; ++seed) {
    const Dense in = dense(seed);
    DiagnosticSink sink;
    const std::size_t before = allocations();
    const Plan result = make_plan(in.salon, in.pet, in.visits, {}, day("2026-11-24"), sink);
    most = std::max(most, allocations() - before);
    CHECK_FALSE(result.order.empty());
  }
  CAPTURE(most);
  CHECK(most < 10'000);
}

TEST_CASE("no step touches what an alert avoids, whatever the trim") {
  for (unsigned seed = 50; seed < 80; ++seed) {
    const Dense in = dense(seed);
    const Made made = plan(in.salon, in.pet, in.visits);
    const auto untouched = [](Place place) {
      return !meets(place, at("left hock")) && !meets(place, at("belly"));
    };
    for (const WorkStep& step : made.plan.order) {
      CHECK(std::ranges::all_of(step.places, untouched));
    }
    for (const Blend& blend : made.plan.blends) {
      CHECK(untouched(blend.longer));
      CHECK(untouched(blend.shorter));
    }
    for (const DrawerGap& gap : made.plan.drawer) CHECK(untouched(gap.place));
  }
}
