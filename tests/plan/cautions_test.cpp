#include "plan/cautions.h"

#include <algorithm>
#include <set>

#include "plan/made.h"

using namespace furnish;
using namespace furnish::made;

namespace {
Pet risky() {
  Pet dog = pet(Coat::double_coat);
  dog.born = Birth{day("2010-01-01"), line(2)};
  dog.trim = {part("back", blade("10"), Lay::with, {}, 10),
              part("belly", blade("7"), Lay::with, {}, 11),
              part("hocks", blade("7F"), Lay::with, {}, 12),
              part("ears", shears(Shears::straight), Lay::with, 20_mm, 13),
              part("pads", blade("4F"), Lay::with, {}, 14)};
  dog.alerts = {avoiding("left hock")};
  return dog;
}

Acceptance accept(RuleId id, std::string_view signed_on, std::string_view reason = "owner's wish") {
  return {{id, line(40)}, std::string(reason), day(signed_on), line(40)};
}
}  // namespace

TEST_CASE("gravest first, then in the order of the rules") {
  const Made made = plan(salon(), risky());
  const auto& all = made.plan.cautions;
  REQUIRE(all.size() >= 5);
  CHECK(all.front().rule == RuleId::avoid_region);
  CHECK(std::ranges::is_sorted(all, {},
                               [](const Caution& c) { return std::pair(c.signal, c.rule); }));
  CHECK(all.back().rule == RuleId::senior);
}

TEST_CASE("an accepted caution stays, with reason and day") {
  Pet dog = risky();
  dog.accepted = {accept(RuleId::double_coat_short, "2026-05-01")};
  const Made made = plan(salon(), dog);
  const Caution* const caution = made.caution(RuleId::double_coat_short);
  REQUIRE(caution != nullptr);
  REQUIRE(caution->accepted);
  CHECK(caution->accepted->reason == "owner's wish");
  CHECK(caution->accepted->signed_on == day("2026-05-01"));
  CHECK_FALSE(made.caution(RuleId::skip_tooth)->accepted);
  CHECK(made.plan.stale.empty());
}

TEST_CASE("accepted for tomorrow is not accepted today") {
  Pet dog = risky();
  dog.accepted = {accept(RuleId::double_coat_short, "2026-11-25")};
  const Made made = plan(salon(), dog);
  CHECK_FALSE(made.caution(RuleId::double_coat_short)->accepted);
  CHECK(made.says("day-after-today"));
}

TEST_CASE("accepted twice: the newer counts, in whatever order") {
  Pet dog = risky();
  dog.accepted = {accept(RuleId::double_coat_short, "2026-05-01", "old"),
                  accept(RuleId::double_coat_short, "2026-08-01", "new")};
  CHECK(plan(salon(), dog).caution(RuleId::double_coat_short)->accepted->reason == "new");
  std::swap(dog.accepted[0], dog.accepted[1]);
  CHECK(plan(salon(), dog).caution(RuleId::double_coat_short)->accepted->reason == "new");
}

TEST_CASE("an acceptance of what does not apply is itself reported") {
  Pet dog = risky();
  dog.accepted = {accept(RuleId::comb_base, "2026-05-01")};
  const Made made = plan(salon(), dog);
  REQUIRE(made.plan.stale.size() == 1);
  CHECK(made.plan.stale[0].rule.value == RuleId::comb_base);
  CHECK(made.says("stale-acceptance"));
}

TEST_CASE("for a check: a warning for each that nobody accepted, at its line") {
  Pet dog = risky();
  dog.accepted = {accept(RuleId::double_coat_short, "2026-05-01")};
  const Made made = plan(salon(), dog);
  DiagnosticSink sink;
  report(made.plan.cautions, words(), sink);
  CHECK(sink.all().size() + 1 == made.plan.cautions.size());
  CHECK_FALSE(sink.has_errors());
  const auto skip = std::ranges::find_if(sink.all(), [](const Diagnostic& d) {
    return d.message.find("skip-tooth") != std::string::npos;
  });
  REQUIRE(skip != sink.all().end());
  CHECK(skip->span.begin.line == 11);
  CHECK(skip->message == "warning (skip-tooth): Skip-tooth: belly");
  CHECK(skip->hint == "skip-tooth-twin-do: #7F");
}

TEST_CASE("a plain pet has no caution") {
  Pet dog = pet(Coat::smooth);
  dog.born = Birth{day("2022-01-01"), line(2)};
  dog.trim = {part("pads", blade("30")), part("sanitary", blade("10")), part("back", Brush{})};
  dog.handling.dryer = "towel, stand dryer on low";
  dog.bath.shampoo = product("oat");
  CHECK(plan(salon(), dog).plan.cautions.empty());
}

TEST_CASE("every rule has sentences for what is the matter and for what to do") {
  const std::vector<std::string> keys = caution_keys();
  CHECK(std::set<std::string>(keys.begin(), keys.end()).size() == keys.size());
  for (const SafetyRule& row : safety_rules()) {
    INFO(row.key);
    const auto of_rule = [&](const std::string& key) { return key.starts_with(row.key); };
    const auto advice = [&](const std::string& key) { return key.ends_with("-do"); };
    CHECK(std::ranges::any_of(
        keys, [&](const std::string& key) { return of_rule(key) && !advice(key); }));
    CHECK(std::ranges::find(keys, std::string(row.key) + "-do") != keys.end());
    CHECK_FALSE(row.source.empty());
    CHECK(parse_rule(row.key) == row.id);
  }
}

TEST_CASE("what holds for every pet is no caution of this one, and no line of a check") {
  Pet dog = pet(Coat::curly);
  dog.bath.before.reset();
  dog.trim = {part("ears", shears(Shears::straight), Lay::with, 20_mm, 13),
              part("sanitary", shears(Shears::straight), Lay::with, 20_mm, 14),
              part("pads", blade("30"), Lay::with, {}, 15)};
  Salon shop = salon();
  shop.time.clip_per_part = 11;
  const Made made = plan(shop, dog);
  CHECK(made.plan.cautions.empty());
  std::vector<RuleId> standing;
  for (const Caution& one : made.plan.standing) standing.push_back(one.rule);
  CHECK(standing == std::vector{RuleId::sanitary_shears, RuleId::ear_edge, RuleId::pads,
                                RuleId::prebrush, RuleId::blade_heat});
  DiagnosticSink sink;
  report(made.plan.cautions, words(), sink);
  CHECK(sink.all().empty());
}

TEST_CASE("standing advice can be accepted like any other") {
  Pet dog = pet();
  dog.trim = {part("ears", shears(Shears::straight), Lay::with, 20_mm, 13)};
  dog.accepted = {accept(RuleId::ear_edge, "2026-05-01", "Bo cuts them")};
  const Made made = plan(salon(), dog);
  REQUIRE(made.plan.standing.size() == 1);
  REQUIRE(made.plan.standing[0].accepted);
  CHECK(made.plan.standing[0].accepted->reason == "Bo cuts them");
  CHECK(made.plan.stale.empty());
}
