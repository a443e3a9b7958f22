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
  dog.born = Located<Date>{day("2021-04-09"), line(2)};
  dog.weight = Located<Mass>{Mass::kg(4.6), line(3)};
  dog.visit_every = Located<std::chrono::days>{std::chrono::days(56), {}};
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
