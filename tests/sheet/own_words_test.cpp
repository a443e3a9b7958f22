#include "sheet/own_words.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <map>

#include "model/for_everyone.h"
#include "page/shaped_line.h"
#include "sheet/desk.h"
#include "sheet/shipped_words.h"

namespace furnish::test {
namespace {
constexpr const char* translated[] = {"es", "fr", "de", "pt", "vi", "ar"};

/// What a page says, apart by the language it is marked with; "" is the page's own.
std::map<std::string, std::string> by_language(const Frame& frame) {
  std::map<std::string, std::string> out;
  std::vector<std::string> open{""};
  for (const Mark& mark : frame.marks) {
    if (const auto* tag = std::get_if<OpenTag>(&mark)) {
      open.push_back(tag->language.empty() ? open.back() : tag->language);
    } else if (std::holds_alternative<CloseTag>(mark)) {
      open.pop_back();
    } else if (const auto* text = std::get_if<TextMark>(&mark)) {
      out[open.back()] += text->line->text() + " ";
    }
  }
  return out;
}

bool has(const std::string& text, std::string_view words) {
  return without_space(text).find(without_space(words)) != std::string::npos;
}

Desk visited(const std::string& visit, const std::string& salon = {}) {
  return Desk({{"salon.toml", salon},
               {"pets/rex.toml", "[pet]\nname = \"Rex\"\ncoat = \"curly\"\n"},
               {"visits/rex/2026-11-24.toml", "date = 2026-11-24\nunfinished = false\n" + visit}});
}

constexpr const char* finding = R"(
[[finding]]
region = "belly"
side = "left"
for = "everyone"
)";

/// Every text of a visit that an owner may read.
std::vector<FreeText> texts_of(const Visit& visit) {
  std::vector<FreeText> out{visit.told, visit.finish, visit.nails, visit.extras};
  const CameIn& in = visit.came_in;
  for (const FreeText& one :
       {in.ears, in.eyes, in.nails, in.parasites, in.soil, in.shedding, in.skin}) {
    out.push_back(one);
  }
  for (const auto* states : {&in.regions, &visit.went_out}) {
    for (const RegionState& state : *states) {
      for (const FreeText& one : {state.soil, state.shedding, state.skin, state.note}) {
        out.push_back(one);
      }
    }
  }
  for (const PlacedEntry& rule : visit.done) out.push_back(rule.entry.why);
  for (const Finding& one : visit.findings) {
    out.push_back(one.what);
    out.push_back(one.advised);
  }
  for (const Photo& photo : visit.photos) out.push_back(photo.caption);
  for (const Consent& consent : visit.consents) out.push_back(consent.to);
  std::erase_if(out, [](const FreeText& one) { return one.empty(); });
  return out;
}
}  // namespace

TEST_CASE("a text that was given in the page's language is the one it has", "[own-words]") {
  Desk table =
      visited("told = { en = \"Vet this week, please.\", es = \"Al veterinario, por favor.\" }");
  table.speak("es-MX");
  const auto care = table.care(table.kennel());
  INFO(table.said());
  REQUIRE(care);
  const auto said = by_language(care->page.frame);
  CHECK(has(said.at(""), "Al veterinario, por favor."));
  CHECK(said.size() == 1);
  CHECK_FALSE(table.says("other-language"));
}

TEST_CASE("a stock phrase is said in the page's language", "[own-words]") {
  Desk table =
      visited(std::string(finding) + "what = \"Lump, pea-sized.\"\nadvised = \"vet this week\"\n");
  for (const char* language : translated) {
    INFO(language);
    table.speak(language);
    const auto care = table.care(table.kennel());
    REQUIRE(care);
    const auto said = by_language(care->page.frame);
    CHECK(said.size() == 1);
    CHECK_FALSE(has(said.at(""), "lump"));
    CHECK_FALSE(has(said.at(""), "this week"));
  }
  CHECK_FALSE(table.says("other-language"));
  table.speak("es");
  CHECK(says(table.care(table.kennel())->page.frame,
             "Barriga, izquierda: bulto del tamaño de un guisante. Al veterinario esta semana."));
}

TEST_CASE("a salon of another language has its stock phrases understood", "[own-words]") {
  const ShippedWords spanish("es"), german("de");
  CHECK(german.words().translated("Bulto", &spanish.words()) == "Hautknoten");
  CHECK_FALSE(german.words().translated("Bulto", nullptr));
  CHECK(german.words().translated("lump", nullptr) == "Hautknoten");
  CHECK_FALSE(german.words().translated("brings the ball", nullptr));
}

TEST_CASE("what is in another language stands apart, marked, and is told once with its place",
          "[own-words]") {
  Desk table = visited("told = \"He dug up the garden again.\"\n" + std::string(finding) +
                       "what = \"lump like a pea\"\nadvised = \"vet this week\"\n");
  table.speak("es");
  for (const bool note : {false, true}) {
    const auto page =
        note ? table.note(table.kennel(), Audience::everyone) : table.care(table.kennel());
    INFO(table.said());
    REQUIRE(page);
    const auto said = by_language(page->page.frame);
    REQUIRE(said.contains("en-GB"));
    CHECK(has(said.at("en-GB"), "He dug up the garden again."));
    CHECK(has(said.at("en-GB"), "Lump like a pea."));
    CHECK_FALSE(has(said.at("en-GB"), "veterinario"));
    CHECK_FALSE(has(said.at(""), "garden"));
    CHECK(has(said.at(""), "En inglés:"));
    CHECK(has(said.at(""), "Al veterinario esta semana."));
  }
  const std::string all = table.said();
  CHECK(all.find("visits/rex/2026-11-24.toml:3:8: warning: the owner's page is in 'es', this text "
                 "is in 'en-GB'") != std::string::npos);
  CHECK(all.find("hint: write { text = \"…\", es = \"…\" }") != std::string::npos);
}

TEST_CASE("sentences that stand apart keep their order on a page from right to left",
          "[own-words]") {
  Desk table({{"salon.toml", ""},
              {"pets/rex.toml",
               "[pet]\nname = \"Rex\"\n[[alert]]\nlevel = \"caution\"\ntext = \"Gums bleed.\"\n"
               "do = \"Soft cloth only.\"\nfor = \"everyone\"\n"}});
  table.speak("ar");
  const auto care = table.care(table.kennel());
  REQUIRE(care);
  // One isolate (UAX #9): two would be laid from right to left.
  CHECK(by_language(care->page.frame).at("en-GB") == "\u2068Gums bleed. Soft cloth only.\u2069 ");
}

TEST_CASE("the file's copy marks nothing", "[own-words]") {
  Desk table = visited("told = \"He dug up the garden again.\"\n");
  table.speak("es");
  const auto note = table.note(table.kennel(), Audience::staff);
  REQUIRE(note);
  CHECK(by_language(note->page.frame).size() == 1);
  CHECK_FALSE(table.says("other-language"));
}

TEST_CASE("no owner's page of a sample has a foreign text without its mark", "[own-words]") {
  std::size_t checked = 0, marked = 0;
  for (const char* salon : {"lantern-street", "us-corner"}) {
    Desk table(sample(salon));
    for (const std::string& key : table.pets()) {
      const Kennel kennel = table.kennel(key);
      if (kennel.visits.empty()) continue;
      const Visit visit = for_everyone(kennel.visits.back());
      for (const char* language : translated) {
        table.speak(language);
        for (const bool note : {false, true}) {
          INFO(key << " in " << language << (note ? ", note" : ", care"));
          const auto page = note ? table.note(kennel, Audience::everyone) : table.care(kennel);
          REQUIRE(page);
          const auto said = by_language(page->page.frame);
          for (const FreeText& text : texts_of(visit)) {
            if (text.value.size() < 5) continue;  // may be a word of the page's own
            INFO(text.value);
            CHECK_FALSE(has(said.at(""), text.value));
            ++checked;
          }
          marked += said.size() > 1;
        }
      }
    }
  }
  CHECK(checked > 200);
  CHECK(marked > 10);
}

TEST_CASE("owners of the samples read one language", "[own-words]") {
  Desk table(sample("lantern-street"));
  for (const std::string& key : table.pets()) {
    const Kennel kennel = table.kennel(key);
    const std::string language = kennel.pet.owner.language;
    if (std::ranges::find(translated, language) == std::end(translated)) continue;
    table.speak(language);
    INFO(key << " in " << language);
    const auto care = table.care(kennel);
    REQUIRE(care);
    CHECK(by_language(care->page.frame).size() == 1);
    if (kennel.visits.empty()) continue;
    CHECK(by_language(table.note(kennel, Audience::everyone)->page.frame).size() == 1);
  }
  INFO(table.said());
  CHECK_FALSE(table.says("other-language"));
}

TEST_CASE("staff read the salon's stock phrases in the sheet's language", "[own-words]") {
  Desk table = visited(
      "[came_in]\nbehaviour = { en = \"calm today\", de = \"heute ruhig\" }\n"
      "[[finding]]\nregion = \"rear legs\"\nwhat = \"drags the toes on the ramp\"\n"
      "advised = \"vet at the next check\"\n"
      "[[finding]]\nregion = \"belly\"\nwhat = { en = \"odd spot\", de = \"seltsamer Fleck\" }\n",
      "[salon]\nlanguage = \"en-GB\"\n");
  table.speak("de");
  const ShippedWords german("de");
  const auto kennel = table.kennel("rex", demo_day + std::chrono::days(7));
  for (const auto& sheet : {table.card(kennel, "A4"), table.style(kennel)}) {
    REQUIRE(sheet);
    std::string page;
    for (const Frame& side : sides(sheet->page)) page += text_of(side);
    INFO(page);
    for (const char* const stock : {"drags the toes on the ramp", "vet at the next check"}) {
      CHECK_FALSE(has(page, stock));
      CHECK(has(page, german.words().translated(stock, nullptr).value().substr(1)));
    }
    CHECK(has(page, "eltsamer Fleck"));
    CHECK(has(page, "eute ruhig"));
  }
}
}  // namespace furnish::test
