#include "plan/order.h"

#include <algorithm>

#include "plan/changes.h"
#include "plan/made.h"

using namespace furnish;
using namespace furnish::made;

namespace {
std::vector<WorkStep> steps_of(const Pet& dog, const Salon& shop = salon()) {
  return plan(shop, dog).plan.order;
}

std::size_t find(const std::vector<WorkStep>& steps, Task task) {
  return static_cast<std::size_t>(std::ranges::find(steps, task, &WorkStep::task) - steps.begin());
}

std::size_t find_place(const std::vector<WorkStep>& steps, Region region) {
  const auto found = std::ranges::find_if(steps, [&](const WorkStep& s) {
    return (s.task == Task::cut || s.task == Task::finish) &&
           std::ranges::find(s.places, region, &Place::region) != s.places.end();
  });
  return static_cast<std::size_t>(found - steps.begin());
}

Pet groomed() {
  Pet dog = pet(Coat::double_coat);
  dog.bath.shampoo = product("oat");
  dog.bath.conditioner = product("nourish");
  dog.bath.conditioner->product.kind = ProductKind::conditioner;
  dog.bath.conditioner->comb_through = "coarse, then fine";
  dog.trim = {part("muzzle", blade("10")),
              part("ears", shears(Shears::straight), Lay::with, 20_mm),
              part("back", comb(31_mm)),
              part("belly", blade("10")),
              part("hocks", comb(Length::inches(1, 2))),
              part("tail", shears(Shears::thinning), Lay::with, 80_mm),
              part("feet", shears(Shears::straight), Lay::with, 10_mm),
              part("pads", blade("30")),
              part("sanitary", blade("10"))};
  return dog;
}
}  // namespace

// Precedence: common practice, no source.
TEST_CASE("the order keeps the precedence of the trade") {
  const auto steps = steps_of(groomed());
  CHECK(std::ranges::is_sorted(steps, {}, &WorkStep::stage));
  CHECK(find(steps, Task::brush_out) < find(steps, Task::shampoo));
  CHECK(find(steps, Task::conditioner) < find(steps, Task::comb_through));
  CHECK(steps[find(steps, Task::comb_through)].stage == Stage::wet_comb_out);
  CHECK(steps[find(steps, Task::comb_through) + 1].task == Task::rinse);
  CHECK(find(steps, Task::comb_through) < find(steps, Task::nails));
  CHECK(find(steps, Task::nails) < find(steps, Task::dry));
  CHECK(find(steps, Task::dry) < find(steps, Task::brush));
  CHECK(find(steps, Task::brush) < find_place(steps, Region::pads));
  CHECK(find_place(steps, Region::pads) < find_place(steps, Region::back));
  CHECK(find_place(steps, Region::sanitary) < find_place(steps, Region::belly));
  CHECK(find_place(steps, Region::back) < find_place(steps, Region::feet));
  CHECK(find_place(steps, Region::feet) < find_place(steps, Region::tail));
  CHECK(find_place(steps, Region::tail) < find_place(steps, Region::muzzle));
  CHECK(steps.back().task == Task::judge);
  for (const WorkStep& step : steps) {
    if (step.task != Task::cut) continue;
    const bool head =
        std::ranges::any_of(step.places, [](Place p) { return in_group(p.region, Group::head); });
    if (head) CHECK(step.stage == Stage::finish);
  }
}

TEST_CASE("what the pet needs not is not there") {
  Pet dog = pet(Coat::smooth);
  dog.bath.before.reset();
  CHECK(find(steps_of(dog), Task::brush_out) == steps_of(dog).size());
  CHECK(find(steps_of(dog), Task::comb_through) == steps_of(dog).size());
  dog.bath.none = true;
  for (const Task task : {Task::shampoo, Task::rinse, Task::dry}) {
    CHECK(find(steps_of(dog), task) == steps_of(dog).size());
  }
  dog.finish.push_back({FinishPart::nails, "leave", SaidBy::pet, {}, false});
  CHECK(find(steps_of(dog), Task::nails) == steps_of(dog).size());
}

TEST_CASE("a coat that needs it is brushed before water though nobody wrote it") {
  Pet dog = pet(Coat::curly);
  dog.bath.before.reset();
  CHECK(find(steps_of(dog), Task::brush_out) < find(steps_of(dog), Task::shampoo));
}

TEST_CASE("places that an alert avoids do not appear") {
  Pet dog = groomed();
  dog.alerts = {avoiding("left hock"), avoiding("belly"), avoiding("left foot")};
  const auto steps = steps_of(dog);
  for (const WorkStep& step : steps) {
    for (const Place place : step.places) {
      CHECK_FALSE(meets(place, at("left hock")));
      CHECK_FALSE(meets(place, at("belly")));
      CHECK_FALSE(meets(place, at("left foot")));
    }
  }
  CHECK(find_place(steps, Region::hocks) < steps.size());  // the right one
  CHECK(steps[find(steps, Task::nails)].places == std::vector<Place>{at("right foot")});
}

TEST_CASE("the drawer's substitute is what one works with") {
  Salon shop = salon();
  shop.kit = kit({"40", "30", "10"}, {31_mm, 13500_um});
  Pet dog = groomed();
  const auto steps = steps_of(dog, shop);
  const WorkStep& hocks = steps[find_place(steps, Region::hocks)];
  CHECK(hocks.substitute);
  CHECK(*hocks.tool == comb(13500_um));
}

TEST_CASE("finish words stand beside the cut, else in a step of their own") {
  Pet dog = groomed();
  dog.finish = {{FinishPart::ears, "straight edge", SaidBy::pet, {}, false},
                {FinishPart::feet, "hare foot", SaidBy::pet, {}, false}};
  auto steps = steps_of(dog);
  CHECK(steps[find_place(steps, Region::ears)].words == "ears: straight edge");
  CHECK_FALSE(steps[find_place(steps, Region::ears)].how.empty());
  std::erase_if(dog.trim, [](const TrimPart& p) { return p.place.region == Region::ears; });
  steps = steps_of(dog);
  CHECK(steps[find_place(steps, Region::ears)].task == Task::finish);
  CHECK_FALSE(steps[find_place(steps, Region::ears)].tool);
}

namespace {
/// A finish that names no tool counts as one of its own; other tasks without a tool are no change.
Changes count_changes(std::span<const WorkStep> steps) {
  Changes out;
  std::optional<Tool> tool;
  bool started = false;
  Stance stance = Stance::standing;
  for (const WorkStep& step : steps) {
    const bool handled = step.tool || (step.task == Task::finish && !step.places.empty());
    if (handled && (!started || step.tool != tool)) {
      ++out.tool;
      tool = step.tool;
      started = true;
    }
    if (step.stance != stance) ++out.stance;
    stance = step.stance;
  }
  return out;
}
}  // namespace

TEST_CASE("steps of one tool and position are one step, and the changes are counted") {
  Pet dog = pet(Coat::drop);
  dog.trim = {part("back", comb(13_mm)), part("sides", comb(13_mm)), part("loin", blade("7F"))};
  const auto steps = steps_of(dog);
  CHECK(steps[find_place(steps, Region::back)].places ==
        std::vector<Place>{at("back"), at("sides")});
  // Brush, comb, blade; to the lifted foot and back again.
  CHECK(count_changes(steps) == Changes{3, 2});
}

// On a dry, unwashed coat; clipping first where it is felted or the file says so: common practice,
// no source.
TEST_CASE("a coat is stripped before the bath, by hand or knife") {
  Pet dog = pet(Coat::wire);
  dog.bath.shampoo = product("oat");
  dog.trim = {part("back", HandStrip{Strip::hand}), part("sides", HandStrip{Strip::knife}),
              part("belly", blade("10"))};
  const auto steps = steps_of(dog);
  for (const Region region : {Region::back, Region::sides}) {
    CHECK(find_place(steps, region) < find(steps, Task::shampoo));
    CHECK(find_place(steps, region) > find(steps, Task::brush_out));
    CHECK(steps[find_place(steps, region)].before_bath);
  }
  CHECK(find_place(steps, Region::belly) > find(steps, Task::dry));
  CHECK_FALSE(steps[find_place(steps, Region::belly)].before_bath);
  // Without a bath there is nothing to be before.
  dog.bath.none = true;
  CHECK_FALSE(steps_of(dog)[find_place(steps_of(dog), Region::back)].before_bath);
}

TEST_CASE("the whole dog is clipped before its bath, or one place, where the file says so") {
  Pet dog = groomed();
  dog.bath.when = Located<BathWhen>{BathWhen::after_clipping, {}};
  auto steps = steps_of(dog);
  for (const Region region :
       {Region::back, Region::belly, Region::pads, Region::sanitary, Region::muzzle}) {
    CHECK(find_place(steps, region) < find(steps, Task::brush_out));
  }
  CHECK(find_place(steps, Region::tail) > find(steps, Task::dry));
  CHECK(find_place(steps, Region::feet) > find(steps, Task::dry));
  dog.bath.when.reset();
  dog.trim[3].entry.before_bath = true;  // the belly
  steps = steps_of(dog);
  CHECK(find_place(steps, Region::belly) < find(steps, Task::shampoo));
  CHECK(find_place(steps, Region::back) > find(steps, Task::dry));
}

TEST_CASE(
    "felt is clipped before the bath where the salon does so, unless the pet's file decides") {
  Visit felted = visit("2026-09-29");
  felted.came_in.regions = {state("back", {}, 4), state("sides", {}, 3)};
  Salon shop = salon();
  Pet dog = groomed();
  dog.trim.push_back(part("sides", comb(31_mm)));
  const auto before = [&](Region region) {
    const auto steps = plan(shop, dog, {felted}).plan.order;
    return find_place(steps, region) < find(steps, Task::shampoo);
  };
  CHECK_FALSE(before(Region::back));
  shop.felted = FeltedWay::bath_first;
  CHECK_FALSE(before(Region::back));
  shop.felted = FeltedWay::clip_first;
  CHECK(before(Region::back));
  CHECK_FALSE(before(Region::sides));  // one region of six has mats to cut out
  CHECK_FALSE(before(Region::belly));
  dog.bath.when = Located<BathWhen>{BathWhen::first, {}};
  CHECK_FALSE(before(Region::back));
  dog.bath.when.reset();
  for (const char* place : {"neck", "shoulders", "loin"}) {
    felted.came_in.regions.push_back(state(place, {}, 3));
  }
  CHECK(before(Region::sides));  // more than half of the body's
  CHECK_FALSE(before(Region::belly));
}

// Clip, then scissor what borders on it: common practice, no source.
TEST_CASE("a clipped face, foot or tail comes before the scissor work beside it") {
  Pet dog = pet(Coat::curly);
  dog.trim = {part("muzzle", blade("10")),
              part("cheeks", blade("10")),
              part("crown", shears(Shears::curved), Lay::with, 40_mm),
              part("front-legs", shears(Shears::curved), Lay::with, 40_mm),
              part("breeches", shears(Shears::curved), Lay::with, 40_mm),
              part("feet", blade("15")),
              part("tail", blade("10"))};
  auto steps = steps_of(dog);
  REQUIRE(adjacent(Region::cheeks, Region::crown));
  REQUIRE(adjacent(Region::tail, Region::breeches));
  CHECK(find_place(steps, Region::cheeks) < find_place(steps, Region::crown));
  CHECK(find_place(steps, Region::muzzle) < find_place(steps, Region::crown));
  CHECK(find_place(steps, Region::feet) < find_place(steps, Region::front_legs));
  CHECK(find_place(steps, Region::tail) < find_place(steps, Region::breeches));
  CHECK(steps[find_place(steps, Region::cheeks)].stage == Stage::clip);
  CHECK(find_place(steps, Region::front_legs) < find_place(steps, Region::crown));
  // With nothing scissored beside it, a face is still the last.
  std::erase_if(dog.trim, [](const TrimPart& p) { return p.place.region == Region::crown; });
  steps = steps_of(dog);
  CHECK(find_place(steps, Region::front_legs) < find_place(steps, Region::cheeks));
}

// Hygiene: common practice, no source.
TEST_CASE("no tool comes from the sanitary area to a face unwashed") {
  Pet dog = groomed();
  const auto late = steps_of(dog);
  const auto washed = [](const WorkStep& step) {
    return std::ranges::find(step.how, Method::wash_first) != step.how.end();
  };
  CHECK(washed(late[find_place(late, Region::muzzle)]));
  CHECK(std::ranges::count_if(late, washed) == 1);
  // Clipped early, for the scissor work beside it: before them.
  dog.trim.push_back(part("cheeks", shears(Shears::straight), Lay::with, 20_mm));
  const auto early = steps_of(dog);
  CHECK(find_place(early, Region::muzzle) < find_place(early, Region::sanitary));
  CHECK(std::ranges::none_of(early, washed));
}

TEST_CASE("no foot is lifted of a dog that lies or keeps its feet low") {
  const auto held = [](const Pet& dog, Region region) {
    const auto steps = steps_of(dog);
    return posture(steps[find_place(steps, region)]);
  };
  const auto nails = [](const Pet& dog) {
    const auto steps = steps_of(dog);
    return posture(steps[find(steps, Task::nails)]);
  };
  Pet dog = groomed();
  CHECK(held(dog, Region::pads) == Posture::foot_lifted);
  CHECK(held(dog, Region::belly) == Posture::forelegs_lifted);
  CHECK(nails(dog) == Posture::foot_lifted);

  // A note of one place is of the dog's joints.
  dog.trim[4].entry.note = "never lift a leg above its own joint";
  CHECK(held(dog, Region::pads) == Posture::foot_low);
  CHECK(held(dog, Region::belly) == Posture::feet_down);
  CHECK(held(dog, Region::hocks) == Posture::from_behind);
  CHECK(nails(dog) == Posture::foot_low);

  Pet lying = groomed();
  lying.alerts.push_back({});
  lying.alerts.back().action = "Let him lie.";
  CHECK(held(lying, Region::pads) == Posture::lying_foot_low);
  CHECK(held(lying, Region::belly) == Posture::lying);
  CHECK(held(lying, Region::back) == Posture::lying);
  CHECK(nails(lying) == Posture::lying_foot_low);
  const auto steps = steps_of(lying);
  for (const WorkStep& step : steps) {
    if (step.task == Task::cut) CHECK(std::ranges::none_of(step.how, needs_standing));
  }
  lying.alerts.clear();
  lying.handling.hold = "lying down, on the cushion";
  CHECK(held(lying, Region::feet) == Posture::lying_foot_low);
}

TEST_CASE("a line for a newer groomer is of the tool in hand") {
  Pet dog = groomed();
  dog.trim.push_back(part("breeches", comb(Length::inches(1, 2))));
  const auto how = [&] {
    const auto steps = steps_of(dog);
    return steps[find_place(steps, Region::breeches)].how;
  };
  CHECK(std::ranges::count(how(), Method::breeches) == 0);
  dog.trim.back() = part("breeches", shears(Shears::thinning), Lay::with, 30_mm);
  CHECK(std::ranges::count(how(), Method::breeches) == 1);
}
