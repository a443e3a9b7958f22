#include <catch2/catch.hpp>

#include "base/paper.h"
#include "spec/said.h"
#include "trade/health.h"

namespace furnish::test {

TEST_CASE("a salon without a file has every default", "[salon]") {
  const Salon salon = default_salon();
  CHECK(salon.paper.card.name == "A5");
  CHECK(salon.paper.sheet.name == "A4");
  CHECK(salon.language == "en-GB");
  CHECK_FALSE(salon.kit);
  for (const CoatInfo& row : coats()) {
    CHECK(salon.mix_per_m2[static_cast<std::size_t>(row.coat)] == row.mix);
  }
  Desk desk;
  const auto empty = desk.salon("");
  REQUIRE(empty);
  CHECK(empty->mix_per_m2 == salon.mix_per_m2);
  CHECK(desk.salon("# nothing yet\n"));
  CHECK(desk.said() == "");
}

TEST_CASE("every key of a salon comes out as it was written", "[salon]") {
  Desk desk;
  const auto salon = desk.salon(R"([salon]
name = "Lantern Street Dogs"
phone = "555 0170"
email = "hello@lanternstreet.example"
address = ["3 Lantern Street", "Eastmere"]
language = "zh-Hant-TW"
units = "us"
closed = ["sunday", "Wednesday"]
contact_on_card = true
photos_anywhere = true
shorten_visits = true
felted = "clip first"

[paper]
card = "half-letter"
sheet = "Letter"
name = "200 cm"
footer = "20 in"

[kit]
blades = ["40", "7F", "3 3/4"]
combs = ["1/2 in", "19 mm"]
shears = ["thinners", "straight"]
bottle = "16 fl oz"
measured = { "7F" = "3.4 mm" }

[products.skin]
name = "chlorhexidine shampoo"
kind = "shampoo"
dilution = "neat"
dwell = "10 min"
contains = ["chlorhexidine"]
medicated = true
mixed = 2026-11-20
[products.plain]

[vaccinations]
rabies = { valid = "3 years", required = true }
"kennel cough" = { wait = "3 days" }

[blends]
step = "1/4 in"
ratio = 2

[time]
base = 20
spread = 0.1

[mixing]
keeps = "1 day"
double = "2 l"
)");
  REQUIRE(desk.said() == "");
  REQUIRE(salon);
  CHECK(salon->shorten_visits);
  CHECK(salon->felted == FeltedWay::clip_first);
  CHECK(salon->units == Units::us);
  CHECK(salon->language == "zh-Hant-TW");
  CHECK(salon->closed ==
        std::vector<std::chrono::weekday>{std::chrono::Sunday, std::chrono::Wednesday});
  CHECK(salon->contact_on_card);
  CHECK(salon->paper.card.name == "half letter");
  CHECK(salon->paper.sheet.name == "letter");
  CHECK(salon->paper.distances.name == 2000_mm);
  CHECK(salon->paper.distances.footer == 508_mm);
  CHECK_FALSE(salon->paper.distances.body);
  REQUIRE(salon->kit);
  REQUIRE(salon->kit->blades.size() == 3);
  CHECK(salon->kit->blades[2]->name == "3¾");
  CHECK(salon->kit->combs == std::vector<Length>{Length::inches(1, 2), 19_mm});
  CHECK(salon->kit->shears == std::vector<Shears>{Shears::thinning, Shears::straight});
  CHECK(salon->kit->bottle == Volume::us_fl_oz(16));
  CHECK(salon->kit->length(*find_blade("7F")) == Length::mm(3.4));
  CHECK(salon->kit->length(*find_blade("40")) == find_blade("40")->length());
  REQUIRE(salon->products.size() == 2);
  CHECK(salon->products[0].key == "skin");
  CHECK(salon->products[0].dilution->value == Dilution{1, 1});
  CHECK(salon->products[0].medicated);
  CHECK(salon->products[0].mixed == make_date(2026, 11, 20));
  CHECK(salon->products[1].name == "plain");
  REQUIRE(salon->vaccinations.size() == 2);
  CHECK(salon->vaccinations[0].wait == CalendarSpan(rabies_wait));
  CHECK(salon->vaccinations[0].valid.months == 36);
  CHECK(salon->vaccinations[1].wait == CalendarSpan(std::chrono::days(3)));
  CHECK_FALSE(salon->vaccinations[1].required);
  CHECK(salon->blends.step == Length::inches(1, 4));
  CHECK(salon->blends.ratio == 2);
  CHECK(salon->time.base == 20);
  CHECK(salon->time.bath_per_m2 == TimeSettings().bath_per_m2);
  CHECK(salon->mix_keeps == std::chrono::days(1));
  CHECK(salon->mix_per_m2[static_cast<std::size_t>(Coat::double_coat)] == 2.0);
  CHECK(salon->mix_per_m2[static_cast<std::size_t>(Coat::curly)] == info(Coat::curly).mix);
}

TEST_CASE("what a kit does not list is taken to be there", "[salon]") {
  Desk desk;
  const auto salon = desk.salon("[kit]\nbottle = \"500 ml\"\ncombs = []\n");
  REQUIRE(salon);
  CHECK(salon->kit->blades.size() == blades().size());
  CHECK(salon->kit->combs.empty());
  CHECK(salon->kit->shears.size() == 4);
}

TEST_CASE("a file names a paper as the command line does", "[salon]") {
  for (const char* written : {"a5", "half-letter", "Half Letter", "5 × 8 in", "5x8in", "4X6 in"}) {
    Desk desk;
    const auto salon = desk.salon(std::string("[paper]\ncard = \"") + written + "\"\n");
    INFO(written);
    REQUIRE(salon);
    REQUIRE(parse_paper(written));
    CHECK(salon->paper.card.name == parse_paper(written)->name);
  }
}

TEST_CASE("a fault of a salon's file costs its part, and what it was meant for", "[salon]") {
  using enum SalonPart;
  struct Case {
    const char* text;
    std::vector<SalonPart> unread;
  };
  const std::vector<SalonPart> any{kit, products, vaccinations, blends, SalonPart::time, mixing};
  const Case cases[] = {
      {"[salon]\nphon = \"555 0170\"\n", {}},
      {"[paper]\ncard = \"A7\"\n", {}},
      {"[salon]\nclosd = [\"sunday\"]\n", {closed}},
      {"[salon]\nclosed = [\"sundae\"]\n", {closed}},
      {"[salon]\nrules = [3]\n", {rules}},
      {"[salon]\nbottle = \"1 l\"\n", {kit}},
      {"[kit]\nbottel = \"1 l\"\n", {kit}},
      {"[kit]\nmeasured = { \"7G\" = \"3 mm\" }\n", {kit}},
      {"[time]\nbase = nan\n", {SalonPart::time}},
      {"keeps = \"7 days\"\n", {mixing}},
      {"name = \"S\"\n", {}},
      {"[prodcts.oat]\nname = \"oat\"\n", {products}},
      {"[products.oat]\ndillution = \"10:1\"\n", {}},
      {"[vaccinations]\nrabies = { requierd = true }\n", {vaccinations}},
      {"[potions]\noat = \"10:1\"\n", any},
      {"[kit]\nbottle = 500 ml\n", {kit}},
      {"[salon]\nclosed = sunday\n", {closed}},
      {"[products.oat]\ndilution = 1:10\n", {products}},
  };
  for (const Case& one : cases) {
    INFO(one.text);
    Desk desk;
    const auto salon = desk.salon(one.text);
    REQUIRE(salon);
    CHECK_FALSE(salon->whole);
    CHECK(desk.sink().has_errors());
    CHECK(salon->unread == one.unread);
  }
}

TEST_CASE("what is left of a salon's file with faults is what it says", "[salon]") {
  Desk desk;
  const auto salon = desk.salon(R"([salon]
phon = "555 0170"
language = "es"
[kit
blades = ["10"]
[products.oat]
dillution = "10:1"
contains = ["oat"]
[products.plain]
dilution = "10:1"
[vaccinations]
rabies = { requierd = true }
distemper = { required = true }
[mixing]
keeps = "7 days"
)");
  REQUIRE(salon);
  CHECK(salon->language == "es");
  CHECK_FALSE(salon->kit);
  CHECK(salon->unknown(SalonPart::kit));
  CHECK_FALSE(salon->unknown(SalonPart::products));
  REQUIRE(salon->products.size() == 2);
  CHECK(salon->products[0].unread);
  CHECK_FALSE(salon->products[0].dilution);
  CHECK(salon->products[0].contains.empty());
  CHECK_FALSE(salon->products[1].unread);
  CHECK(salon->products[1].dilution);
  REQUIRE(salon->vaccinations.size() == 1);
  CHECK(salon->vaccinations[0].name == "distemper");
  CHECK(salon->mix_keeps == std::chrono::days(7));
}

TEST_CASE("a product that may stand where nobody can read it is no fault of the pet", "[salon]") {
  Desk desk;
  const auto salon = desk.salon("[products.plain]\ndilution = \"10:1\"\n[prodcts.oat]\n");
  REQUIRE(salon);
  const auto pet = desk.pet(
      "[pet]\nname = \"Rex\"\n[bath]\nshampoo = \"oat\"\nconditioner = \"plain\"\n", &*salon);
  REQUIRE(pet);
  CHECK(pet->bath.shampoo->product.unread);
  CHECK(pet->bath.conditioner->product.unread);
}

TEST_CASE("a list without its bracket is told where it begins, and costs itself alone", "[salon]") {
  Desk desk;
  const auto salon = desk.salon(
      "[kit]\ncombs    = [\"1/8 in\"\nbottle = \"500 ml\"\n[salon]\nname = \"S\"\nclosed = [\n"
      "  \"sunday\"\nphone = \"1\"\n");
  REQUIRE(salon);
  CHECK(salon->name == "S");
  CHECK(salon->phone == "1");
  CHECK(salon->unread == std::vector{SalonPart::closed, SalonPart::kit});
  CHECK(desk.said() ==
        "salon.toml:2:12: error: a list without its closing bracket\n"
        "  combs    = [\"1/8 in\"\n"
        "             ^^^^^^^^^\n"
        "  hint: write combs    = [\"1/8 in\"]\n"
        "salon.toml:6:10: error: a list without its closing bracket\n"
        "  closed = [\n"
        "           ^\n"
        "  hint: close it with ] behind its last entry\n");
}

TEST_CASE("a heading of a day with a bracket missing costs its booking alone", "[day]") {
  const auto booking = [](const char* heading, int hour, const char* pet) {
    return std::string(heading) + "\nat = " + std::to_string(hour) + ":00:00\npet = \"" + pet +
           "\"\n";
  };
  Desk desk;
  const auto day = desk.day("date = 2026-11-24\n" + booking("[[booking]]", 10, "ada") +
                            booking("[[booking]", 11, "bo") + booking("[[booking]]", 12, "cy") +
                            booking("[booking]]", 13, "dee") + booking("[[booking]]", 14, "eve"));
  REQUIRE(day);
  REQUIRE(day->bookings.size() == 3);
  CHECK(day->bookings[0].pet.value == "ada");
  CHECK(day->bookings[1].pet.value == "cy");
  CHECK(day->bookings[2].pet.value == "eve");
  REQUIRE(day->unread.size() == 2);
  CHECK(day->unread[0].pet == "bo");
  CHECK(day->unread[0].span.begin.line == 5);
  CHECK(day->unread[1].pet == "dee");
  CHECK(desk.said().find("write [[booking]]") != std::string::npos);
}
}  // namespace furnish::test
