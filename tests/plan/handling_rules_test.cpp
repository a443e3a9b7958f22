#include "plan/handling_rules.h"

#include <algorithm>

#include <map>

#include "plan/made.h"

using namespace furnish;
using namespace furnish::made;

namespace {
Pet dried(std::string_view bath, std::string_view handling) {
  Pet dog = pet();
  if (!bath.empty()) dog.bath.dry = Located<std::string>{std::string(bath), line(23)};
  dog.handling.dryer = handling;
  dog.handling.dryer_span = line(12);
  return dog;
}
}  // namespace

TEST_CASE("the plan dries by the stricter line, and says where the other stands") {
  const auto made = plan(salon(), dried("force dryer, not on the head", "quiet air only"));
  CHECK(made.plan.drying.words == "quiet air only");
  CHECK(made.plan.drying.ruled_out);
  CHECK(made.plan.drying.planned == "force dryer, not on the head");
  const Caution* const caution = made.caution(RuleId::against_handling);
  REQUIRE(caution != nullptr);
  CHECK(said(caution->what) == "against-handling-dryer: quiet air only");
  CHECK(said(caution->instead) == "against-handling-dryer-do");
  CHECK(caution->span.begin.line == 23);
  CHECK(caution->against.begin.line == 12);
  const auto& order = made.plan.order;
  CHECK(std::ranges::find(order, Task::dry, &WorkStep::task)->words == "quiet air only");
  DiagnosticSink sink;
  report(made.plan.cautions, words(), sink);
  CHECK(std::ranges::any_of(sink.all(), [](const Diagnostic& one) {
    return one.notes.size() == 1 && one.notes[0].first.begin.line == 12;
  }));
}

TEST_CASE("the bath's line may be the stricter one, and two that agree are no contradiction") {
  CHECK(plan(salon(), dried("towel, no force dryer", "force dryer, not on the head"))
            .plan.drying.words == "towel, no force dryer");
  CHECK(plan(salon(), dried("towel, no force dryer", "force dryer, not on the head"))
            .count(RuleId::against_handling) == 1);
  CHECK(plan(salon(), dried("", "quiet air only")).plan.drying.words == "quiet air only");
  for (const auto& [bath, handling] :
       {std::pair("force dryer, not on the head", "force dryer, not on the head"),
        std::pair("towel, then force dryer", "towel only on the head"),
        std::pair("towel", "quiet air only"), std::pair("", ""), std::pair("force dryer", "")}) {
    INFO(bath << " | " << handling);
    const auto made = plan(salon(), dried(bath, handling));
    CHECK_FALSE(made.plan.drying.ruled_out);
    CHECK(made.count(RuleId::against_handling) == 0);
  }
}

TEST_CASE("what an owner dislikes rules out dryers too") {
  Pet dog = dried("force dryer, not on the head", "");
  dog.preferences.dislikes = {"rounded ears", "the force dryer"};
  dog.preferences.dislikes_span = line(40);
  const auto made = plan(salon(), dog);
  CHECK(made.plan.drying.words == "the force dryer");
  CHECK(made.caution(RuleId::against_handling)->against.begin.line == 40);
  dog.bath.none = true;
  CHECK(plan(salon(), dog).count(RuleId::against_handling) == 0);
}

TEST_CASE("a tool that handling or dislikes rule out, with both lines") {
  Pet dog = pet();
  dog.trim = {part("chest", shears(Shears::thinning), Lay::with, 30_mm, 7),
              part("ears", shears(Shears::straight), Lay::with, 20_mm, 8),
              part("breeches", shears(Shears::thinning), Lay::with, 30_mm, 7)};
  dog.handling.hold = "under the chin; no thinning shears";
  dog.handling.hold_span = line(30);
  const auto made = plan(salon(), dog);
  REQUIRE(made.count(RuleId::against_handling) == 1);
  const Caution* const caution = made.caution(RuleId::against_handling);
  CHECK(caution->places == std::vector<Place>{at("chest"), at("breeches")});
  CHECK(caution->span.begin.line == 7);
  CHECK(caution->against.begin.line == 30);
  CHECK(said(caution->what) ==
        "against-handling: chest, breeches; under the chin; no thinning shears");
  CHECK(said(caution->instead) == "against-handling-do");
  dog.handling.hold = "no thinning shears on the ears";
  CHECK(plan(salon(), dog).count(RuleId::against_handling) == 0);
}

TEST_CASE("a blend takes no shears that are ruled out") {
  Pet dog = pet(Coat::drop);
  dog.trim = {part("back", blade("7F")), part("sides", shears(Shears::straight), Lay::with, 40_mm)};
  const auto with = [&] { return plan(salon(), dog).plan.blends.at(0).with; };
  CHECK(with() == Shears::thinning);
  dog.preferences.dislikes = {"thinning shears"};
  CHECK(with() == Shears::blending);
  dog.preferences.dislikes = {"thinning shears", "blending shears"};
  CHECK_FALSE(with());
}

TEST_CASE("felt proposes the clipper before the bath, until somebody decides") {
  Visit felted = visit("2026-09-29");
  felted.came_in.regions = {state("back", {}, 4), state("belly", {}, 3)};
  Pet dog = pet(Coat::curly);
  dog.trim = {part("back", blade("7F"))};
  Salon shop = salon();
  const auto made = plan(shop, dog, {felted});
  REQUIRE(made.caution(RuleId::felted_coat) != nullptr);
  CHECK(made.caution(RuleId::felted_coat)->signal == Signal::caution);
  CHECK(made.caution(RuleId::felted_coat)->places == std::vector<Place>{at("back")});
  CHECK(said(made.caution(RuleId::felted_coat)->what) == "felted-coat: back; 2026-09-29");
  const auto proposed = [&] { return plan(shop, dog, {felted}).count(RuleId::felted_coat) == 1; };
  for (const FeltedWay way : {FeltedWay::clip_first, FeltedWay::bath_first}) {
    shop.felted = way;
    CHECK_FALSE(proposed());
  }
  shop.felted.reset();
  dog.bath.when = Located<BathWhen>{BathWhen::first, {}};
  CHECK_FALSE(proposed());
  dog.bath.when.reset();
  dog.trim[0].entry.before_bath = true;
  CHECK_FALSE(proposed());
  dog.trim[0].entry.before_bath = false;
  felted.came_in.regions[0].mats = 3;  // one region of the body's, and none felted
  CHECK_FALSE(proposed());
}

TEST_CASE("thin, folded or tearing skin: with the lay, a #10 or longer, no comb in mats") {
  Pet dog = pet();
  const auto fires = [&](const Tool& tool, Lay lay, std::string_view place = "back",
                         const std::vector<Visit>& visits = {}) {
    dog.trim = {part(place, tool, lay)};
    return plan(salon(), dog, visits).count(RuleId::thin_skin) > 0;
  };
  CHECK_FALSE(fires(blade("10"), Lay::against));
  dog.conditions = {{Condition::thin_skin, line(5)}};
  CHECK(fires(blade("10"), Lay::against));
  CHECK_FALSE(fires(blade("10"), Lay::with));
  CHECK(fires(blade("15"), Lay::with));
  CHECK_FALSE(fires(blade("7F"), Lay::with));
  CHECK_FALSE(fires(blade("30"), Lay::against, "pads"));
  dog.conditions = {{Condition::wrinkles, line(5)}};
  CHECK(fires(blade("10"), Lay::against));
  dog.conditions.clear();
  Alert torn;
  torn.text = "Skin tears like paper.";
  dog.alerts = {torn};
  CHECK(fires(blade("10"), Lay::against));
  dog.alerts.clear();
  dog.health_notes = "skin tears at the flank";
  CHECK(fires(blade("10"), Lay::against));
  dog.health_notes = "tear stains under the eyes";
  CHECK_FALSE(fires(blade("10"), Lay::against));
}

TEST_CASE("mats on thin skin are left to a vet") {
  Pet dog = pet();
  dog.conditions = {{Condition::thin_skin, line(5)}};
  dog.trim = {part("back", comb(13_mm), Lay::with)};
  Visit matted = visit("2026-09-29");
  matted.came_in.regions = {state("back", {}, 2)};
  const auto made = plan(salon(), dog, {matted});
  CHECK(made.plan.tearing_skin);
  REQUIRE(made.count(RuleId::thin_skin) == 2);  // the comb, and the mats
  CHECK(std::ranges::any_of(made.plan.cautions, [](const Caution& one) {
    return said(one.what) == "thin-skin-mats: back; 2026-09-29" &&
           said(one.instead) == "thin-skin-mats-do";
  }));
  matted.came_in.regions = {state("back", {}, 1)};
  CHECK(plan(salon(), dog, {matted}).count(RuleId::thin_skin) == 1);  // a tangle; the comb still
  CHECK_FALSE(plan(salon(), pet()).plan.tearing_skin);
}

TEST_CASE("a machine whose noise the pet's lines name is a caution with both places") {
  Pet dog = pet();
  dog.trim = {part("back", blade("7F"), Lay::with, {}, 12), part("tail", shears(Shears::curved))};
  dog.preferences.dislikes = {"clipper noise"};
  dog.preferences.dislikes_span = line(31);
  const Made made = plan(salon(), dog);
  const Caution* const caution = made.caution(RuleId::noise);
  REQUIRE(caution != nullptr);
  CHECK(said(caution->what) == "noise-clipper: clipper noise");
  CHECK(caution->span.begin.line == 12);
  CHECK(caution->against.begin.line == 31);
  CHECK(made.count(RuleId::noise) == 1);
  dog.preferences.dislikes = {"loud dryers and grinder noise"};
  dog.bath.dry = Located<std::string>{"force dryer, not on the head", line(22)};
  dog.finish = {{FinishPart::nails, "clip, then grind", SaidBy::pet, line(8), false}};
  CHECK(plan(salon(), dog).count(RuleId::noise) == 2);
  dog.preferences.dislikes = {"clipper lines"};
  CHECK(plan(salon(), dog).count(RuleId::noise) == 0);
}

TEST_CASE(
    "felt that no clipper is planned for is told, whichever of clipper and water comes first") {
  Visit felted = visit("2026-09-29");
  felted.came_in.regions = {state("back", {}, 4), state("belly", {}, 4)};
  Pet dog = pet(Coat::curly);
  dog.trim = {part("back", blade("7F")), part("belly", shears(Shears::curved))};
  Salon shop = salon();
  shop.felted = FeltedWay::clip_first;
  const Made made = plan(shop, dog, {felted});
  REQUIRE(made.caution(RuleId::felted_coat) != nullptr);
  CHECK(made.caution(RuleId::felted_coat)->places == std::vector<Place>{at("belly")});
  CHECK(made.caution(RuleId::felted_coat)->instead.key == "felted-coat-decided-do");
  dog.trim[1].entry.tool = blade("10");
  CHECK(plan(shop, dog, {felted}).count(RuleId::felted_coat) == 0);
}

TEST_CASE("felted is said of felt alone, and no comb is sent into it") {
  Visit matted = visit("2026-09-29");
  for (const Region region : info(Group::body).members) {
    matted.came_in.regions.push_back(state(info(region).key, {}, 3));
  }
  matted.came_in.regions.front().mats = 4;
  Pet dog = pet(Coat::curly);
  dog.bath.before.reset();
  dog.trim = {part("back", comb(13_mm))};
  const Made made = plan(salon(), dog, {matted});
  std::map<std::string, std::size_t> places;
  for (const Caution& one : made.with(RuleId::felted_coat)) {
    if (one.rule != RuleId::felted_coat) continue;
    places[one.what.key] = one.places.size();
    CHECK(one.instead.key == "felted-coat-do");
  }
  CHECK(places ==
        std::map<std::string, std::size_t>{
            {"felted-coat", 1}, {"felted-coat-to-skin", info(Group::body).members.size() - 1}});
  CHECK(made.count(RuleId::mats_before_water) == 0);
  matted.came_in.regions = {state("back", {}, 4)};
  CHECK(plan(salon(), dog, {matted}).caution(RuleId::comb_on_mats)->instead.key ==
        "comb-on-mats-felt-do");
}

TEST_CASE("a visit that did not look takes nothing from what the one before it found") {
  Visit found = visit("2026-09-29"), sent_home = visit("2026-10-06");
  found.work = sent_home.work = Work::not_done;
  found.came_in.regions = {state("back", {}, 4)};
  CHECK(plan(salon(), pet(Coat::curly), {found, sent_home}).count(RuleId::felted_coat) == 1);
}

TEST_CASE("what an alert rules out is held against the plan, in the sentence that says so") {
  Pet dog = pet();
  dog.bath.dry = Located<std::string>{"force dryer", line(22)};
  Alert heart;
  heart.text = "Epilepsy. Heart murmur, on tablets.";
  heart.action = "Ring the vet. No force dryer.";
  heart.span = line(7);
  dog.alerts = {heart};
  const Made made = plan(salon(), dog);
  CHECK(made.plan.drying.ruled_out);
  CHECK(made.plan.drying.words == "No force dryer");
  REQUIRE(made.caution(RuleId::against_handling) != nullptr);
  CHECK(made.caution(RuleId::against_handling)->against.begin.line == 7);
  CHECK(made.count(RuleId::dryer_face) == 0);  // nobody dries with it now

  // Also where only all of it says so, and in another language's text.
  dog.alerts[0].action = {};
  dog.alerts[0].text = "Force dryer? Never.";
  CHECK(plan(salon(), dog).plan.drying.ruled_out);
  dog.alerts[0].text = "Pas de pulseur.";
  dog.alerts[0].text.others = {{"en", "No force dryer, ever."}};
  CHECK(plan(salon(), dog).plan.drying.words == "No force dryer, ever");
  dog.alerts[0].text = "Sneezes at the force dryer.";
  CHECK_FALSE(plan(salon(), dog).plan.drying.ruled_out);

  dog.bath.dry.reset();
  dog.trim = {part("ears", blade("10"), Lay::with, {}, 30), part("back", blade("7F"), Lay::with)};
  dog.alerts[0].text = "No clippers on the ears";
  const Made cut = plan(salon(), dog);
  REQUIRE(cut.count(RuleId::against_handling) == 1);
  CHECK(said(cut.caution(RuleId::against_handling)->what) ==
        "against-handling: ears; No clippers on the ears");
}

TEST_CASE("a nail grinder that a line rules out, or that frightens the pet") {
  Pet dog = pet();
  dog.finish = {{FinishPart::nails, "grind", SaidBy::pet, line(8), false}};
  const auto fires = [&] {
    const Made made = plan(salon(), dog);
    const Caution* const caution = made.caution(RuleId::against_handling);
    return caution != nullptr && caution->what.key == "against-handling-grinder" &&
           caution->instead.key == "against-handling-grinder-do" && caution->span.begin.line == 8 &&
           made.count(RuleId::noise) == 0;
  };
  CHECK_FALSE(fires());
  dog.alerts = {Alert()};
  for (const char* words : {"No grinder", "Panics at the grinder", "Grinder noise: never"}) {
    dog.alerts[0].text = words;
    CHECK(fires());
  }
  dog.alerts[0].text = "Screams at the nail clipper; grind.";
  CHECK_FALSE(fires());
  dog.alerts.clear();
  dog.handling.hold = "under the chin, no grinder";
  CHECK(fires());
  dog.handling.hold.clear();
  dog.preferences.dislikes = {"grinder"};
  CHECK(fires());
  dog.finish = {{FinishPart::nails, "clip", SaidBy::pet, line(8), false}};
  CHECK_FALSE(fires());
}
