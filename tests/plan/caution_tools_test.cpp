#include "plan/made.h"

using namespace furnish;
using namespace furnish::made;

namespace {
Made with(const TrimPart& one, Pet dog = pet(), const std::vector<Visit>& visits = {}) {
  dog.trim = {one};
  return plan(salon(), dog, visits);
}

bool fires(RuleId id, const TrimPart& one, const Pet& dog = pet(),
           const std::vector<Visit>& visits = {}) {
  return with(one, dog, visits).caution(id) != nullptr;
}

Visit matted(std::string_view place, int grade, std::string_view iso = "2026-11-24") {
  Visit out = visit(iso);
  out.came_in.regions.push_back(state(place, std::nullopt, grade));
  return out;
}
}  // namespace

// The rules are common practice without a source, unless one is named in their table.

TEST_CASE("avoid-region: a tool where an alert says none") {
  Pet dog = pet();
  dog.alerts = {avoiding("left hock")};
  CHECK(fires(RuleId::avoid_region, part("hocks", blade("10")), dog));
  CHECK(fires(RuleId::avoid_region, part("left hock", shears(Shears::thinning)), dog));
  CHECK(fires(RuleId::avoid_region, part("hocks", HandStrip{}), dog));
  CHECK_FALSE(fires(RuleId::avoid_region, part("right hock", blade("10")), dog));
  CHECK_FALSE(fires(RuleId::avoid_region, part("hocks", Brush{}), dog));
  CHECK_FALSE(fires(RuleId::avoid_region, part("feet", blade("10")), dog));
  const Made made = with(part("hocks", blade("10"), Lay::with, {}, 12), dog);
  const Caution& caution = *made.caution(RuleId::avoid_region);
  CHECK(caution.signal == Signal::danger);
  CHECK(said(caution.what) == "avoid-region: left hock");
  CHECK(caution.places == std::vector<Place>{at("left hock")});
  CHECK(caution.span.begin.line == 12);
  dog.alerts = {avoiding("hocks")};
  CHECK(said(with(part("hocks", blade("10")), dog).caution(RuleId::avoid_region)->what) ==
        "avoid-region: hocks");
}

TEST_CASE("a rule about a blade is silent where no tool goes anyway") {
  Pet dog = pet();
  dog.alerts = {avoiding("sanitary")};
  CHECK_FALSE(fires(RuleId::sanitary_blade, part("sanitary", blade("7F")), dog));
  CHECK(fires(RuleId::avoid_region, part("sanitary", blade("7F")), dog));
}

TEST_CASE("sanitary-blade: any blade but a #10") {
  for (const Blade& one : blades()) {
    CHECK(fires(RuleId::sanitary_blade, part("sanitary", Clip{&one})) == (one.name != "10"));
  }
  CHECK(fires(RuleId::sanitary_blade, part("sanitary", comb(Length::inches(1, 8)))));
  CHECK_FALSE(fires(RuleId::sanitary_blade, part("belly", blade("9"))));
  CHECK_FALSE(fires(RuleId::sanitary_blade, part("sanitary", shears(Shears::straight))));
}

TEST_CASE("sanitary-shears: shears there, and only there") {
  CHECK(fires(RuleId::sanitary_shears, part("sanitary", shears(Shears::thinning))));
  CHECK_FALSE(fires(RuleId::sanitary_shears, part("sanitary", blade("10"))));
  CHECK_FALSE(fires(RuleId::sanitary_shears, part("belly", shears(Shears::thinning))));
}

TEST_CASE("pads-blade: longer than a #10, skip teeth, or a comb") {
  for (const Blade& one : blades()) {
    const bool longer = one.length() > find_blade("10")->length();
    CHECK(fires(RuleId::pads_blade, part("pads", Clip{&one})) == longer);
  }
  CHECK(fires(RuleId::pads_blade, part("pads", comb(Length::inches(1, 8)))));
  CHECK_FALSE(fires(RuleId::pads_blade, part("feet", blade("5"))));
}

TEST_CASE("close-blade: #30, #40, #50 without a comb, but in the pads") {
  for (const Blade& one : blades()) {
    const bool close = one.name == "30" || one.name == "40" || one.name == "50";
    CHECK(fires(RuleId::close_blade, part("back", Clip{&one})) == close);
  }
  CHECK_FALSE(fires(RuleId::close_blade, part("pads", blade("30"))));
  CHECK_FALSE(fires(RuleId::close_blade, part("back", comb(13_mm, "30"))));
}

TEST_CASE("skip-tooth: on thin skin, or on a pet that is all thin or folded") {
  for (const std::string_view place :
       {"ears", "eyes", "throat", "belly", "tuck-up", "sanitary", "hocks"}) {
    CHECK(fires(RuleId::skip_tooth, part(place, blade("7"))));
    CHECK_FALSE(fires(RuleId::skip_tooth, part(place, blade("7F"))));
  }
  CHECK_FALSE(fires(RuleId::skip_tooth, part("back", blade("7"))));
  for (const Condition condition : {Condition::wrinkles, Condition::thin_skin}) {
    Pet dog = pet();
    dog.conditions = {{condition, {}}};
    CHECK(fires(RuleId::skip_tooth, part("back", blade("7")), dog));
    CHECK_FALSE(fires(RuleId::skip_tooth, part("back", blade("7F")), dog));
  }
  const Made made = with(part("belly", blade("7")));
  CHECK(said(made.caution(RuleId::skip_tooth)->instead) == "skip-tooth-twin-do: #7F");
  CHECK(said(made.caution(RuleId::skip_tooth)->what) == "skip-tooth: belly");
}

TEST_CASE("comb-base: over #30 and #40 only") {
  for (const Blade& one : blades()) {
    const bool base = one.name == "30" || one.name == "40";
    CHECK(fires(RuleId::comb_base, part("back", comb(13_mm, one.name))) == !base);
  }
}

TEST_CASE("comb-on-mats: where the latest visit found mats") {
  const TrimPart hocks = part("hocks", comb(13_mm));
  CHECK(fires(RuleId::comb_on_mats, hocks, pet(), {matted("left hock", 1)}));
  CHECK_FALSE(fires(RuleId::comb_on_mats, hocks, pet(), {matted("left hock", 0)}));
  CHECK_FALSE(fires(RuleId::comb_on_mats, hocks, pet(), {matted("ears", 4)}));
  CHECK_FALSE(
      fires(RuleId::comb_on_mats, part("hocks", blade("7F")), pet(), {matted("left hock", 4)}));
  CHECK_FALSE(fires(RuleId::comb_on_mats, hocks, pet(),
                    {matted("left hock", 4, "2026-01-01"), visit("2026-11-24")}));
  CHECK_FALSE(fires(RuleId::comb_on_mats, hocks, pet(), {matted("left hock", 4, "2026-12-01")}));
}

// University of Minnesota, open textbook of animal dermatology, 1.13; the 25 mm are common
// practice.
TEST_CASE("double-coat-short: the body under 25 mm") {
  const Pet dog = pet(Coat::double_coat);
  const auto cut = [](std::string_view place, Length length) {
    return part(place, shears(Shears::straight), Lay::with, length);
  };
  CHECK(fires(RuleId::double_coat_short, cut("back", 24999_um), dog));
  CHECK_FALSE(fires(RuleId::double_coat_short, cut("back", 25_mm), dog));
  CHECK_FALSE(fires(RuleId::double_coat_short, part("back", comb(Length::inches(1))), dog));
  CHECK(fires(RuleId::double_coat_short, part("back", comb(Length::inches(7, 8))), dog));
  for (const Region region : info(Group::body).members) {
    CHECK(fires(RuleId::double_coat_short, part(key(region), blade("10")), dog));
  }
  CHECK_FALSE(fires(RuleId::double_coat_short, part("chest", blade("10")), dog));
  CHECK_FALSE(fires(RuleId::double_coat_short, part("back", Brush{}, Lay::with, 10_mm), dog));
  CHECK_FALSE(fires(RuleId::double_coat_short, part("back", blade("10")), pet(Coat::curly)));
}

TEST_CASE("ear-mats: matted ears that are shaved") {
  const TrimPart clipped = part("ears", blade("10"));
  CHECK(fires(RuleId::ear_mats, clipped, pet(), {matted("left ear", 1)}));
  CHECK_FALSE(fires(RuleId::ear_mats, clipped, pet(), {matted("left ear", 0)}));
  CHECK_FALSE(fires(RuleId::ear_mats, part("ears", shears(Shears::straight)), pet(),
                    {matted("left ear", 3)}));
  Pet dog = pet();
  dog.finish = {{FinishPart::ears, "shaved", SaidBy::pet, line(8), false}};
  CHECK(fires(RuleId::ear_mats, part("ears", Brush{}), dog, {matted("ears", 2)}));
  CHECK_FALSE(fires(RuleId::ear_mats, part("ears", Brush{}), dog));
  dog.finish[0].words = "rounded";
  CHECK_FALSE(fires(RuleId::ear_mats, part("ears", Brush{}), dog, {matted("ears", 2)}));
}

TEST_CASE("a visit that nobody finished takes no caution away, and shows what it saw") {
  Pet dog = pet();
  dog.trim = {part("ears", blade("10"))};
  Visit before = visit("2026-10-01"), today = visit("2026-11-24");
  before.came_in.regions = {state("ears", {}, 2)};
  CHECK(plan(salon(), dog, {before}).caution(RuleId::ear_mats) != nullptr);
  CHECK(plan(salon(), dog, {before, today}).caution(RuleId::ear_mats) == nullptr);
  today.work = Work::unfinished;
  CHECK(plan(salon(), dog, {before, today}).caution(RuleId::ear_mats) != nullptr);
  CHECK(plan(salon(), dog, {before, today}).plan.last_visit->date == before.date.value);
  // What was seen is so, whether the work is done or not.
  today.came_in.regions = {state("ears", {}, 0)};
  CHECK(plan(salon(), dog, {before, today}).caution(RuleId::ear_mats) == nullptr);
  today.findings = {{{at("belly"), line(3)}, {"lump"}, {}, false, Audience::staff, line(3)}};
  CHECK(plan(salon(), dog, {before, today}).plan.findings.size() == 1);
  CHECK_FALSE(plan(salon(), dog, {before, today}).says("visit-unfinished"));
  CHECK(plan(salon(), dog, {before, today}, "2026-11-25").says("visit-unfinished"));
}

TEST_CASE("who bit at a visit that nobody finished is known for it the next time") {
  const Pet dog = pet();
  Visit before = visit("2026-10-01"), begun = visit("2026-11-20");
  before.came_in.behaviour = "calm";
  begun.work = Work::unfinished;
  begun.told = "nothing yet";
  CHECK(plan(salon(), dog, {before, begun}).plan.visit_before->behaviour == "calm");
  begun.came_in.behaviour = "bit the groomer";
  const auto later = plan(salon(), dog, {before, begun});
  REQUIRE(later.plan.visit_before);
  CHECK(later.plan.visit_before->behaviour == "bit the groomer");
  CHECK(later.plan.visit_before->date == begun.date.value);
  CHECK(later.plan.visit_before->told.empty());
  CHECK(later.plan.last_visit->date == before.date.value);
  // On its own day the page looks back on what was before.
  CHECK(plan(salon(), dog, {before, begun}, "2026-11-20").plan.visit_before->behaviour == "calm");
}

TEST_CASE("a visit that was not done is no groom, but what was seen there counts") {
  Pet dog = pet(Coat::curly);
  dog.trim = {part("back", comb(13_mm))};
  dog.visit_every = Located<CalendarSpan>{std::chrono::days(6 * 7), line(1)};
  Visit first = visit("2026-09-01"), last = visit("2026-10-13"), sent = visit("2026-11-20");
  first.went_out = last.went_out = {state("back", 16_mm)};
  first.minutes = last.minutes = std::chrono::minutes(90);
  const auto before = plan(salon(), dog, {first, last});
  sent.work = Work::not_done;
  sent.not_done = "coughs";
  sent.minutes = std::chrono::minutes(5);
  sent.came_in.behaviour = "bit";
  sent.came_in.regions = {state("ears", {}, 3)};
  sent.went_out = {state("back", 60_mm)};
  sent.findings = {{{at("belly"), line(3)}, {"lump"}, {}, false, Audience::staff, line(3)}};
  const auto then = plan(salon(), dog, {first, last, sent});
  CHECK(then.plan.targets.front().median == before.plan.targets.front().median);
  CHECK(then.plan.duration->expected == before.plan.duration->expected);
  CHECK(then.plan.kept->median == before.plan.kept->median);
  CHECK(then.plan.next_visit->date == before.plan.next_visit->date);
  CHECK(then.plan.last_visit->date == last.date.value);
  REQUIRE(then.plan.visit_before);
  CHECK(then.plan.visit_before->date == sent.date.value);
  CHECK(then.plan.visit_before->not_done == "coughs");
  CHECK(then.plan.visit_before->behaviour == "bit");
  CHECK(then.plan.visit_before->groomed == last.date.value);
  CHECK(then.plan.not_done->date == sent.date.value);
  CHECK(then.plan.findings.size() == 1);
  CHECK_FALSE(then.says("visit-unfinished"));
  CHECK_FALSE(then.says("visit-unwritten"));
  // Another day that was agreed there holds, and a booking of the day was used up.
  sent.next = Located<Date>{day("2026-12-08"), line(2)};
  CHECK(plan(salon(), dog, {first, last, sent}).plan.next_visit->date == day("2026-12-08"));
  const auto booked =
      plan(salon(), dog, {first, last, sent}, "2026-11-20", {booking("2026-11-20")});
  CHECK(booked.plan.next_visit->date == day("2026-12-08"));
  CHECK_FALSE(booked.plan.after_today);
  // Groomed since, it is past.
  const auto since = plan(salon(), dog, {first, last, sent, visit("2026-11-23")});
  CHECK_FALSE(since.plan.not_done);
  CHECK(since.plan.visit_before->not_done.empty());
}

TEST_CASE("a visit that does not say what was done counts for nothing, and is told on any day") {
  Visit seen = visit("2026-11-24");
  seen.work = Work::unwritten;
  const auto today = plan(salon(), pet(), {visit("2026-10-01"), seen});
  CHECK(today.says("visit-unwritten"));
  CHECK(today.plan.last_visit->date == day("2026-10-01"));
}

TEST_CASE("ear-edge: ears with shears or clipper") {
  CHECK(fires(RuleId::ear_edge, part("ears", shears(Shears::straight))));
  CHECK(fires(RuleId::ear_edge, part("left ear", blade("10"))));
  CHECK(fires(RuleId::ear_edge, part("ears", comb(13_mm))));
  CHECK_FALSE(fires(RuleId::ear_edge, part("ears", Brush{})));
  CHECK_FALSE(fires(RuleId::ear_edge, part("ears", HandStrip{})));
  CHECK_FALSE(fires(RuleId::ear_edge, part("cheeks", blade("10"))));
}

TEST_CASE("blade-heat: more than ten minutes on end with one blade") {
  Pet dog = pet();
  Salon shop = salon();
  shop.time.clip_per_part = 5;
  dog.trim = {part("neck", blade("7F")), part("back", blade("7F"))};
  CHECK(plan(shop, dog).caution(RuleId::blade_heat) == nullptr);  // ten: not over
  shop.time.clip_per_part = 5.01;
  CHECK(plan(shop, dog).caution(RuleId::blade_heat) != nullptr);
  dog.trim = {part("neck", blade("7F")), part("back", blade("5F"))};  // the blade is changed
  CHECK(plan(shop, dog).caution(RuleId::blade_heat) == nullptr);
  // The blade under two combs is the same one.
  dog.trim = {part("neck", comb(13_mm)), part("back", comb(19_mm))};
  CHECK(plan(shop, dog).caution(RuleId::blade_heat) != nullptr);
  dog.trim = {part("neck", shears(Shears::straight)), part("back", shears(Shears::straight))};
  CHECK(plan(shop, dog).caution(RuleId::blade_heat) == nullptr);
}

// Watson, Niestat, Veterinary Radiology & Ultrasound 2020: strangulating mats, all on limbs.
TEST_CASE("mat-wound: a mat all round a limb or the tail") {
  const auto with_mat = [](std::string_view place, bool encircling) {
    Visit last = matted(place, 4);
    last.came_in.regions[0].encircling = encircling;
    return plan(salon(), pet(), {last}).caution(RuleId::mat_wound) != nullptr;
  };
  for (const std::string_view place : {"left hock", "front-legs", "tail", "right foot"}) {
    CHECK(with_mat(place, true));
    CHECK_FALSE(with_mat(place, false));
  }
  CHECK_FALSE(with_mat("neck", true));
  Visit last = matted("left hock", 4);
  last.came_in.regions[0].encircling = true;
  const Made now = plan(salon(), pet(), {last});
  CHECK(now.caution(RuleId::mat_wound)->signal == Signal::danger);
  CHECK(said(now.caution(RuleId::mat_wound)->instead) == "mat-wound-do");
  const Made later = plan(salon(), pet(), {last}, "2027-01-19");
  CHECK(said(later.caution(RuleId::mat_wound)->what) == "mat-wound-past: left hock; 2026-11-24");
  CHECK(said(later.caution(RuleId::mat_wound)->instead) == "mat-wound-past-do");
}

TEST_CASE("one line about six regions is one caution") {
  Pet dog = pet(Coat::double_coat);
  for (const Region region : info(Group::body).members) {
    dog.trim.push_back(part(key(region), blade("10"), Lay::with, {}, 14));
  }
  const Made made = plan(salon(), dog);
  CHECK(made.count(RuleId::double_coat_short) == 1);
  CHECK(made.caution(RuleId::double_coat_short)->places.size() == 6);
  dog.trim[0].entry.span = line(15);
  CHECK(plan(salon(), dog).count(RuleId::double_coat_short) == 2);
}
