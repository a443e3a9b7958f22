#include "sheet/last_time.h"
#include "sheet/card_ticks.h"

#include <catch2/catch.hpp>

#include <algorithm>

#include "sheet/rows.h"
#include "sheet/shown.h"
#include "sheet/style_rows.h"
#include "sheet/style_words.h"
#include "sheet/style_work.h"

namespace furnish {
namespace {
using test::Desk;
using test::row_of;
using Held = std::map<std::string, std::string>;

const std::string rex = "[pet]\nname = \"Rex\"\n";

std::string finding(const std::string& what, const std::string& advised) {
  return "[[finding]]\nregion = \"belly\"\nside = \"left\"\nwhat = \"" + what + "\"\nadvised = \"" +
         advised + "\"\n";
}

/// All rows of a kind as a line each: "Label: text point point".
std::string lines_of(const std::vector<SheetRow>& rows) {
  std::string out;
  for (const SheetRow& row : rows) {
    out += row.label + ": " + test::text_of(row.text);
    for (const SheetRow::Point& point : row.points) out += " | " + test::text_of(point.text);
    out += '\n';
  }
  return out;
}

std::string who_of(Desk& table, const test::Kennel& kennel) {
  const SheetInput input = table.input(kennel, "A4", kinds::style);
  return lines_of(style_who({input, table.voice()}));
}

std::string visits_of(Desk& table, const test::Kennel& kennel) {
  const SheetInput input = table.input(kennel, "A4", kinds::style);
  return lines_of(style_visits({input, table.voice()}));
}

std::string what_if_of(const std::string& pet) {
  Desk table = test::desk(pet);
  const test::Kennel kennel = table.kennel();
  const SheetInput input = table.input(kennel, "A4", kinds::style);
  return lines_of(style_what_if({input, table.voice()}));
}
bool has(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}
}  // namespace

TEST_CASE("a finding that is open is looked for again", "[card][style]") {
  Held files{{"pets/rex.toml", rex},
             {"visits/rex/2026-09-29.toml", "date = 2026-09-29\nunfinished = false\n" +
                                                finding("lump, pea-sized", "vet this week")}};
  Desk table(files);
  CHECK(row_of(table, table.kennel(), "Look again") ==
        "Belly, left: lump, pea-sized (29 Sept). Advice: Vet this week.");
  CHECK(
      has(who_of(table, table.kennel()),
          "Look again:  | A\u00A0Belly, left: lump, pea-sized (29 Sept). Advice: Vet this week."));
  // Seen three times, with all its days; it says how it was last.
  files["visits/rex/2026-06-09.toml"] =
      "date = 2026-06-09\nunfinished = false\n" + finding("lump", "watch it");
  files["visits/rex/2026-11-03.toml"] =
      "date = 2026-11-03\nunfinished = false\n" + finding("lump, larger", "vet today");
  Desk often(files);
  CHECK(row_of(often, often.kennel(), "Look again") ==
        "Belly, left: lump, larger (9 Jun, 29 Sept and 3 Nov). Advice: Vet today.");
  // What a later visit closed is gone.
  files["visits/rex/2026-11-17.toml"] =
      "date = 2026-11-17\nunfinished = false\n[[finding]]\nregion = \"belly\"\nside = "
      "\"left\"\nclosed = true\n";
  Desk closed(files);
  CHECK(row_of(closed, closed.kennel(), "Look again") == "");
}

TEST_CASE("open findings are squares with letters on the style sheet's figure", "[style]") {
  Desk table({{"pets/rex.toml", rex},
              {"visits/rex/2026-09-29.toml",
               "date = 2026-09-29\nunfinished = false\n" + finding("lump", "vet") +
                   "[[finding]]\nregion = \"rump\"\nwhat = \"sore\"\n"}});
  const test::Kennel kennel = table.kennel();
  const SheetInput input = table.input(kennel, "A4", kinds::style);
  const SheetDesk desk{input, table.voice()};
  const FigureInput figure = style_figure(style_rows(desk), desk);
  REQUIRE(figure.spots.size() == 2);
  CHECK(figure.spots[0].kind == SpotKind::finding);
  CHECK(figure.spots[0].number == 1);
  CHECK(figure.spots[0].place == Place{Region::belly, Side::left});
  CHECK(figure.spots[1].number == 2);
  CHECK(has(figure.alt, "rump"));
}

TEST_CASE("the last visit hands on what helps at this one", "[card][style]") {
  const std::string visit =
      "date = 2026-09-29\nunfinished = false\ngroomer = \"Ines\"\nweight = \"5.1 kg\"\n[came_in]\n"
      "behaviour = \"worried at the dryer\"\nhelped = \"towel over the ears\"\n"
      "ears = { mats = 2, side = \"left\" }\nbreeches = { mats = 1 }\n"
      "[done]\nchest = { shears = \"straight\", leave = \"30 mm\", why = \"thinners out\" }\n";
  const std::string said =
      "29 Sept, Ines. Mats: Left ear\u00A0"
      "2/4, breeches\u00A0"
      "1/4. Behaviour: Worried at the "
      "dryer. What helped: Towel over the ears. Chest: Straight shears, 30\u202Fmm (thinners out).";
  Held files{{"pets/rex.toml", rex}, {"visits/rex/2026-09-29.toml", visit}};
  Desk table(files);
  // Nobody weighed him since: the weight is in the head.
  CHECK(row_of(table, table.kennel(), "Last time") == said);
  CHECK(visits_of(table, table.kennel()) == ": " + said + "\n");
  // While one of today is being written, the one before is still the last; then it is that one.
  const std::string of_today = "date = 2026-11-24\nweight = \"4.6 kg\"\n";
  files["visits/rex/2026-11-24.toml"] = of_today + "unfinished = true\n";
  Desk today(files);
  CHECK(row_of(today, today.kennel(), "Last time") == said + " Weight: 5.1\u202Fkg.");
  files["visits/rex/2026-11-24.toml"] =
      of_today + "minutes = 60\n[came_in]\nbehaviour = \"calm\"\n";
  Desk over(files);
  CHECK(row_of(over, over.kennel(), "Last time") == "24 Nov. Behaviour: Calm.");
  files.erase("visits/rex/2026-09-29.toml");
  Desk only(files);
  CHECK(row_of(only, only.kennel(), "Last time") == "24 Nov. Behaviour: Calm.");
  Desk nothing({{"pets/rex.toml", rex},
                {"visits/rex/2026-09-29.toml", "date = 2026-09-29\nunfinished = false\n"}});
  CHECK(row_of(nothing, nothing.kennel(), "Last time") == "");
}

TEST_CASE("the last three visits stand under each other, the newest first", "[style]") {
  Held files{{"pets/rex.toml", rex}};
  for (const char* day : {"2026-03-03", "2026-06-09", "2026-08-04", "2026-09-29", "2026-11-24"}) {
    files["visits/rex/" + std::string(day) + ".toml"] =
        std::string("date = ") + day +
        "\ngroomer = \"Bo\"\nminutes = 95\nweight = \"5.2 kg\"\n"
        "[came_in]\nbehaviour = \"calm\"\n";
  }
  Desk table(files);
  const std::string facts =
      ", Bo, " + shown(std::chrono::minutes(95), table.voice()) + ", 5.2\u202Fkg. Calm.\n";
  // The newest hands on what to mind; the visit of the day itself is one of them once it is over.
  CHECK(visits_of(table, table.kennel()) ==
        ": 24 Nov, Bo. Behaviour: Calm.\n: 29 Sept" + facts + ": 4 Aug" + facts);
}

TEST_CASE("a style sheet says how the dog is held, lifted and dried, and when to stop", "[style]") {
  Desk table = test::desk(rex +
                          "[handling]\nhold = \"under the jaw\"\nlift = \"two people\"\n"
                          "dryer = \"never on the head\"\nstop = \"tongue curls\"\n"
                          "rest_every = \"20 min\"\n");
  const test::Kennel kennel = table.kennel();
  const SheetInput input = table.input(kennel, "A4", kinds::style);
  CHECK(lines_of(style_handling({input, table.voice()})) ==
        "Hold: Under the jaw.\nLift: Two people.\nDry: Never on the head.\n"
        "Stop\u00A0if: Tongue curls.\n"
        ": Rest every 20\u202Fmin.\n");
}

TEST_CASE("the stricter of two lines about drying is the only one", "[card]") {
  Desk table = test::desk(rex +
                          "[handling]\ndryer = \"no force dryer\"\n"
                          "[bath]\ndry = \"towel, then force dryer\"\n");
  CHECK(row_of(table, table.kennel(), "Dry") == "No force dryer.");
  // A dislike is named without its "no".
  Desk disliked = test::desk(rex +
                             "[bath]\ndry = \"force dryer with the lay\"\n"
                             "[preferences]\ndislikes = [\"force dryer\"]\n");
  CHECK(row_of(disliked, disliked.kennel(), "Dry") == "Not: force dryer.");
}

TEST_CASE("a card says the conditions that change handling", "[card]") {
  Desk table = test::desk(rex + "[health]\nconditions = [\"blind\", \"deaf\", \"diabetes\"]\n");
  CHECK(row_of(table, table.kennel(), "Health") == "Blind, deaf, diabetes.");
  Desk none = test::desk(rex);
  CHECK(row_of(none, none.kennel(), "Health") == "");
}

TEST_CASE("the vet's number is on a card only where the salon asks for numbers", "[card]") {
  const std::string pet = rex +
                          "[owner]\nname = \"Priya\"\nvet = { name = \"Dr. Quill\", phone = "
                          "\"555 0199\" }\n";
  Desk asked = test::desk(pet, "[salon]\nname = \"S\"\ncontact_on_card = true\n");
  CHECK(row_of(asked, asked.kennel(), "Vet") == "Dr. Quill · 555 0199");
  Desk quiet = test::desk(pet);
  CHECK(row_of(quiet, quiet.kennel(), "Vet") == "");
}

TEST_CASE("what visits measured stands beside what a tool leaves", "[style]") {
  const auto visit = [](const char* day, int mm) {
    return std::string("date = ") + day + "\n[went_out]\nback = { length = \"" +
           std::to_string(mm) + " mm\" }\n";
  };
  Held files{{"pets/rex.toml",
              "[pet]\nname = \"Rex\"\ncoat = \"curly\"\n[trim]\nback = { comb = \"1/2 in\", over = "
              "\"30\", lay = \"with\" }\n"},
             {"visits/rex/2026-09-29.toml", visit("2026-09-29", 15)}};
  Desk once(files);
  const auto first = once.style(once.kennel());
  REQUIRE(first);
  CHECK(test::says(first->page.frame, "left at 15\u202Fmm on 29 Sep"));
  // The direction of the cut, where the file gives it.
  CHECK(test::says(first->page.frame, "with the lay"));
  files["visits/rex/2026-11-03.toml"] = visit("2026-11-03", 17);
  Desk twice(files);
  const auto second = twice.style(twice.kennel());
  REQUIRE(second);
  CHECK(test::says(second->page.frame, "left at 16\u202Fmm (median of 2 visits to 3 Nov)"));
}

TEST_CASE("one answer to mats that fits the pet", "[style]") {
  const auto coat = [](const std::string& name, const std::string& more = {}) {
    return what_if_of("[pet]\nname = \"Rex\"\ncoat = \"" + name + "\"\n" + more);
  };
  CHECK(has(coat("curly"), "a #10 under the mat"));
  CHECK_FALSE(has(coat("double"), "#10"));
  CHECK(has(coat("double"), "Never shave this coat"));
  const std::string torn = coat("curly", "[health]\nconditions = [\"thin skin\"]\n");
  CHECK(has(torn, "Leave every mat to a vet"));
  CHECK_FALSE(has(torn, "#10"));
  CHECK_FALSE(has(torn, "Comb out"));
  // Its owner agreed to it short.
  CHECK(has(coat("double",
                 "[trim]\nbody = { blade = \"10\" }\n[[accept]]\nrule = "
                 "\"double-coat-short\"\nreason = \"wish\"\nsigned = 2026-04-28\n"),
            "#10 under the mat"));
  // A line of the pet's own rules blades out.
  CHECK_FALSE(has(coat("curly", "[handling]\nhold = \"no clippers\"\n"), "#10"));
  CHECK_FALSE(has(coat("smooth"), "Mats"));
  // No page says to ring a number that it does not show.
  CHECK_FALSE(has(coat("curly"), "ring"));
}

TEST_CASE("what is cut before the bath is called so", "[style]") {
  Desk table = test::desk(rex +
                          "coat = \"wire\"\n[bath]\ndry = \"towel\"\n[trim]\nbody = { blade = "
                          "\"7F\", before_bath = true }\n");
  const test::Kennel kennel = table.kennel();
  const SheetInput input = table.input(kennel, "A4", kinds::style);
  const SheetDesk desk{input, table.voice()};
  CHECK(has(lines_of(style_before(desk, WithHow::no)), "Cut before the bath: #7F"));
  const auto ticks = card_ticks(desk);
  const auto at = [&](const char* name) { return std::ranges::find(ticks, name) - ticks.begin(); };
  CHECK(at("Clip") < at("Dry"));
}

TEST_CASE("nothing is combed layer by layer on a smooth coat", "[style]") {
  const auto before = [](const std::string& coat) {
    Desk table = test::desk("[pet]\nname = \"Rex\"\ncoat = \"" + coat +
                            "\"\n[bath]\nbefore = \"rubber brush\"\n");
    const test::Kennel kennel = table.kennel();
    const SheetInput input = table.input(kennel, "A4", kinds::style);
    return lines_of(style_before({input, table.voice()}, WithHow::yes));
  };
  CHECK_FALSE(has(before("smooth"), "layer by layer"));
  CHECK(has(before("curly"), "layer by layer"));
}

TEST_CASE("over 90 minutes a time is in half hours", "[card]") {
  Desk table = test::desk(rex);
  const auto said = [&](int minutes) {
    return about(std::chrono::minutes(minutes), table.voice());
  };
  CHECK(said(90) == "about 90\u00A0min");
  CHECK(said(91) == "about 1½\u00A0h");
  CHECK(said(104) == "about 1½\u00A0h");
  CHECK(said(105) == "about 2\u00A0h");
  CHECK(said(144) == "about 2½\u00A0h");
  table.speak("fr");
  CHECK(said(144) ==
        "environ 2\u00A0h\u00A0"
        "30");
  table.speak("es");
  CHECK(said(144) == "unas 2\u00A0h y media");
}

TEST_CASE("what a coat does before the next visit is advice, and moves no date", "[card]") {
  // A curly coat mats quickly from 25 mm, and grows 270 to 500 µm a day (TRADE, growth).
  Desk table({{"pets/rex.toml",
               "[pet]\nname = \"Rex\"\ncoat = \"curly\"\n[trim]\nvisit_every = \"8 weeks\"\n"
               "throat = { shears = \"curved\", leave = \"20 mm\" }\n"},
              {"visits/rex/2026-11-17.toml", "date = 2026-11-17\nunfinished = false\n"}});
  const test::Kennel kennel = table.kennel();
  const auto limit =
      std::ranges::find(kennel.plan.limits, LimitKind::mat_prone, &LengthLimit::kind);
  REQUIRE(limit != kennel.plan.limits.end());
  const std::string day = table.voice().locale.day_and_month(limit->passed, test::demo_day);
  CHECK(row_of(table, kennel, "Growth") ==
        "Throat: over " + shown(limit->limit, table.voice()) + " from " + day +
            "; daily brushing from then, or an appointment by then.");
  CHECK(row_of(table, kennel, "Due again") == "Tuesday, 12 January 2027 (every 8\u00A0weeks)");
}

TEST_CASE("a next visit says why it is then", "[card]") {
  Desk booked(
      {{"pets/rex.toml", rex},
       {"visits/rex/2026-11-03.toml", "date = 2026-11-03\nunfinished = false\n"},
       {"days/2026-12-01.toml", "date = 2026-12-01\n[[booking]]\nat = 09:30:00\npet = \"rex\"\n"}});
  CHECK(row_of(booked, booked.kennel(), "Due again") == "Tuesday, 1 December (booked at 09:30)");
  Desk agreed({{"pets/rex.toml", rex},
               {"visits/rex/2026-11-03.toml",
                "date = 2026-11-03\nunfinished = false\nnext = 2026-12-01\n"}});
  CHECK(row_of(agreed, agreed.kennel(), "Due again") == "Tuesday, 1 December (as agreed)");
  Desk first = test::desk(rex);
  CHECK(row_of(first, first.kennel(), "Due again") == "No groom on file.");
  // A regular whose visits lie in another book is believed.
  std::string long_here = rex;
  long_here.replace(0, 6, "[pet]\nsince = 2014\n");
  Desk regular = test::desk(long_here);
  CHECK(row_of(regular, regular.kennel(), "Due again") == "No groom on file, comes since 2014.");
}
}  // namespace furnish
