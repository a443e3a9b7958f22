#include <nlohmann/json.hpp>

#include "base/quantity.h"
#include "plan/made.h"
#include "plan/plan_json.h"
#include "plan/plan_text.h"

using namespace furnish;
using namespace furnish::made;

namespace {
Pet marlow() {
  Pet dog = pet(Coat::double_coat);
  dog.born = Birth{day("2021-04-09"), line(2)};
  dog.weight = Located<Mass>{Mass::kg(4.6), line(3)};
  dog.visit_every = Located<CalendarSpan>{std::chrono::days(56), {}};
  dog.bath.shampoo = product("oat shampoo");
  dog.bath.shampoo->dwell = std::chrono::minutes(4);
  dog.trim = {part("back", Brush{}), part("hocks", comb(Length::inches(1, 2))),
              part("pads", blade("30")), part("sanitary", blade("10"))};
  dog.alerts = {avoiding("left hock")};
  return dog;
}
}  // namespace

TEST_CASE("the plan as text") {
  Salon shop = salon();
  shop.kit = kit({"30", "10"}, {14_mm});
  const Made made = plan(shop, marlow(), {visit("2026-11-24")});
  const std::string text = plan_text(made.plan, shop, marlow(), words());
  const auto has = [&](std::string_view words) {
    INFO(text);
    CHECK(text.find(words) != std::string::npos);
  };
  CHECK(text.starts_with("Marlow, 2026-11-24\n"));
  CHECK(text.ends_with("\n"));
  has("next visit  2027-01-19, the owner's interval");
  has("danger");
  has("Avoid-region: left hock; avoid-region-do");
  has("Not in the drawer");
  has("45\u202Fml product + 455\u202Fml water");
  CHECK(text.find(" \n") == std::string::npos);  // no trailing space
}

TEST_CASE("the plan as text in US units") {
  Salon shop = salon();
  shop.units = Units::us;
  const Made made = plan(shop, marlow());
  const std::string text = plan_text(made.plan, shop, marlow(), words());
  INFO(text);
  CHECK(text.find(to_text(Volume::us_fl_oz(1.5), Units::us) + " product") != std::string::npos);
  CHECK(text.find("ml product") == std::string::npos);
}

TEST_CASE("the plan as JSON has its version and every part") {
  const Made made = plan(salon(), marlow(), {visit("2026-11-24")});
  const auto json = nlohmann::json::parse(plan_json(made.plan, marlow(), words()));
  CHECK(json.at("furnish_plan") == plan_json_version);
  CHECK(json.at("on") == "2026-11-24");
  CHECK(json.at("pet").at("name") == "Marlow");
  for (const char* const part :
       {"lengths", "drawer", "blends", "order", "growth", "cautions", "stale_acceptances"}) {
    CHECK(json.at(part).is_array());
  }
  CHECK(json.at("lengths").at(1).at("left").at("low") == 12.7);
  CHECK(json.at("bath").at("mixes").at(0).at("measured").at("product") == 45);
  CHECK(json.at("bath").at("mixes").at(0).at("dwell_minutes") == 4);
  CHECK(json.at("next_visit").at("reason") == "owner-interval");
  CHECK(json.at("health").at("since_last").is_null());
  CHECK(json.at("cautions").at(0).at("rule") == "avoid-region");
  CHECK(json.at("cautions").at(0).at("what") == "Avoid-region: left hock");
  // A place is written so that a file may say it.
  for (const auto& row : json.at("order")) {
    for (const auto& place : row.at("places")) CHECK(parse_place(place.get<std::string>()));
  }
}

TEST_CASE("a long visit is said in hours") {
  Visit last = visit("2026-11-24");
  const auto said = [&](int minutes) {
    last.minutes = std::chrono::minutes(minutes);
    const std::string text = plan_text(plan(salon(), pet(), {last}).plan, salon(), pet(), words());
    const auto from = text.find("about ");
    REQUIRE(from != std::string::npos);
    return text.substr(from, text.find(" (", from) - from);
  };
  CHECK(said(90) == "about 1\u202Fh\u00A030\u202Fmin");
  CHECK(said(91) == "about 1½\u202Fh");
  CHECK(said(105) == "about 2\u202Fh");
  CHECK(said(145) == "about 2½\u202Fh");
}

TEST_CASE("the plan says what last time left open, as text and as JSON") {
  Visit last = visit("2026-09-29");
  last.told = "Brush twice a week.";
  last.next = Located<Date>{day("2026-12-01"), line(3)};
  last.consents = {{"cutting out mats", "", {}, {}}};
  last.photos = {Photo{}};
  last.came_in.regions = {state("left ear", {}, 2)};
  Finding lump;
  lump.place = {{Region::belly, Side::left}, line(8)};
  lump.what = "lump, pea-sized";
  lump.advised = "vet this week";
  last.findings = {lump};
  const Made made = plan(salon(), pet(), {last});
  const std::string text = plan_text(made.plan, salon(), pet(), words());
  const auto has = [&](std::string_view words) {
    INFO(text);
    CHECK(text.find(words) != std::string::npos);
  };
  has("next visit  2026-12-01, as agreed");
  has("Last time");
  has("Brush twice a week.");
  has("cutting out mats, not signed");
  has("1 before, 0 after");
  has("left ear: ");
  has("Still open");
  has("lump, pea-sized; advised: vet this week  seen 2026-09-29");
  const auto json = nlohmann::json::parse(plan_json(made.plan, pet(), words()));
  CHECK(json.at("last_visit").at("told") == "Brush twice a week.");
  CHECK(json.at("last_visit").at("mats").at(0).at("grade") == 2);
  CHECK(json.at("findings").at(0).at("place") == "left belly");
  CHECK(json.at("findings").at(0).at("seen").at(0) == "2026-09-29");
  CHECK(json.at("findings").at(0).at("for") == "staff");
}

TEST_CASE("the plan says which lengths are passed before the next visit") {
  Pet dog = marlow();
  dog.coat = Coat::drop;
  dog.trim = {part("ears", shears(Shears::straight), Lay::with, 20_mm)};
  dog.preferences.keep_under = {{at("ears"), 29_mm, line(7)}};
  const Made made =
      plan(salon(), dog, {visit("2026-11-24")}, "2026-11-24", {booking("2027-01-12")});
  const std::string text = plan_text(made.plan, salon(), dog, words());
  INFO(text);
  CHECK(text.find("2027-01-12, booked at 09:00") != std::string::npos);
  CHECK(text.find("over the owner's 29\u202Fmm  from 2026-12-15  ears") != std::string::npos);
  CHECK(text.find("mats quickly") == std::string::npos);  // not before then
  const auto json = nlohmann::json::parse(plan_json(made.plan, dog, words()));
  CHECK(json.at("next_visit").at("reason") == "booked");
  CHECK(json.at("next_visit").at("at") == "09:00");
  CHECK(json.at("limits").at(0).at("kind") == "keep-under");
  CHECK(json.at("limits").at(0).at("passed") == "2026-12-15");
}

TEST_CASE("the plan says that a pet is booked today, and when after that") {
  const Made made = plan(salon(), marlow(), {visit("2026-09-29")}, "2026-11-24",
                         {booking("2026-11-24"), booking("2027-01-12")});
  const std::string text = plan_text(made.plan, salon(), marlow(), words());
  INFO(text);
  CHECK(text.find("2026-11-24, booked at 09:00; then 2027-01-12 at 09:00") != std::string::npos);
  const auto json = nlohmann::json::parse(plan_json(made.plan, marlow(), words()));
  CHECK(json.at("next_visit").at("date") == "2026-11-24");
  CHECK(json.at("next_visit").at("then").at("date") == "2027-01-12");
  CHECK(json.at("next_visit").at("then").at("at") == "09:00");
}

TEST_CASE("the plan of a pet without a visit names no day that moves with the asking") {
  const auto text = [](std::vector<Booking> bookings) {
    const Made made = plan(salon(), marlow(), {}, "2026-11-24", std::move(bookings));
    return plan_text(made.plan, salon(), marlow(), words());
  };
  CHECK(text({}).find("  not booked; no groom on file\n") != std::string::npos);
  CHECK(text({booking("2026-12-03")}).find("2026-12-03, booked at 09:00") != std::string::npos);
}
