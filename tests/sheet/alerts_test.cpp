#include <catch2/catch.hpp>

#include <algorithm>

#include "page/shaped_line.h"
#include "sheet/alerts.h"
#include "sheet/rows.h"

namespace furnish {
namespace {
using test::desk;
using test::Desk;

/// "WORD statement / action", a line each.
std::string alerts_of(Desk& table, const test::Kennel& kennel) {
  std::string out;
  const SheetInput input = table.input(kennel);
  for (const AlertEntry& one : alert_entries({input, table.voice()}, CautionScope::card)) {
    out += one.word + " " + one.statement;
    out += (one.action.empty() ? "" : " / " + one.action) + "\n";
  }
  return out;
}

constexpr const char* four = R"([pet]
name = "Rex"
[[alert]]
level = "notice"
text  = "likes cheese"
[[alert]]
level = "caution"
text  = "left hock is sore"
do    = "support the leg"
avoid = ["left hock", "belly"]
[[alert]]
level = "danger"
text  = "bites without warning!"
do    = "two people, muzzle on"
[[alert]]
level = "warning"
text  = "jumps from the table"
do    = "one hand on him"
)";
}  // namespace

// ANSI Z535.4: danger, warning, caution, notice, gravest first.
TEST_CASE("alerts stand by gravity, each with what to do", "[alerts]") {
  Desk table = desk(four);
  CHECK(alerts_of(table, table.kennel()) ==
        "DANGER Bites without warning! / Two people, muzzle on.\n"
        "WARNING Jumps from the table. / One hand on him.\n"
        "CAUTION Left hock is sore. / Support the leg. No tool on: left hock and belly.\n"
        "NOTICE Likes cheese.\n");
}

TEST_CASE("alerts stand by gravity on every paper, whatever the layout", "[alerts]") {
  Desk table = desk(four);
  const test::Kennel kennel = table.kennel();
  for (const Paper& paper : papers) {
    const auto sheet = table.card(kennel, paper.name);
    INFO(paper.name << "\n" << table.said());
    REQUIRE(sheet);
    const std::string text = test::without_space(test::text_of(sheet->page.frame));
    std::size_t at = 0;
    for (const char* next : {"DANGER", "Biteswithoutwarning!", "Twopeople", "WARNING", "Jumps",
                             "Onehand", "CAUTION", "Lefthockissore.", "Supporttheleg.",
                             "Notoolon:lefthockandbelly.", "NOTICE", "Likescheese."}) {
      INFO(paper.name << ": " << next << " after " << at);
      at = text.find(next, at);
      REQUIRE(at != std::string::npos);
    }
  }
}

TEST_CASE("alerts of one gravity stay in the order of the file", "[alerts]") {
  Desk table = desk(
      "[pet]\nname = \"Rex\"\n"
      "[[alert]]\nlevel = \"caution\"\ntext = \"second\"\n"
      "[[alert]]\nlevel = \"warning\"\ntext = \"first\"\n"
      "[[alert]]\nlevel = \"caution\"\ntext = \"third\"\n");
  CHECK(alerts_of(table, table.kennel()) == "WARNING First.\nCAUTION Second.\nCAUTION Third.\n");
}

TEST_CASE("each gravity has a mark that a copier keeps", "[alerts]") {
  // Not by colour alone: WCAG 2.2, 1.4.1.
  Desk table = desk(four);
  const test::Kennel kennel = table.kennel();
  std::vector<Gravity> seen;
  const SheetInput input = table.input(kennel);
  for (const AlertEntry& one : alert_entries({input, table.voice()}, CautionScope::card)) {
    seen.push_back(one.gravity);
  }
  CHECK(seen ==
        std::vector<Gravity>{Gravity::row, Gravity::panel, Gravity::bar, Gravity::hairline});
}

TEST_CASE("without alerts the card says so", "[alerts]") {
  Desk table = desk("[pet]\nname = \"Rex\"\n");
  for (const char* paper : {"A5", "A6"}) {
    const auto sheet = table.card(table.kennel(), paper);
    REQUIRE(sheet);
    CHECK(test::says(sheet->page.frame, "Alerts None on file."));
  }
}

TEST_CASE("cautions of the plan come after the pet's own of the same gravity", "[alerts]") {
  Desk table = desk(
      "[pet]\nname = \"Rex\"\ncoat = \"double\"\nborn = 2011-03-01\n"
      "[health]\nconditions = [\"seizures\"]\n"
      "[[alert]]\nlevel = \"warning\"\ntext = \"snaps\"\n[bath]\ndry = \"force dryer\"\n");
  const std::string alerts = alerts_of(table, table.kennel());
  INFO(alerts);
  const std::size_t own = alerts.find("WARNING Snaps."), plan = alerts.find("attack"),
                    notice = alerts.find("NOTICE Old dog");
  REQUIRE(own != std::string::npos);
  REQUIRE(plan != std::string::npos);
  REQUIRE(notice != std::string::npos);
  CHECK(own < plan);
  CHECK(plan < notice);
}

TEST_CASE("cautions that end in the same advice are one row", "[alerts]") {
  Desk table = desk("[pet]\nname = \"Rex\"\n",
                    "[salon]\nname = \"S\"\n[vaccinations]\n"
                    "rabies = { required = true }\ndistemper = { required = true }\n");
  CHECK(alerts_of(table, table.kennel()) ==
        "NOTICE Distemper vaccination: none on file. Rabies vaccination: none on file. / Follow "
        "local rules; ask for the "
        "certificate.\n");
}

TEST_CASE("cautions about single cuts are not for the kennel's door", "[alerts]") {
  Desk table = desk("[pet]\nname = \"Rex\"\n[trim]\nback = { comb = \"1/2 in\", over = \"10\" }\n");
  const test::Kennel kennel = table.kennel();
  CHECK(std::ranges::count(kennel.plan.cautions, RuleId::comb_base, &Caution::rule) == 1);
  CHECK(alerts_of(table, kennel) == "");
}

TEST_CASE("that no tool goes where something was found is on the front of a card", "[alerts]") {
  Desk table(test::sample("lantern-street"));
  for (const auto& [pet, what] : {std::pair{"marlow", "Belly, left: lump, pea-sized"},
                                  std::pair{"juniper", "Belly: hives, fading"}}) {
    const auto card = table.card(table.kennel(pet));
    REQUIRE(card);
    REQUIRE(!card->page.more.empty());  // else all of it is
    CHECK(test::says(card->page.frame, what));
    CHECK(test::says(card->page.frame, "No tool on it"));
  }
}

TEST_CASE("the pages of a day agree on the next one, and on what no longer holds", "[alerts]") {
  Desk table(test::sample("lantern-street"));
  const test::Kennel juniper = table.kennel("juniper");
  CHECK(test::row_of(table, juniper, "Due again") ==
        "About Tuesday, 5 January 2027, not booked\n____ Day agreed");
  CHECK(test::row_of(table, juniper, "Growth") ==
        "Ears under 60\u202Fmm until Thursday, 28 January 2027.");
  CHECK(test::row_of(table, juniper, "Dry") ==
        "Force dryer, stretch with a slicker. Low, never on the head.");
  CHECK(alerts_of(table, juniper).find("a guard comb rides up on mats") != std::string::npos);
  table.speak("en-GB");
  const auto care = table.care(juniper);
  REQUIRE(care);
  CHECK(test::says(care->page.frame, "About Tuesday, 5 January 2027."));
  CHECK(test::says(care->page.frame, "It is not booked yet: please call us."));
  const auto marlow = table.care(table.kennel("marlow"));
  REQUIRE(marlow);
  CHECK_FALSE(test::says(marlow->page.frame, "Vet before the next trim"));
  CHECK(test::says(marlow->page.frame, "We looked again on 24 November 2026: please ask us."));
  CHECK_FALSE(test::says(marlow->page.frame, "no longer warm"));
  const auto day = table.day();
  REQUIRE(day);
  CHECK(test::says(day->page.frame, "OVERLAP"));
  CHECK(test::says(day->page.frame, "11:15 Gạo: this pet is booked until 11:45."));
  CHECK(test::says(day->page.frame, "Two people."));
  CHECK(test::says(day->page.frame, "expected 14\u202Fh 32\u202Fmin"));
  CHECK(test::says(day->page.frame, "Rump: flea dirt (1 Sept)."));
  CHECK(test::says(day->page.frame, "contact in the file"));
  CHECK(
      test::says(day->page.frame,
                 "Mats behind the ears overnight: We comb first, and ring before we cut any out."));
}

TEST_CASE("what was accepted prints as accepted, not as an alert", "[alerts]") {
  Desk table = desk(
      "[pet]\nname = \"Rex\"\ncoat = \"double\"\n[bath]\nbefore = \"comb\"\n"
      "[trim]\nback = { blade = \"4F\" }\n"
      "[[accept]]\nrule = \"double-coat-short\"\nreason = \"vet's order\"\nsigned = 2026-04-28\n");
  const test::Kennel kennel = table.kennel();
  CHECK(alerts_of(table, kennel) == "");
  const std::string row = test::row_of(table, kennel, "Accepted");
  INFO(row);
  CHECK(row == "Back, #4F: accepted 28 Apr. Vet's order.");
}

TEST_CASE("a place with several faults is one row, with one tool in its advice", "[alerts]") {
  Desk table = desk("[pet]\nname = \"Rex\"\n[trim]\nsanitary = { blade = \"30\" }\n");
  CHECK(alerts_of(table, table.kennel()) ==
        "WARNING Only a #10 is used round the anus and vulva or prepuce. Sanitary area: skin left "
        "bare is prone to clipper burn and sunburn. / Use a #10.\n");
}

TEST_CASE("an alert whose place the plan would cut is one row, at the gravity of both",
          "[alerts]") {
  Desk table = desk(
      "[pet]\nname = \"Rex\"\n[[alert]]\nlevel = \"caution\"\ntext = \"left hock is sore\"\n"
      "do = \"support the leg\"\navoid = [\"left hock\"]\n[trim]\nhocks = { blade = \"10\" }\n");
  CHECK(alerts_of(table, table.kennel()) ==
        "DANGER Left hock is sore. / Support the leg. No tool on: left hock. Leave it, work round "
        "it, ask the vet.\n");
}

TEST_CASE("type follows gravity, whoever says it", "[alerts]") {
  Desk table = desk(
      "[pet]\nname = \"Rex\"\ncoat = \"double\"\nborn = 2011-03-01\n"
      "[[alert]]\nlevel = \"danger\"\ntext = \"bites\"\n"
      "[[alert]]\nlevel = \"notice\"\ntext = \"likes cheese\"\n"
      "[trim]\nback = { blade = \"4F\" }\nsides = { comb = \"2 in\", over = \"10\" }\n");
  const test::Kennel kennel = table.kennel();
  const SheetInput input = table.input(kennel);
  std::size_t seen = 0;
  for (const AlertEntry& one : alert_entries({input, table.voice()}, CautionScope::all)) {
    INFO(one.statement);
    const bool grave = one.gravity <= Gravity::panel;
    CHECK(one.role == (grave ? Role::alert : Role::body));
    ++seen;
  }
  CHECK(seen == 5);
}

TEST_CASE("white words of a danger stand on black", "[alerts]") {
  Desk table = desk(four);
  const auto sheet = table.card(table.kennel());
  REQUIRE(sheet);
  std::size_t white = 0;
  for (const Mark& mark : sheet->page.frame.marks) {
    const auto* text = std::get_if<TextMark>(&mark);
    white += text && text->ink == Ink::paper;
  }
  // The danger's word, statement and action, and the warning's word.
  CHECK(white >= 4);
}

TEST_CASE("felt is clipped and never combed: the card says so, and what a comb opens apart",
          "[alerts]") {
  Desk table(
      {{"pets/rex.toml", "[pet]\nname = \"Rex\"\ncoat = \"curly\"\n[bath]\ndry = \"towel\"\n"},
       {"visits/rex/2026-10-06.toml",
        "date = 2026-10-06\nnot_done = \"bit\"\n[came_in]\nlegs = { mats = 4 }\n"
        "ears = { mats = 3, side = \"left\" }\n"}});
  CHECK(test::without_space(alerts_of(table, table.kennel())) ==
        test::without_space(
            "DANGER Visit of 6\u00A0Oct: bit.\n"
            "CAUTION Left ear matted on 6\u00A0October 2026: water tightens mats. / Brush and comb "
            "to the skin first.\n"
            "CAUTION Front legs, rear legs and hocks felted on 6\u00A0October 2026: water draws "
            "felt tighter. / Clip, never comb through; before the bath, or ask the desk.\n"));
  const auto sheet = table.style(table.kennel());
  REQUIRE(sheet);
  std::string page;
  for (const Frame& side : sides(sheet->page)) page += test::text_of(side) + " ";
  INFO(page);
  const std::string text = test::without_space(page);
  for (const char* const said :
       {"CAUTION left ear: brush and comb to the skin first",
        "CAUTION legs: clip, never comb through", "What stops the work? Visit of 6 Oct: bit."}) {
    INFO(said);
    CHECK(text.find(test::without_space(said)) != std::string::npos);
  }
}

TEST_CASE("a machine's noise is a caution that quotes nothing twice, and no answer", "[alerts]") {
  Desk table(test::sample("lantern-street"));
  const auto sheet = table.style(table.kennel("pickle"));
  REQUIRE(sheet);
  std::string page;
  for (const Frame& side : sides(sheet->page)) page += test::without_space(test::text_of(side));
  const auto count = [&](std::string_view words) {
    std::size_t out = 0;
    const std::string what = test::without_space(words);
    for (std::size_t at = 0; (at = page.find(what, at)) != std::string::npos; ++at) ++out;
    return out;
  };
  INFO(page);
  CHECK(count("A clipper is planned, and the file warns of its noise") == 1);
  // Among the alerts, and where it is said back.
  CHECK(count("Seizures: noise sets them off") == 2);
}

TEST_CASE("in a row of several hazards each has what to do about it right after it", "[alerts]") {
  Desk table({{"pets/rex.toml",
               "[pet]\nname = \"Rex\"\ncoat = \"curly\"\n[bath]\ndry = \"towel\"\n"
               "[trim]\nneck = { comb = \"1/2 in\" }\nback = { comb = \"1/2 in\" }\n"
               "\"left side\" = { blade = \"7F\" }\n"
               "[[alert]]\nlevel = \"caution\"\ntext = \"lipoma\"\navoid = [\"left side\"]\n"},
              {"visits/rex/2026-10-06.toml",
               "date = 2026-10-06\nunfinished = false\n[came_in]\nneck = { mats = 2 }\n"
               "sides = { mats = 2 }\n[[finding]]\nregion = \"neck\"\nwhat = \"lump\"\n"}});
  CHECK(test::without_space(alerts_of(table, table.kennel())) ==
        test::without_space(
            "DANGER Lipoma. / No tool on: left side. Leave it, work round it, ask the vet. Neck "
            "and sides matted on 6\u00A0October 2026: water tightens mats. Brush and comb to the "
            "skin first. Neck: lump (6\u00A0October 2026). No tool on it.\n"
            "CAUTION Neck: a guard comb rides up on mats and pulls. / Comb out first, or a blade "
            "under the mat.\n"));
}

TEST_CASE("a card keeps the noise of every machine that is planned", "[alerts]") {
  const std::string rex =
      "[pet]\nname = \"Rex\"\n[bath]\ndry = \"force dryer, not on the head\"\n"
      "[trim]\nback = { blade = \"7F\" }\n[finish]\nnails = \"clip, then grind\"\n";
  Desk table =
      desk(rex + "[[alert]]\nlevel = \"notice\"\ntext = \"Seizures: noise sets them off.\"\n");
  const std::string alerts = alerts_of(table, table.kennel());
  INFO(alerts);
  for (const char* said : {"clipper is planned", "grinder is planned", "force dryer is planned"}) {
    CHECK(alerts.find(said) != std::string::npos);
  }
  // On the front, whatever else goes to the other side.
  Desk salon(test::sample("lantern-street"));
  const auto sheet = salon.card(salon.kennel("pickle"), "A5");
  REQUIRE(sheet);
  const std::string front = test::without_space(test::text_of(sheet->page.frame));
  CHECK(front.find("Aclipperisplanned") != std::string::npos);
  CHECK(front.find("Blindontheright") != std::string::npos);
  // What is ruled out says so where it is done, and nowhere else.
  Desk no =
      desk(rex + "[[alert]]\nlevel = \"notice\"\ntext = \"Old dog.\"\ndo = \"No grinder.\"\n");
  CHECK(test::row_of(no, no.kennel(), "Finish") ==
        "Nails clip, then grind; CAUTION\u00A0"
        "clip instead; ask the desk which of the two holds");
  CHECK(test::row_of(no, no.kennel(), "Bath").empty());
}

TEST_CASE("a bite that only a visit tells of is a danger until an alert says it", "[alerts]") {
  const auto alerts_with = [](const std::string& alert, const std::string& day) {
    Desk table({{"salon.toml", "[salon]\nname = \"S\"\nlanguage = \"en-GB\"\n"},
                {"pets/rex.toml", "[pet]\nname = \"Rex\"\n" + alert},
                {"visits/rex/" + day + ".toml",
                 "date = " + day +
                     "\nminutes = 60\n[came_in]\nbehaviour = \"calm at first. bit at the left rear "
                     "foot. then slept\"\n"},
                {"visits/rex/2026-01-05.toml",
                 "date = 2026-01-05\nminutes = 60\n[came_in]\nbehaviour = \"snapped\"\n"}});
    return alerts_of(table, table.kennel());
  };
  const std::string told = "DANGER Visit of 17\u00A0Nov: bit at the left rear foot.\n";
  CHECK(alerts_with("", "2026-11-17") == told);
  CHECK(alerts_with("", "2026-11-24") ==
        "DANGER Visit of 24\u00A0Nov: bit at the left rear foot.\n");
  CHECK(alerts_with("[[alert]]\nlevel = \"warning\"\ntext = \"Bites at feet.\"\n", "2026-11-17") ==
        "WARNING Bites at feet.\n");
}
}  // namespace furnish
