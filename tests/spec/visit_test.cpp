#include <catch2/catch.hpp>

#include "spec/said.h"

namespace furnish::test {

TEST_CASE("every key of a visit comes out as it was written", "[visit]") {
  Desk desk;
  const auto visit = desk.visit(R"(date    = 2026-11-24
groomer = "Ines"
minutes = 85
weight  = "4.5 kg"
next    = 2027-01-19
told    = "Brush twice a week."

[came_in]
behaviour = "worried at the dryer"
helped    = "towel over the ears"
nails     = "long"
eyes      = "weeping"
ears      = { mats = 2, side = "left", length = "38 mm" }
"right hock" = { mats = 4, encircling = true, note = "rear" }
belly     = { skin = "red", side = "right" }
legs      = { soil = "mud" }

[done]
chest = { shears = "straight", leave = "25 mm", why = "thinners out for sharpening" }

[went_out]
ears = { length = "20 mm" }

[[product]]
name  = "oat"
mixed = 2026-11-23

[[finding]]
region  = "belly"
side    = "left"
what    = "lump, pea-sized"
advised = "vet this week"
for     = "everyone"

[[photo]]
file = "photos/marlow-before.jpg"
when = "before"
caption = "on arrival"
focus = [0.5, 0.25]

[[consent]]
to = "cutting out mats"
by = "R. Adeyemi"
on = 2026-11-24
)");
  REQUIRE(desk.said() == "");
  REQUIRE(visit);
  CHECK(visit->date.value == make_date(2026, 11, 24));
  CHECK(visit->minutes == std::chrono::minutes(85));
  CHECK(visit->weight->value == Mass::kg(4.5));
  CHECK(visit->next->value == make_date(2027, 1, 19));
  CHECK(visit->came_in.eyes == "weeping");
  CHECK(visit->came_in.ears.empty());
  // Ears, belly, then the legs' three regions with the right hock beside them.
  const auto& regions = visit->came_in.regions;
  REQUIRE(regions.size() == 6);
  CHECK(regions[0].place == Place{Region::ears, Side::left});
  CHECK(regions[0].mats == 2);
  CHECK(regions[0].length == 38_mm);
  CHECK(regions[1].place == Place{Region::belly, Side::right});
  CHECK(regions[2].soil == "mud");
  CHECK(regions[4].place == Place{Region::hocks, Side::both});
  CHECK(regions[5].place == Place{Region::hocks, Side::right});
  CHECK(regions[5].mats == 4);
  CHECK(regions[5].encircling);
  CHECK_FALSE(regions[5].length);
  REQUIRE(visit->done.size() == 1);
  CHECK(visit->done[0].entry.why.value == "thinners out for sharpening");
  CHECK(visit->done[0].entry.why.audience == Audience::staff);
  CHECK(visit->done[0].entry.leave == 25_mm);
  REQUIRE(visit->went_out.size() == 1);
  REQUIRE(visit->products.size() == 1);
  CHECK(visit->products[0].product.mixed == make_date(2026, 11, 23));
  REQUIRE(visit->findings.size() == 1);
  CHECK(visit->findings[0].place.value == Place{Region::belly, Side::left});
  CHECK(visit->findings[0].audience == Audience::everyone);
  REQUIRE(visit->photos.size() == 1);
  CHECK(visit->photos[0].focus == std::array<double, 2>{0.5, 0.25});
  REQUIRE(visit->consents.size() == 1);
  CHECK(visit->consents[0].on == make_date(2026, 11, 24));
}

TEST_CASE("a visit says what is well again", "[visit]") {
  Desk desk;
  const auto visit = desk.visit(
      "date = 2026-11-24\n[came_in]\nwell = [\"belly\", \"left ear\", \"legs\"]\n"
      "[[finding]]\nregion = \"belly\"\nwhat = \"lump\"\nclosed = true\n"
      "[[finding]]\nregion = \"left ear\"\nclosed = true\n");
  INFO(desk.said());
  REQUIRE(visit);
  REQUIRE(visit->came_in.well.size() == 5);
  CHECK(visit->came_in.well[1] == Place{Region::ears, Side::left});
  CHECK(visit->came_in.well[2] == Place{Region::front_legs, Side::both});
  REQUIRE(visit->findings.size() == 2);
  CHECK(visit->findings[0].closed);
  CHECK(visit->findings[1].what.empty());
}

TEST_CASE("a visit needs its date and nothing else", "[visit]") {
  Desk desk;
  CHECK(desk.visit("date = 2026-11-24\n"));
  CHECK(desk.visit("date = 2026-11-24\nminutes = \"1 h 25 min\"\n")->minutes ==
        std::chrono::minutes(85));
  CHECK(desk.said() == "");
}

TEST_CASE("a second visit of the day has a number in its name", "[visit]") {
  const auto read = [](const char* path) {
    Desk desk;
    return read_visit_text(desk.context(), path, "date = 2026-11-24\n", nullptr, nullptr)
        .has_value();
  };
  CHECK(read("visits/rex/2026-11-24.toml"));
  CHECK(read("visits/rex/2026-11-24-2.toml"));
  CHECK(read("2026-11-24-12.toml"));
  CHECK_FALSE(read("visits/rex/2026-11-25.toml"));
  CHECK_FALSE(read("visits/rex/2026-11-24x.toml"));
  CHECK_FALSE(read("visits/rex/2026-11-24-.toml"));
  CHECK_FALSE(read("visits/rex/tuesday.toml"));
}

TEST_CASE("a day's bookings come out as they were written", "[day]") {
  Desk desk;
  const auto day = desk.day(R"(date = 2026-11-24
[[booking]]
at      = 09:30:00
collect = 11:45:00
pet     = "marlow"
groomer = "Ines"
note    = "brings his own towel"

[[booking]]
at  = 00:00:00
pet = "gạo"
)");
  REQUIRE(desk.said() == "");
  REQUIRE(day);
  CHECK(day->date == make_date(2026, 11, 24));
  REQUIRE(day->bookings.size() == 2);
  CHECK(day->bookings[0].at == std::chrono::minutes(570));
  CHECK(day->bookings[0].collect == std::chrono::minutes(705));
  CHECK(day->bookings[0].pet.value == "marlow");
  CHECK(desk.place(day->bookings[0].pet.span) == "days/2026-11-24.toml:5");
  CHECK_FALSE(day->bookings[1].collect);
  CHECK(desk.day("date = 2026-11-24\n"));
}
TEST_CASE("a booking with a fault is lost alone, and known by its line and its pet") {
  const auto unread = [](const std::string& text) {
    Desk desk;
    const auto day = desk.day(text);
    INFO(desk.said());
    REQUIRE(day);
    std::string out;
    for (const Booking& one : day->bookings) out += one.pet.value + " ";
    for (const UnreadBooking& one : day->unread) {
      out += std::to_string(one.span.begin.line) + ":" + (one.pet.empty() ? "?" : one.pet) + " ";
    }
    return out;
  };
  const std::string date = "date = 2026-11-24\n", rex = "[[booking]]\npet = \"rex\"\nat = 9:00\n",
                    juno = "[[booking]]\npet = \"juno\"\nat = 10:00\n";
  CHECK(unread(date + rex + juno) == "rex juno ");
  CHECK(unread(date + "[[booking]]\npet = \"rex\"\nat = 9\n" + juno) == "juno 4:rex ");
  CHECK(unread(date + rex + "[[booking]]\nat = 10:00\n") == "rex 5:? ");  // no pet at all
  CHECK(unread(date + rex + "collect = 8:00\n" + juno) == "juno 5:rex ");
  CHECK(unread(date + "[[booking]]\npet = \"rex.toml\"\nat = 9:00\n") == "3:rex ");
  // Faults of TOML itself, where the other lines still can be told apart.
  CHECK(unread(date + "[[booking]]\npet = \"rex\nat = 9:00\n" + juno) == "juno 3:? ");
  CHECK(unread(date + "[[booking]]\npet = \"rex\"\nat = nine\n" + juno) == "juno 4:rex ");
  // What stands before them may have been one.
  CHECK(unread(date + "bookings = 3\n" + rex) == "rex 2:? ");
  CHECK(unread(date + "booking = [{ at = 9:30, pet = \"rex\" }, { at = 9, pet = \"juno\" }]\n") ==
        "rex 2:juno ");
  // Of which day it is nobody knows.
  Desk desk;
  CHECK_FALSE(desk.day("date = 2026-11-25\n" + rex));
  CHECK_FALSE(desk.day(rex));
  // A heading with a slip begins a booking all the same, and ends the one before.
  CHECK(unread(date + juno + "[[booking]\npet = \"rex\"\n" + rex) == "juno rex 5:rex ");
}

}  // namespace furnish::test
