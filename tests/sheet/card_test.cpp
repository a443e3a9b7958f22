#include "sheet/card.h"
#include "sheet/card_ticks.h"

#include <catch2/catch.hpp>

#include <algorithm>

#include "sheet/rows.h"
#include "sheet/who.h"

namespace furnish {
namespace {
using test::desk;
using test::Desk;
using test::row_of;
using test::says;

constexpr const char* full = R"([pet]
name    = "Rex"
breed   = "spitz cross"
coat    = "double"
colour  = "orange sable"
sex     = "male, neutered"
born    = 2021-04-09
weight  = "4.6 kg"
[owner]
name     = "R. Adeyemi"
phone    = "555 0101"
email    = "r@adeyemi.example"
address  = ["7 Mill Row", "Eastmere"]
collects = ["Priya", "Tom"]
[handling]
hold       = "under the jaw"
lift       = "two people"
dryer      = "never on the head"
stop       = "licks her lips"
rest_every = "20 min"
comes_with = ["red collar", "towel"]
[bath]
before  = "slicker and comb"
shampoo = { product = "oat", dwell = "4 min" }
dry     = "towel, then force dryer"
[trim]
style       = "natural-tidy"
visit_every = "8 weeks"
chest       = { shears = "thinning", leave = "30 mm", note = "into the legs" }
"right hock" = { comb = "1/2 in", over = "30" }
[finish]
ears   = "straight edge"
extras = "no bow"
[preferences]
dislikes = ["rounded ears", "scent"]
)";

constexpr const char* salon = R"([salon]
name = "Lantern Street Dogs"
phone = "555 0170"
[kit]
blades = ["30", "10"]
combs = ["1/2 in"]
shears = ["straight", "thinning"]
bottle = "500 ml"
[products.oat]
name = "oat shampoo"
kind = "shampoo"
dilution = "10:1"
)";
}  // namespace

TEST_CASE("a card says how the pet looks", "[card]") {
  Desk table = desk(full, salon);
  const test::Kennel kennel = table.kennel();
  const SheetInput input = table.input(kennel);
  CHECK(test::text_of(looks_text({input, table.voice()})) == "Spitz cross, orange sable");
  CHECK(test::without_space(test::text_of(facts_text({input, table.voice()}))) ==
        "male,neutered·5years·4.6kg(undated)");
}

TEST_CASE("ages are weeks, then months, then years", "[card]") {
  const auto age = [](const char* born) {
    Desk table = desk(std::string("[pet]\nname = \"Rex\"\nborn = ") + born + "\n");
    return test::text_of(facts_text({table.input(table.kennel()), table.voice()}));
  };
  // Today is 24 November 2026.
  CHECK(age("2026-09-29") == "8\u00A0weeks");
  CHECK(age("2026-07-25") == "17\u00A0weeks");
  CHECK(age("2026-07-24") == "4\u00A0months");
  CHECK(age("2024-11-25") == "23\u00A0months");
  CHECK(age("2024-11-24") == "2\u00A0years");
}

TEST_CASE("every value that the card promises is in its rows", "[card]") {
  Desk table = desk(full, salon);
  const test::Kennel kennel = table.kennel();
  const auto row = [&](const char* label) { return row_of(table, kennel, label); };
  CHECK(row("Handle") ==
        "Hold: Under the jaw. Lift: Two people. Dry: Never on the head. Stop if: Licks her lips. "
        "Rest "
        "every 20\u202Fmin.");
  CHECK(row("Trim") ==
        "Natural tidy, except:\n"
        "* Chest: thinning shears, 30\u202Fmm; into the legs\n"
        "* Right hock: ½\u202Fin comb over #30");
  CHECK(row("Bath") ==
        "Slicker and comb. Oat shampoo 45\u202Fml\u00A0+\u00A0455\u202Fml\u00A0water, 4\u202Fmin.");
  CHECK(row("Dry") == "Towel, then force dryer. Never on the head.");
  CHECK(row("Finish") ==
        "Ears straight edge · tail tidied · feet hare foot · nails clip, then grind · no bow");
  CHECK(row("Not wanted") == "Rounded ears, scent");
  CHECK(row("Collects") == "Priya or Tom. Own things: red collar and towel.\n____ Collects at");
  // It was never here, so it is due now; one line says so.
  CHECK(row("Due again") == "No groom on file.");
}

TEST_CASE("every row is on the page, in order, on every paper", "[card]") {
  Desk table = desk(full, salon);
  const test::Kennel kennel = table.kennel();
  for (const Paper& paper : papers) {
    const auto sheet = table.card(kennel, paper.name);
    INFO(paper.name << table.said());
    REQUIRE(sheet);
    const std::string text = test::without_space(test::text_of(sheet->page.frame));
    std::size_t at = 0;
    for (const char* next : {"Rex",
                             "Spitz cross",
                             "orange sable",
                             "4.6kg",
                             "Alerts",
                             "Handle",
                             "under the jaw",
                             "Never on the head.",
                             "Trim",
                             "Natural tidy, except:",
                             "Chest",
                             "Right hock",
                             "Bath",
                             "45ml+455ml water",
                             "Dry",
                             "then force dryer",
                             "Finish",
                             "Not wanted",
                             "Collects",
                             "Priya or Tom",
                             "red collar",
                             "Due again",
                             "In",
                             "Brush-out",
                             "Check",
                             "Collects at",
                             "Done by",
                             "Lantern Street Dogs",
                             "24 November 2026"}) {
      std::string wanted = test::without_space(next);
      std::size_t found = text.find(wanted, at);
      if (found == std::string::npos) {  // a text begins in upper case
        wanted.front() = static_cast<char>(std::toupper(wanted.front()));
        found = text.find(wanted, at);
      }
      INFO(paper.name << ": " << next);
      REQUIRE(found != std::string::npos);
      at = found;
    }
  }
}

TEST_CASE("nothing of how to reach the owner unless the salon asks", "[card]") {
  for (const bool asks : {false, true}) {
    Desk table = desk(
        full, std::string("[salon]\nname = \"S\"\n") + (asks ? "contact_on_card = true\n" : ""));
    const auto sheet = table.card(table.kennel(), "A4");
    REQUIRE(sheet);
    for (const char* what : {"555 0101", "r@adeyemi.example", "Mill Row", "R. Adeyemi"}) {
      INFO(what);
      CHECK(says(sheet->page.frame, what) == asks);
    }
    // What the file says about itself is read by others too.
    const std::string about = sheet->info.title + sheet->info.subject;
    CHECK(about.find("555") == std::string::npos);
    CHECK(about.find("Adeyemi") == std::string::npos);
  }
}

TEST_CASE("what the salon's page keeps to itself is on no sample's card", "[card]") {
  Desk table(test::sample("lantern-street"));
  for (const std::string& key : table.pets()) {
    const test::Kennel kennel = table.kennel(key);
    const auto sheet = table.card(kennel, "A4");
    REQUIRE(sheet);
    const Owner& owner = kennel.pet.owner;
    for (const std::string& what : {owner.phone, owner.email}) {
      if (!what.empty()) CHECK_FALSE(says(sheet->page.frame, what));
    }
    for (const std::string& line : owner.address) CHECK_FALSE(says(sheet->page.frame, line));
  }
}

TEST_CASE("parts that differ from the style carry a diamond", "[card]") {
  Desk table = desk(full, salon);
  const auto marks = [](const Frame& frame) {
    std::size_t diamonds = 0;
    for (const Mark& mark : frame.marks) {
      const auto* path = std::get_if<PathMark>(&mark);
      diamonds += path && path->fill == Ink::text && path->contours.front().curves.size() == 3;
    }
    return diamonds;
  };
  const auto columns = table.card(table.kennel(), "A4");
  REQUIRE(columns);
  CHECK(columns->page.layout == "asking, columns");
  CHECK(marks(columns->page.frame) == 2);
  CHECK(to_text(columns->page.frame).find("curves 3 closed fill text") != std::string::npos);
  std::string crowded = full;
  for (int i = 0; i < 4; ++i) {
    crowded +=
        "[[alert]]\nlevel = \"warning\"\ntext = \"Snaps when a rear foot is held.\"\n"
        "do = \"Second person at the head.\"\n";
  }
  Desk other = desk(crowded, salon);
  const auto small = other.card(other.kennel(), "A6");
  INFO(other.said());
  REQUIRE(small);
  REQUIRE(small->page.layout != "asking, columns");
  CHECK(marks(small->page.frame) == 2);
  CHECK(says(small->page.frame, "Chest: thinning shears"));
  CHECK(says(small->page.frame, "Right hock"));
}

TEST_CASE("a trim that is the style's says so and nothing else", "[card]") {
  Desk table = desk("[pet]\nname = \"Rex\"\n[trim]\nstyle = \"smooth-tidy\"\n");
  const test::Kennel kennel = table.kennel();
  CHECK(row_of(table, kennel, "Trim") == "Smooth tidy, as it is.");
  const auto sheet = table.card(kennel);
  REQUIRE(sheet);
  CHECK_FALSE(says(sheet->page.frame, "◆"));
}

TEST_CASE("a trim without a style lists everything, and nothing stands out", "[card]") {
  Desk table =
      desk("[pet]\nname = \"Rex\"\n[trim]\nback = { blade = \"4F\" }\ntail = { brush = true }\n");
  CHECK(row_of(table, table.kennel(), "Trim") == "Back: #4F\nTail: brush, no cut");
}

TEST_CASE("what is not known waits for a hand", "[card]") {
  Desk table = desk("[pet]\nname = \"Rex\"\n");
  const test::Kennel kennel = table.kennel();
  CHECK(row_of(table, kennel, "Trim") == "____ Ask, and write it here:");
  CHECK(row_of(table, kennel, "Collects") == "____ Collects at");
  CHECK(row_of(table, kennel, "Due again") == "No groom on file.");
  CHECK(row_of(table, kennel, "Weight") == "____ Weight");
  for (const char* none : {"Handle", "Bath", "Dry", "Finish", "Not wanted", "Accepted", "Owner",
                           "Growth", "Drawer", "Today"}) {
    CHECK(row_of(table, kennel, none) == "");
  }
  for (const char* paper : {"A4", "A5", "A6"}) {
    const auto sheet = table.card(kennel, paper);
    INFO(table.said());
    REQUIRE(sheet);
    for (const char* label : {"Alerts", "Health", "Ask, and write it here:", "Wishes", "Vet",
                              "Collects at", "Due again", "Weight", "Done by"}) {
      INFO(paper << ": " << label);
      CHECK(says(sheet->page.frame, label));
    }
    const auto dotted = std::ranges::count_if(sheet->page.frame.marks, [](const Mark& mark) {
      const auto* stroke = std::get_if<StrokeMark>(&mark);
      return stroke && stroke->dash == Dash::dotted;
    });
    CHECK(dotted == 8);
  }
}

TEST_CASE("a card knows nothing of the dog and still names it", "[card]") {
  Desk table = desk("[pet]\nname = \"Rex\"\n");
  const auto sheet = table.card(table.kennel());
  REQUIRE(sheet);
  CHECK(sheet->info.title == "Rex: kennel card");
  CHECK(sheet->info.date == "2026-11-24");
  CHECK(sheet->info.language == "en-GB");
  CHECK(table.said() == "");
}

TEST_CASE("a text ends as a sentence does", "[card]") {
  CHECK(sentence("no scent") == "No scent.");
  CHECK(sentence(" Really? ") == "Really?");
  CHECK(sentence("tail;") == "Tail;.");
  CHECK(sentence("") == "");
  CHECK(sentence("犬。") == "犬。");
  CHECK(sentence("wait…") == "Wait…");
  // The last byte of these letters is also the last byte of "…", "。" or "！" in UTF-8.
  CHECK(sentence("Pawł") == "Pawł.");
  CHECK(sentence("Á") == "Á.");
  CHECK(sentence("voilà ¦") == "Voilà ¦.");
}

TEST_CASE("boxes to tick are the work of this plan, in its order", "[card]") {
  const auto ticks = [](const std::string& pet) {
    Desk table = desk("[pet]\nname = \"Rex\"\n" + pet);
    std::string out;
    for (const std::string& one : card_ticks({table.input(table.kennel()), table.voice()})) {
      out += (out.empty() ? "" : " ") + one;
    }
    return out;
  };
  const std::string none = ticks("[bath]\nnone = true\n");
  CHECK(none.starts_with("In"));
  CHECK(none.ends_with("Check"));
  CHECK(none.find("Bath") == std::string::npos);
  CHECK(none.find("Dry") == std::string::npos);
  CHECK(none.find("Clip") == std::string::npos);
  CHECK(ticks(R"(coat = "curly"
[bath]
before  = "line brush"
shampoo = "oat"
[trim]
back  = { blade = "4F" }
chest = { shears = "curved", leave = "9 mm" }
tail  = { shears = "curved", leave = "9 mm" }
)") == "In Brush-out Bath Nails Dry Clip Scissor Finish Check");
}

TEST_CASE("what is stripped has its own box, before the bath, and nothing is clipped", "[card]") {
  Desk table = desk(
      "[pet]\nname = \"Rex\"\ncoat = \"wire\"\n[bath]\nshampoo = \"oat\"\n"
      "[trim]\nback = { strip = \"hand\" }\nchest = { shears = \"curved\", leave = \"30 mm\" }\n");
  const test::Kennel kennel = table.kennel();
  std::string out;
  for (const std::string& one : card_ticks({table.input(kennel), table.voice()})) out += one + " ";
  CHECK(out.find("Clip") == std::string::npos);
  REQUIRE(out.find("Strip") != std::string::npos);
  CHECK(out.find("Strip") < out.find("Bath"));
  CHECK(out.find("Bath") < out.find("Scissor"));
  CHECK(row_of(table, kennel, "Bath").starts_with("Cut before the bath: Back. "));
}

TEST_CASE("a bath after all cutting says so", "[card]") {
  Desk table = desk(
      "[pet]\nname = \"Rex\"\n[bath]\nshampoo = \"oat\"\nwhen = \"after clipping\"\n"
      "[trim]\nback = { blade = \"4F\" }\n");
  CHECK(row_of(table, table.kennel(), "Bath").starts_with("Cut before the bath. "));
}

TEST_CASE("where left and right matter, a card with room shows the place on the dog", "[card]") {
  const auto figure = [](const std::string& place, const char* paper) {
    Desk table = desk(
        "[pet]\nname = \"Rex\"\ncoat = \"double\"\n[[alert]]\nlevel = \"caution\"\n"
        "text = \"Sore.\"\navoid = [\"" +
        place + "\"]\n[handling]\nhold = \"under the jaw\"\n");
    const auto sheet = table.card(table.kennel(), paper);
    REQUIRE(sheet);
    std::string alt;
    for (const Mark& mark : sheet->page.frame.marks) {
      const auto* tag = std::get_if<OpenTag>(&mark);
      if (tag != nullptr && tag->role == Structure::figure) alt += tag->alt;
    }
    return alt;
  };
  for (const char* paper : {"A5", "letter"}) {
    CHECK(figure("left hock", paper).find("no tool on: left hock") != std::string::npos);
    CHECK(figure("belly", paper).empty());
  }
}

TEST_CASE("a card asks for the next day once: in words, or by a line to write on", "[card]") {
  Desk table = test::desk("[pet]\nname = \"Rex\"\ncoat = \"curly\"\n");
  const auto sheet = table.card(table.kennel());
  REQUIRE(sheet);
  const std::string text = test::text_of(sheet->page.frame);
  INFO(text);
  CHECK(test::says(sheet->page.frame, "No groom on file."));
  const auto first = text.find("Due again");
  REQUIRE(first != std::string::npos);
  CHECK(text.find("Due again", first + 1) == std::string::npos);
}

TEST_CASE("a card names no tool for a place that an alert keeps every tool from", "[card]") {
  Desk table = test::desk(
      "[pet]\nname = \"Rex\"\n[[alert]]\nlevel = \"caution\"\ntext = \"Wart.\"\n"
      "avoid = [\"left cheek\"]\n[trim]\nback = { blade = \"4F\" }\n"
      "\"left cheek\" = { brush = true, leave = \"30 mm\" }\n");
  CHECK(row_of(table, table.kennel(), "Trim") == "Back: #4F\nLeft cheek: no tool");
}

TEST_CASE("what is known of the health stands beside the conditions", "[card]") {
  Desk table = test::desk(
      "[pet]\nname = \"Rex\"\n[health]\nconditions = [\"arthritis\"]\n"
      "notes = \"chills in minutes\"\n");
  CHECK(row_of(table, table.kennel(), "Health") == "Arthritis. Chills in minutes.");
  Desk notes = test::desk("[pet]\nname = \"Rex\"\n[health]\nnotes = \"chills in minutes\"\n");
  CHECK(row_of(notes, notes.kennel(), "Health") == "Chills in minutes.");
}
}  // namespace furnish
