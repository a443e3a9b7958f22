#include <catch2/catch.hpp>

#include "sheet/card.h"
#include "sheet/rows.h"

namespace furnish {
namespace {
using test::desk;
using test::Desk;
using test::row_of;

std::string kit(const std::string& blades, const std::string& combs = "") {
  return "[salon]\nname = \"S\"\n[kit]\nblades = [" + blades + "]\ncombs = [" + combs +
         "]\nshears = [\"thinning\"]\n";
}
}  // namespace

TEST_CASE("what is not in the drawer has its substitute beside it", "[card]") {
  // #5F leaves 1/4 in, #4F 3/8 in (the trade's charts; TRADE, blades): 3.2 mm longer.
  Desk table = desk("[pet]\nname = \"Rex\"\n[trim]\nback = { blade = \"5F\" }\n",
                    kit("\"30\", \"10\", \"4F\""));
  CHECK(row_of(table, table.kennel(), "Drawer") == "Back: #4F instead of #5F (3.2\u202Fmm longer)");
}

TEST_CASE("a shorter substitute and one of the same length say so", "[card]") {
  Desk shorter =
      desk("[pet]\nname = \"Rex\"\n[trim]\nback = { blade = \"3F\" }\n", kit("\"30\", \"4F\""));
  const std::string row = row_of(shorter, shorter.kennel(), "Drawer");
  CHECK(row.find("shorter)") != std::string::npos);
  Desk other =
      desk("[pet]\nname = \"Rex\"\n[trim]\ntail = { shears = \"curved\", leave = \"30 mm\" }\n",
           "[salon]\nname = \"S\"\n[kit]\nblades = []\nshears = [\"straight\"]\n");
  CHECK(row_of(other, other.kennel(), "Drawer") ==
        "Tail: straight shears instead of curved shears (same length)");
}

TEST_CASE("where nothing near is safe the card says so, once an entry", "[card]") {
  Desk table = desk("[pet]\nname = \"Rex\"\n[trim]\nbody = { comb = \"1 in\" }\n", kit("\"10\""));
  const std::string row = row_of(table, table.kennel(), "Drawer");
  CHECK(row.find("and nothing near it is safe here") != std::string::npos);
  CHECK(row.find('\n') == std::string::npos);
}

TEST_CASE("a drawer that holds everything takes no row", "[card]") {
  Desk table = desk("[pet]\nname = \"Rex\"\n[trim]\nback = { blade = \"4F\" }\n", kit("\"4F\""));
  CHECK(row_of(table, table.kennel(), "Drawer") == "");
  Desk unknown = desk("[pet]\nname = \"Rex\"\n[trim]\nback = { blade = \"4F\" }\n");
  CHECK(row_of(unknown, unknown.kennel(), "Drawer") == "");
}

TEST_CASE("a limit that the owner set has the day the coat passes it", "[card]") {
  const std::string pet =
      "[pet]\nname = \"Rex\"\ncoat = \"curly\"\n[trim]\nears = { shears = \"thinning\", leave = "
      "\"30 mm\" }\n[preferences]\nkeep_under = { ears = \"";
  // Curly coat: 270 to 500 µm a day (TRADE, growth); the row holds the plan's own answer.
  Desk table = desk(pet + "40 mm\" }\n");
  const test::Kennel kennel = table.kennel();
  REQUIRE_FALSE(kennel.plan.growth.empty());
  const RegionGrowth& ears = kennel.plan.growth.front();
  const auto days = days_until_over(ears, 40_mm);
  REQUIRE(days);
  const std::string until =
      table.voice().locale.day_and_month(ears.since + std::chrono::days(*days + 1), kennel.today);
  CHECK(row_of(table, kennel, "Growth") == "Ears under 40\u202Fmm until " + until + ".");
}

TEST_CASE("a limit that the coat never passes says so", "[card]") {
  Desk table = desk(
      "[pet]\nname = \"Rex\"\ncoat = \"smooth\"\n[trim]\nears = { shears = \"thinning\", leave = "
      "\"5 mm\" }\n[preferences]\nkeep_under = { ears = \"400 mm\" }\n");
  CHECK(row_of(table, table.kennel(), "Growth") == "Ears: always under 400\u202Fmm.");
}

TEST_CASE("the bath is one line with what to pour", "[card]") {
  const auto bath = [](const std::string& lines, const std::string& units = "metric") {
    Desk table = desk("[pet]\nname = \"Rex\"\n" + lines,
                      "[salon]\nname = \"S\"\nunits = \"" + units +
                          "\"\n"
                          "[kit]\nbottle = \"500 ml\"\n"
                          "[products.oat]\nname = \"oat shampoo\"\nkind = \"shampoo\"\n"
                          "dilution = \"1 in 10\"\ndwell = \"3 min\"\n"
                          "[products.silk]\nname = \"silk spray\"\nkind = \"spray\"\n"
                          "dilution = \"neat\"\n"
                          "[products.odd]\nname = \"odd soap\"\nkind = \"shampoo\"\n");
    return row_of(table, table.kennel(), "Bath");
  };
  // 1 in 10 of 500 ml: 50 ml and 450 ml; the product's own dwell where the pet has none.
  CHECK(bath("[bath]\nshampoo = \"oat\"\n") ==
        "Oat shampoo 50\u202Fml\u00A0+\u00A0450\u202Fml\u00A0water, 3\u202Fmin.");
  CHECK(bath("[bath]\nshampoo = { product = \"oat\", dwell = \"90 s\" }\n") ==
        "Oat shampoo 50\u202Fml\u00A0+\u00A0450\u202Fml\u00A0water, 90\u202Fs.");
  CHECK(bath("[bath]\nothers = [{ product = \"silk\" }]\n") == "Silk spray, undiluted.");
  CHECK(bath("[bath]\nshampoo = \"odd\"\n") == "Odd soap, dilution as on its label.");
  CHECK(bath("[bath]\nnone = true\n") == "No bath.");
  CHECK(bath("") == "");
  // 500 ml are 16.907 US fl oz, a tenth of it 1.69, to the next quarter 1¾ (NIST Handbook 44).
  CHECK(bath("[bath]\nshampoo = \"oat\"\n", "us")
            .starts_with("Oat shampoo 1¾\u202Ffl\u00A0oz\u00A0+\u00A015"));
}

TEST_CASE("due days: to come, today, overdue, another year", "[card]") {
  const auto due = [](const char* visit, const char* today) {
    Desk table({{"pets/rex.toml", "[pet]\nname = \"Rex\"\n[trim]\nvisit_every = \"4 weeks\"\n"},
                {std::string("visits/rex/") + visit + ".toml",
                 std::string("date = ") + visit + "\nunfinished = false\n"}});
    return row_of(table, table.kennel("rex", parse_date(today).value()), "Due again");
  };
  CHECK(due("2026-11-03", "2026-11-24") == "Tuesday, 1 December (every 4\u00A0weeks)");
  // On the day itself the next one is still to be agreed.
  CHECK(due("2026-10-27", "2026-11-24") == "____ Due again");
  CHECK(due("2026-10-20", "2026-11-24") ==
        "Tuesday, 17 November (every 4\u00A0weeks), 7\u00A0days overdue");
  CHECK(due("2026-12-20", "2026-12-24") == "Sunday, 17 January 2027 (every 4\u00A0weeks)");
}

TEST_CASE("the foot says the salon, the day and the time", "[card]") {
  Desk table(test::sample("lantern-street"));
  const test::Kennel short_visit = table.kennel("otter"), long_visit = table.kennel("bjarne");
  REQUIRE(short_visit.plan.duration);
  REQUIRE(short_visit.plan.duration->expected <= std::chrono::minutes(90));
  const auto sheet = table.card(short_visit);
  REQUIRE(sheet);
  CHECK(test::says(sheet->page.frame,
                   "Lantern Street Dogs 24 November 2026 · about " +
                       std::to_string(short_visit.plan.duration->expected.count()) + " min"));
  // 200 minutes, the median of his visits.
  REQUIRE(long_visit.plan.duration);
  REQUIRE(long_visit.plan.duration->expected == std::chrono::minutes(200));
  const auto other = table.card(long_visit);
  REQUIRE(other);
  CHECK(test::says(other->page.frame, "about 3½\u00A0h"));
  CHECK_FALSE(test::says(other->page.frame, "200"));
}

TEST_CASE("a booking of the day heads the rows and gives the time to collect", "[card]") {
  Desk table({{"pets/rex.toml", "[pet]\nname = \"Rex\"\n[owner]\nname = \"Priya\"\n"},
              {"days/2026-11-24.toml",
               "date = 2026-11-24\n[[booking]]\nat = 09:30:00\ncollect = 11:45:00\npet = \"rex\"\n"
               "groomer = \"Ines\"\nnote = \"own towel\"\n"}});
  const test::Kennel kennel = table.kennel();
  CHECK(row_of(table, kennel, "Today") == "09:30 · Ines · own towel");
  CHECK(row_of(table, kennel, "Collects") == "Priya, at\u00A011:45");
  const test::Kennel other = table.kennel("rex", parse_date("2026-11-25").value());
  CHECK(row_of(table, other, "Today") == "");
}
}  // namespace furnish
