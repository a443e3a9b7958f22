#include "sheet/not_done.h"

#include <catch2/catch.hpp>

#include "sheet/desk.h"
#include "sheet/rows.h"
#include "sheet/shipped_words.h"
#include "sheet/style_words.h"
#include "sheet/told_words.h"

// A dog that was not done is nowhere said to have been groomed, and its owner reads why.

namespace furnish {
namespace {
using test::Desk;

constexpr const char* rex = R"(
[pet]
name = "Rex"
coat = "double"
weight = "10 kg"
[owner]
language = "LANGUAGE"
[trim]
style = "natural-tidy"
visit_every = "8 weeks"
chest = { shears = "straight", leave = "20 mm" }
)";
const std::string groomed =
    "groomer = \"Ines\"\nminutes = 80\n[went_out]\nchest = { length = \"20 mm\" }\n"
    "[[product]]\nname = \"Oat wash\"\nkind = \"shampoo\"\n";

/// Rex was groomed in September; in November the text holds.
Desk after(const std::string& today, std::string language = "en") {
  std::string pet = rex;
  pet.replace(pet.find("LANGUAGE"), 8, language);
  return Desk({{"pets/rex.toml", pet},
               {"salon.toml", "[salon]\nname = \"Demo\"\n"},
               {"visits/rex/2026-09-29.toml", "date = 2026-09-29\n" + groomed},
               {"visits/rex/2026-11-24.toml", "date = 2026-11-24\n" + today}});
}

std::string text(const std::optional<Sheet>& sheet) {
  REQUIRE(sheet);
  return test::without_space(test::text_of(sheet->page.frame));
}
bool has(const std::string& all, std::string_view words) {
  return all.find(test::without_space(words)) != std::string::npos;
}

constexpr Date next_day = test::demo_day + std::chrono::days(1);
}  // namespace

TEST_CASE("an owner reads what was not done and why, and nothing of a groom", "[care][note]") {
  // What a visit was begun with is planned, and is no bath that was given.
  Desk table = after(
      "not_done = \"came in coughing\"\n"
      "[[product]]\nname = \"Oat wash\"\nkind = \"shampoo\"\n");
  const auto kennel = table.kennel();
  for (const std::string& page :
       {text(table.care(kennel)), text(table.note(kennel, Audience::everyone))}) {
    INFO(page);
    CHECK(has(page, "We did not groom Rex this time."));
    CHECK(has(page, "Why: came in coughing."));
    CHECK(has(page, "Please let a vet see Rex before the next visit."));
    for (const char* never : {"We washed", "We brushed", "brushed, not cut", "scissored", "planned",
                              "within a week of the bath", "Oat wash", "20 mm", "as it left"}) {
      INFO(never);
      CHECK_FALSE(has(page, never));
    }
  }
  const std::string file = text(table.note(kennel, Audience::staff));
  CHECK(has(file, "Not done Came in coughing."));
  CHECK_FALSE(has(file, "as planned"));
  CHECK_FALSE(has(file, "Oat wash"));
  CHECK(has(file, "Drawn as it came in, from the lengths."));
}

TEST_CASE("what was done all the same is said, and no more", "[care][note]") {
  Desk table = after(
      "not_done = \"too stressed today\"\ndid = [\"bath\", \"nails\"]\n"
      "[done]\nbelly = { blade = \"10\" }\n");
  const auto kennel = table.kennel();
  const std::string care = text(table.care(kennel));
  INFO(care);
  CHECK(has(care, "This time we did only a part of the groom."));
  CHECK(has(care, "Why: too stressed today."));
  CHECK(has(care, "We washed and dried Rex."));
  CHECK(has(care, "We did the nails."));
  CHECK(has(care, "Belly: clipped to about"));
  CHECK(has(care, "within a week of the bath"));
  CHECK_FALSE(has(care, "Please let a vet"));
  CHECK_FALSE(has(care, "scissored"));
  const std::string file = text(table.note(kennel, Audience::staff));
  CHECK(has(file, "We washed and dried Rex. We did the nails."));
  CHECK(has(file, "Belly: #10"));
  CHECK_FALSE(has(file, "All else as planned"));
}

TEST_CASE("a vet is asked for in each language, by the salon's words for it", "[care]") {
  Desk spanish = after("not_done = { en = \"came in coughing\", es = \"llegó con tos\" }\n", "es");
  spanish.speak("es");
  const std::string page = text(spanish.care(spanish.kennel()));
  INFO(page);
  CHECK(has(page, "Esta vez no arreglamos a Rex."));
  CHECK(has(page, "Motivo: llegó con tos."));
  CHECK(has(page, "lleve a Rex al veterinario"));
  for (const char* why : {"owner called it off", "no cough, owner ill", "bit, so we stopped"}) {
    Desk table = after("not_done = \"" + std::string(why) + "\"\n");
    INFO(why);
    CHECK_FALSE(has(text(table.care(table.kennel())), "Please let a vet"));
  }
}

TEST_CASE("the next time the sheets say that it was not done, why, and when it was last",
          "[card][style]") {
  Desk table = after("groomer = \"Bo\"\nnot_done = \"coughs\"\n[came_in]\nbehaviour = \"tired\"\n");
  const auto kennel = table.kennel("rex", next_day);
  CHECK(test::row_of(table, kennel, "Last time") ==
        "24 Nov, Bo. Not done: Coughs. Behaviour: Tired. Groomed last: 29 Sept.");
  const SheetInput input = table.input(kennel, "A4", kinds::style);
  const std::vector<SheetRow> visits = style_visits({input, table.voice()});
  REQUIRE(visits.size() == 2);
  CHECK(test::text_of(visits[0].text).starts_with("24 Nov, Bo. Not done: Coughs."));
  // The groom before it stands under it, with its minutes.
  CHECK(test::text_of(visits[1].text).starts_with("29 Sept, Ines, 1"));
}

TEST_CASE("a file that says only how the dog came in is not written up", "[note]") {
  Desk table = after("groomer = \"Bo\"\n[came_in]\nears = { mats = 2 }\n");
  const auto kennel = table.kennel();
  for (const Audience reader : {Audience::staff, Audience::everyone}) {
    const std::string page = text(table.note(kennel, reader));
    INFO(page);
    CHECK(has(page, "Nobody has written yet what was done. Nothing counts as done."));
    CHECK_FALSE(has(page, "as planned"));
  }
  CHECK(table.said().find("does not say what was done: nothing counts as done") !=
        std::string::npos);
  CHECK_FALSE(has(text(table.care(kennel)), "We brushed"));
  for (const char* said : {"unfinished = false\n", "minutes = 60\n"}) {
    Desk done = after(std::string(said) + "[came_in]\nears = { mats = 2 }\n");
    INFO(said);
    CHECK(has(text(done.note(done.kennel(), Audience::staff)), "as planned"));
  }
}

// The desk's page asks the same; tests/desk/browser/front_desk.py has the same sentences.
TEST_CASE("a bite is known by the words of each language, and what was none is none") {
  struct Said {
    const char* language;
    std::vector<const char*> some, none;
  };
  const std::vector<Said> cases{
      {"en",
       {"He bit me.", "tried to nip", "bites at feet", "Snapped twice", "went for my hand",
        "drew blood", "got me in the thumb", "growled and lunged", "hat gebissen", "bissig",
        "Mordió a Ines", "a mordu", "bit the lead, then bit me"},
       {"never bites", "was a bit shy", "did not snap once", "bitter spray", "bit his lead",
        "bit the brush", "went for a walk"}},
      {"de",
       {"hat gebissen", "biss zu", "zwickt"},
       {"ein bisschen scheu", "hat nicht gebissen", "beißt nie", "hat in die Bürste gebissen"}},
      {"es", {"me mordió", "muerde"}, {"no mordió", "nunca muerde", "mordió el cepillo"}},
      {"fr", {"il a mordu", "pince"}, {"n’a pas mordu", "ne mord jamais", "a mordu la laisse"}},
      {"pt", {"mordeu a mão"}, {"não mordeu"}},
      {"vi", {"nó cắn tay"}, {"không cắn"}},
      {"ar", {"عض يدي", "يعض"}, {"لم يعض", "عضلة"}}};
  for (const Said& one : cases) {
    const test::ShippedWords words(one.language);
    INFO(one.language);
    CHECK(tells_of_bite(words.words().term("stock", "snaps"), words.words()));
    CHECK(tells_of_bite(words.words().term("stock", "bit-so-we-stopped"), words.words()));
    CHECK(asks_for_vet(words.words().term("stock", "came-in-coughing"), words.words()));
    CHECK(asks_for_vet(words.words().term("stock", "came-in-hot-and-panting"), words.words()));
    CHECK(asks_for_vet(words.words().term("stock", "needs-a-vet-first"), words.words()));
    for (const char* calm : {"too-stressed-today", "owner-called-it-off"}) {
      CHECK_FALSE(asks_for_vet(words.words().term("stock", calm), words.words()));
    }
    for (const char* said : one.some) {
      INFO(said);
      CHECK(tells_of_bite(said, words.words()));
    }
    for (const char* said : one.none) {
      INFO(said);
      CHECK_FALSE(tells_of_bite(said, words.words()));
    }
  }
}

// The skin lies in felt and is cut with it: common practice, no source.
TEST_CASE("an owner reads where mats were left, what not to do there, and to come back", "[care]") {
  const std::string pet =
      "[pet]\nname = \"Rex\"\ncoat = \"drop\"\n[home]\nbath_every = \"2 weeks\"\n";
  const std::string came = "[came_in]\nears = { mats = 3, side = \"left\" }\nlegs = { mats = 4 }\n";
  const auto page = [&](const std::string& visit, const std::string& more = {}) {
    Desk table({{"pets/rex.toml", pet + more},
                {"salon.toml", "[salon]\nname = \"Demo\"\n"},
                {"visits/rex/2026-11-24.toml", "date = 2026-11-24\n" + visit}});
    return text(table.care(table.kennel()));
  };
  const std::string left = page("not_done = \"bit, so we stopped\"\ndid = [\"bath\"]\n" + came);
  INFO(left);
  CHECK(has(left, "CAUTION Still matted to the skin: left ear and legs."));
  CHECK(has(left, "Do not brush, wet or cut there: the skin lies in the mat."));
  CHECK(has(left, "Ask us soon for a day to clip it off."));
  CHECK(has(left, "all over (except: left ear and legs)"));
  CHECK_FALSE(has(left, "Every 2 weeks"));
  CHECK(has(page("not_done = \"bit\"\n" + came, "[health]\nconditions = [\"thin skin\"]\n"),
            "this skin tears. Call your vet soon."));
  // What the clipper took off, and what a comb opens, are no such mats.
  for (const std::string& visit :
       {"not_done = \"bit\"\n" + came +
            "[done]\nears = { blade = \"10\" }\nlegs = { blade = \"10\" }\n",
        std::string("not_done = \"bit\"\n[came_in]\nears = { mats = 2 }\n")}) {
    const std::string combed = page(visit);
    INFO(combed);
    CHECK_FALSE(has(combed, "Still matted"));
    CHECK_FALSE(has(combed, "except:"));
    CHECK(has(combed, "Every 2 weeks"));
  }
}

TEST_CASE("what a visit did not do is no groom on file, and the visit is", "[card]") {
  Desk table(
      {{"pets/rex.toml", "[pet]\nname = \"Rex\"\n"},
       {"visits/rex/2026-11-24.toml", "date = 2026-11-24\nnot_done = \"came in coughing\"\n"}});
  const std::string card = text(table.card(table.kennel("rex", next_day)));
  INFO(card);
  CHECK(has(card, "Came in coughing."));
  CHECK(has(card, "No groom on file"));
  CHECK_FALSE(has(card, "No visit on file"));
}
}  // namespace furnish
