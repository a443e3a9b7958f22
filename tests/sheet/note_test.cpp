#include "sheet/note.h"

#include <catch2/catch.hpp>

#include "model/for_everyone.h"
#include "sheet/desk.h"
#include "sheet/note_rows.h"
#include "sheet/note_words.h"

namespace furnish {
namespace {
using test::Desk;

constexpr const char* rex = R"(
[pet]
name = "Rex"
coat = "double"
weight = "10 kg"
[trim]
style = "natural-tidy"
visit_every = "8 weeks"
)";

/// A salon with Rex and his visits, by their days.
Desk with_visits(std::map<std::string, std::string> visits, const std::string& pet = rex) {
  std::map<std::string, std::string> files{{"pets/rex.toml", pet},
                                           {"salon.toml", "[salon]\nname = \"Demo\"\n"}};
  for (auto& [day, text] : visits) {
    files["visits/rex/" + day + ".toml"] =
        "date = " + day + "\n" +
        (text.starts_with("unfinished") || text.starts_with("not_done") ? ""
                                                                        : "unfinished = false\n") +
        text;
  }
  return Desk(std::move(files));
}
}  // namespace

TEST_CASE("a plan that was followed everywhere is one line", "[note]") {
  Desk table = with_visits({{"2026-11-24", ""}});
  const auto sheet = table.note(table.kennel(), Audience::staff);
  REQUIRE(sheet);
  CHECK(test::says(sheet->page.frame, "Natural tidy, as planned everywhere."));
  CHECK_FALSE(test::says(sheet->page.frame, "instead of"));
}

TEST_CASE("what was done otherwise stands against the plan, a group once", "[note]") {
  Desk table =
      with_visits({{"2026-11-24", "[done]\nbody = { blade = \"7F\", why = \"matted\" }\n"}});
  const auto sheet = table.note(table.kennel(), Audience::staff);
  REQUIRE(sheet);
  CHECK(test::says(sheet->page.frame, "Body: #7F instead of brush, no cut. Matted."));
  CHECK(test::says(sheet->page.frame, "All else as planned."));
  const auto owners = table.note(table.kennel(), Audience::everyone);
  REQUIRE(owners);
  CHECK(test::says(owners->page.frame, "Body: clipped to about 3"));
  CHECK_FALSE(test::says(owners->page.frame, "Matted"));
  CHECK_FALSE(test::says(owners->page.frame, "#7F"));
}

TEST_CASE("a reason reaches the owner where it says so", "[note]") {
  Desk table = with_visits({{"2026-11-24",
                             "[done]\nbody = { blade = \"7F\", why = { text = \"matted\", for = "
                             "\"everyone\" } }\n"}});
  const auto owners = table.note(table.kennel(), Audience::everyone);
  REQUIRE(owners);
  CHECK(test::says(owners->page.frame, "mm. Matted."));
}

// The grades are common practice, no source.
TEST_CASE("mats say what their grade means", "[note]") {
  Desk table = with_visits({{"2026-11-24", "[came_in]\nears = { mats = 2, side = \"left\" }\n"}});
  const auto sheet = table.note(table.kennel(), Audience::staff);
  REQUIRE(sheet);
  CHECK(test::says(sheet->page.frame,
                   "Mats, grade 2 of 4: Left ear (mats that fingers and comb open)."));
}

TEST_CASE("a mat round a limb leads the page, for everyone", "[note]") {
  Desk table = with_visits({{"2026-11-24", "[came_in]\ntail = { mats = 4, encircling = true }\n"}});
  for (const Audience audience : {Audience::staff, Audience::everyone}) {
    const auto sheet = table.note(table.kennel(), audience);
    REQUIRE(sheet);
    CHECK(test::says(sheet->page.frame, "DANGER"));
    CHECK(test::says(sheet->page.frame, "See a vet today."));
  }
}

// More than a tenth, exactly (a hospital's leaflet on abnormal weight loss): 20.0 to 18.0 is not.
TEST_CASE("weight that was lost is said from more than a tenth on", "[note]") {
  for (const auto& [now, told] : {std::pair("18.0 kg", false), std::pair("17.9 kg", true)}) {
    Desk table = with_visits({{"2026-09-29", "weight = \"20.0 kg\"\n"},
                              {"2026-11-24", "weight = \"" + std::string(now) + "\"\n"}});
    const auto sheet = table.note(table.kennel(), Audience::everyone);
    REQUIRE(sheet);
    INFO(now);
    CHECK(test::says(sheet->page.frame, "That is more than a tenth.") == told);
  }
}

TEST_CASE("signatures only where something needs consent", "[note]") {
  const auto lines = [](const std::string& visit, const std::string& pet = rex) {
    Desk table = with_visits({{"2026-11-24", visit}}, pet);
    const auto sheet = table.note(table.kennel(), Audience::staff);
    INFO(table.said());
    REQUIRE(sheet);
    return test::says(sheet->page.frame, "Name, date, signature:");
  };
  CHECK_FALSE(lines(""));
  CHECK_FALSE(lines("[came_in]\nears = { mats = 2 }\n"));
  CHECK(lines("[came_in]\nears = { mats = 3 }\n"));
  CHECK_FALSE(
      lines("[came_in]\nears = { mats = 3 }\n[[consent]]\nto = \"cutting out\"\n"
            "by = \"Sam\"\non = 2026-11-24\n"));
  CHECK(lines("[[consent]]\nto = \"cutting out\"\nby = \"Sam\"\n"));
  const std::string shaved = std::string(rex) + "body = { blade = \"7F\" }\n";
  CHECK(lines("", shaved));
}

TEST_CASE("a rule accepted by the staff drops no line of the owner's", "[note]") {
  const std::string shaved = std::string(rex) +
                             "body = { blade = \"7F\" }\n[[accept]]\nrule = "
                             "\"double-coat-short\"\nreason = \"MARK\"\nsigned = 2026-01-01\n";
  Desk table = with_visits({{"2026-11-24", ""}}, shaved);
  const auto line = [&](Audience audience) {
    const auto sheet = table.note(table.kennel(), audience);
    REQUIRE(sheet);
    return test::says(sheet->page.frame, "I agree that the double coat is clipped short.");
  };
  CHECK(line(Audience::everyone));
  CHECK_FALSE(line(Audience::staff));
}

TEST_CASE("alerts for everyone are on the owner's copy, gravest first, the staff's are not",
          "[note]") {
  const std::string pet = std::string(rex) +
                          "[[alert]]\nlevel = \"warning\"\ntext = \"oat gives hives\"\ndo = "
                          "\"read labels\"\nfor = \"everyone\"\n[[alert]]\nlevel = \"danger\"\n"
                          "text = \"bites\"\n";
  Desk table =
      with_visits({{"2026-11-24", "[came_in]\ntail = { mats = 4, encircling = true }\n"}}, pet);
  const auto kennel = table.kennel();
  const auto owners = table.note(kennel, Audience::everyone);
  REQUIRE(owners);
  const std::string text = test::without_space(test::text_of(owners->page.frame));
  CHECK(text.find("Oatgiveshives.") != std::string::npos);
  CHECK(text.find("Readlabels.") != std::string::npos);
  CHECK(text.find("DANGER") < text.find("WARNING"));
  CHECK_FALSE(test::says(owners->page.frame, "Bites."));
  const auto care = table.care(kennel);
  REQUIRE(care);
  CHECK(test::says(care->page.frame, "Oat gives hives. Read labels."));
  CHECK_FALSE(test::says(care->page.frame, "Bites."));
}

TEST_CASE("the figure is dashed where it came with more coat, and numbered like the findings",
          "[note]") {
  Desk table =
      with_visits({{"2026-09-29", "[went_out]\nchest = { length = \"30 mm\" }\n"},
                   {"2026-11-24",
                    "[came_in]\nchest = { length = \"45 mm\" }\n[[finding]]\nregion = \"belly\"\n"
                    "side = \"right\"\nwhat = \"lump\"\n[[finding]]\nregion = \"ears\"\nwhat = "
                    "\"red\"\nfor = \"everyone\"\n"}});
  const auto kennel = table.kennel();
  const SheetInput input = table.input(kennel, "A4", kinds::note);
  const NoteInput note{kennel.plan, kennel.visits.back(), kennel.visits};
  const SheetVoice voice = table.voice();
  const NoteDesk desk{{input, voice}, note};
  const FigureInput figure = note_figure(desk, Side::left);
  const auto chest = static_cast<std::size_t>(Region::chest);
  REQUIRE(figure.came_in[chest]);
  CHECK(*figure.came_in[chest] == LengthRange{45_mm, 45_mm});
  REQUIRE(figure.spots.size() == 2);
  CHECK(figure.spots[0].number == 1);
  CHECK(figure.spots[1].place.region == Region::ears);
  CHECK(note_needs_both_sides(desk));
  const Visit open = for_everyone(kennel.visits.back());
  const NoteInput told{kennel.plan, open, kennel.visits};
  const SheetInput owners = table.input(kennel, "A4", kinds::owner_note);
  const NoteDesk for_owner{{owners, voice}, told};
  CHECK(note_findings(for_owner).size() == 1);
  CHECK(note_figure(for_owner, Side::left).spots.size() == 1);
  CHECK_FALSE(note_needs_both_sides(for_owner));
}

TEST_CASE("of a visit that nobody finished no planned length is drawn or said", "[note]") {
  const std::string planned =
      std::string(rex) + "chest = { shears = \"straight\", leave = \"20 mm\" }\n";
  Desk table = with_visits(
      {{"2026-11-24",
        "unfinished = true\n[came_in]\nbelly = { length = \"45 mm\" }\n[done]\nbelly = { shears = "
        "\"straight\", leave = \"38 mm\" }\n[[product]]\nname = \"oat shampoo\"\n"}},
      planned);
  const auto kennel = table.kennel();
  const SheetInput input = table.input(kennel, "A4", kinds::note);
  const NoteInput note{kennel.plan, kennel.visits.back(), kennel.visits};
  const SheetVoice voice = table.voice();
  const FigureInput figure = note_figure({{input, voice}, note}, Side::left);
  CHECK_FALSE(figure.left[static_cast<std::size_t>(Region::chest)]);
  CHECK(figure.left[static_cast<std::size_t>(Region::belly)] == LengthRange{45_mm, 45_mm});
  CHECK(figure.alt.find("20") == std::string::npos);
  CHECK(figure.alt.starts_with("Rex, as it came in"));
  for (const Audience reader : {Audience::staff, Audience::everyone}) {
    const auto sheet = table.note(kennel, reader);
    REQUIRE(sheet);
    CHECK(test::says(sheet->page.frame,
                     "Drawn as it came in, from the lengths: this visit is not done."));
    CHECK_FALSE(test::says(sheet->page.frame, "as it left"));
    CHECK_FALSE(test::says(sheet->page.frame, "Oat shampoo"));
    CHECK(test::says(sheet->page.frame, "38") == (reader == Audience::staff));
  }
  // The same visit, done, is drawn as planned.
  Desk done = with_visits({{"2026-11-24", ""}}, planned);
  const auto after = done.kennel();
  const SheetInput left = done.input(after, "A4", kinds::note);
  const SheetVoice said = done.voice();
  CHECK(note_figure({{left, said}, {after.plan, after.visits.back(), after.visits}}, Side::left)
            .left[static_cast<std::size_t>(Region::chest)] == LengthRange{20_mm, 20_mm});
}

TEST_CASE("what is learned says from how many visits", "[note]") {
  Desk table = with_visits({{"2026-08-04", "[went_out]\nchest = { length = \"30 mm\" }\n"},
                            {"2026-09-29",
                             "[came_in]\nchest = { length = \"44 mm\" }\n"
                             "[went_out]\nchest = { length = \"30 mm\" }\n"},
                            {"2026-11-24", "[came_in]\nchest = { length = \"44 mm\" }\n"}});
  const auto sheet = table.note(table.kennel(), Audience::staff);
  REQUIRE(sheet);
  CHECK(test::says(sheet->page.frame, "in 30 days, learned from 3 visits."));
}

TEST_CASE("a record says how long a product was left on only if the visit does", "[note]") {
  const auto note = [](const std::string& product) {
    Desk table({{"pets/rex.toml", rex},
                {"salon.toml",
                 "[salon]\nname = \"Demo\"\n[products.mild]\nname = \"Mild shampoo\"\nkind = "
                 "\"shampoo\"\ndwell = \"2 min\"\n"},
                {"visits/rex/2026-11-24.toml",
                 "date = 2026-11-24\nunfinished = false\n[[product]]\n" + product}});
    const auto sheet = table.note(table.kennel(), Audience::staff);
    REQUIRE(sheet);
    return test::without_space(test::text_of(sheet->page.frame));
  };
  const auto has = [](const std::string& page, std::string_view words) {
    return page.find(test::without_space(words)) != std::string::npos;
  };
  const std::string named = note("product = \"mild\"\n");
  CHECK(has(named, "Mild shampoo."));
  CHECK_FALSE(has(named, "2 min"));
  const std::string own = note("product = \"mild\"\ndwell = \"4 min\"\n");
  CHECK(has(own, "Mild shampoo, left on 4 min."));
  CHECK_FALSE(has(own, "leave on"));
  CHECK(has(note("name = \"Oat\"\nkind = \"shampoo\"\ndwell = \"5 min\"\n"), "left on 5 min"));
}
}  // namespace furnish
