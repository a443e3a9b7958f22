#include <catch2/catch.hpp>

#include <algorithm>

#include "base/said_in.h"
#include "base/text.h"
#include "sheet/alerts.h"
#include "sheet/desk.h"
#include "sheet/parts.h"
#include "sheet/pieces.h"

// What a card has on its front, and what whoever sees its back knows.

namespace furnish {
namespace {
using test::Desk;

template <typename Visit>
void each_card(std::initializer_list<const char*> papers,
               std::initializer_list<const char*> languages, Visit visit) {
  for (const char* const salon : {"lantern-street", "us-corner"}) {
    Desk table(test::sample(salon));
    for (const char* const language : languages) {
      table.speak(language);
      for (const std::string& key : table.pets()) {
        const test::Kennel kennel = table.kennel(key);
        for (const char* const paper : papers) {
          const auto card = table.card(kennel, paper);
          INFO(key << " on " << paper << " in " << language << "\n" << table.said());
          REQUIRE(card);
          const SheetInput input = table.input(kennel, paper);
          visit(*card, SheetDesk{input, table.voice()});
        }
      }
    }
  }
}
}  // namespace

TEST_CASE("every side after a front says what can hurt, under the pet's name", "[card]") {
  int backs = 0;
  each_card({"A5", "A6"}, {"en", "de"}, [&](const Sheet& card, const SheetDesk& desk) {
    std::vector<AlertEntry> grave = alert_entries(desk, CautionScope::card);
    std::erase_if(grave, [](const AlertEntry& one) { return one.gravity > Gravity::panel; });
    for (const Frame& side : card.page.more) {
      CHECK(test::says(side, desk.input.pet.name.value));
      if (grave.empty()) continue;
      ++backs;
      CHECK(test::says(side, grave.front().word));
      for (const AlertEntry& one : grave) {
        std::string first = without_languages(first_sentence(one.statement));
        first.pop_back();
        CHECK(test::says(side, first));
      }
    }
  });
  CHECK(backs >= 8);
}

TEST_CASE("the front of a usual card keeps the work, and its back is no heap of it", "[card]") {
  int divided = 0;
  each_card({"A5", "half letter"}, {"en", "fr"}, [&](const Sheet& card, const SheetDesk& desk) {
    CHECK(card.page.more.size() <= 1);
    if (card.page.more.empty()) return;
    ++divided;
    const Words& words = desk.voice.words;
    for (const Phrase label : {Phrase::label_handle, Phrase::label_trim, Phrase::label_bath,
                               Phrase::label_dry, Phrase::label_finish, Phrase::label_collects}) {
      INFO(words.say(label));
      CHECK(test::says(card.page.frame, words.say(label)));
    }
  });
  CHECK(divided >= 8);
}

TEST_CASE("many grave alerts are counted on the back, not all repeated", "[card]") {
  std::string pet = "[pet]\nname = \"Rex\"\n";
  for (int i = 0; i < 30; ++i) {
    pet += "[[alert]]\nlevel = \"warning\"\ntext = \"Bites when number " + std::to_string(i) +
           " is called. And more.\"\ndo = \"Wait.\"\n";
  }
  Desk table = test::desk(pet);
  const auto card = table.card(table.kennel(), "A6");
  REQUIRE(card);
  REQUIRE_FALSE(card->page.more.empty());
  CHECK(test::says(card->page.more.back(), "Bites when number 0 is called"));
  CHECK(test::says(card->page.more.back(), "+2"));
}

TEST_CASE("what can hurt is whole on the back, or stands where it is read", "[card]") {
  const auto back = [&](std::string_view alert) {
    std::string pet = "[pet]\nname = \"Rex\"\n[[alert]]\nlevel = \"danger\"\ntext = \"" +
                      std::string(alert) + "\"\n";
    for (int i = 0; i < 20; ++i) {
      pet += "[[alert]]\nlevel = \"caution\"\ntext = \"Minds number " + std::to_string(i) +
             " of many.\"\ndo = \"Wait a while, and then go on.\"\n";
    }
    Desk table = test::desk(pet);
    const auto card = table.card(table.kennel(), "A6");
    INFO(table.said());
    REQUIRE(card);
    REQUIRE_FALSE(card->page.more.empty());
    return test::text_of(card->page.more.front());
  };
  const std::string heat =
      "Heated air can kill, flat-faced, old, very young and heart patients first of all others";
  const std::string side = back(heat);
  INFO(side);
  CHECK(test::without_space(side).find(test::without_space(heat)) != std::string::npos);
  CHECK(side.find("\u2026") == std::string::npos);
  std::string endless = "Bites";
  for (int i = 0; i < 40; ++i) endless += " and bites";
  const std::string other = back(endless);
  INFO(other);
  CHECK(test::without_space(other).find(test::without_space("DANGER Other side")) !=
        std::string::npos);
  CHECK(other.find("\u2026") == std::string::npos);
}

TEST_CASE("what leads in to a list stays with its first point", "[card]") {
  SheetRow row{"Trim", {{"Silky short, except:", Face::bold}}, {}};
  for (const char* const point : {"Ears: #7", "Left hock: #40"}) row.points.push_back({{{point}}});
  const std::vector<SheetRow> pieces = cut(std::vector{row});
  REQUIRE(pieces.size() == 2);
  REQUIRE(pieces.front().points.size() == 1);
  CHECK(pieces.front().points.front().text.front().text == "Ears: #7");
  CHECK(pieces.back().label.empty());
  CHECK(pieces.back().points.size() == 1);
}
}  // namespace furnish
