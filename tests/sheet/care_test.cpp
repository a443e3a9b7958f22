#include "sheet/care.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <map>

#include "sheet/care_words.h"
#include "sheet/desk.h"
#include "sheet/readability.h"
#include "sheet/rows.h"

namespace furnish {
namespace {
using test::Desk;

/// What is read on every sample's care sheet, sentence by sentence; the salon's own words too.
std::vector<std::string> sentences_of(Desk& table, const std::string& key) {
  const test::Kennel kennel = table.kennel(key);
  const SheetInput input = table.input(kennel, "A4", kinds::care);
  const HomeCare at_home =
      home_care(table.salon(), kennel.pet, kennel.plan, input.latest, kennel.today);
  SheetVoice voice = table.voice();
  voice.reader = Audience::everyone;
  const CareInput care{at_home, nullptr, {}};
  const CareDesk desk{{input, voice}, care};
  std::vector<std::string> texts;
  for (const OwnLine& line : care_today(desk)) texts.push_back(line.text);
  if (const auto routine = care_routine(desk)) {
    for (const CareRoutine::Rhythm& one : routine->rhythms) texts.push_back(one.text);
    texts.insert(texts.end(), {routine->later, routine->way, routine->mats});
  }
  for (const SheetRow& row : care_at_home(desk)) texts.push_back(test::text_of(row.text));
  for (const CareSign& sign : care_watch(desk)) texts.push_back(sign.sign + " " + sign.action);
  texts.push_back(care_reason(desk));
  texts.push_back(care_advice(desk));
  std::vector<std::string> out;
  for (const std::string& text : texts) {
    for (std::string& one : test::sentences(text)) out.push_back(std::move(one));
  }
  return out;
}
}  // namespace

// The formula and this example of counts: Kincaid and others 1975; 1 sentence of 13 words and 26
// syllables has grade 13.08.
TEST_CASE("the grade of a text on published counts", "[care]") {
  CHECK(test::flesch_kincaid_grade({1, 13, 26}) == Approx(13.08).margin(0.005));
}

TEST_CASE("sentences, words and syllables are counted", "[care]") {
  CHECK(test::sentences("Call your vet. Keep cool!") ==
        std::vector<std::string>{"Call your vet.", "Keep cool!"});
  const test::TextCounts counts = test::count("We left the tail full and tidied the tip.");
  CHECK(counts.sentences == 1);
  CHECK(counts.words == 9);
  CHECK(counts.syllables == 10);
}

// Grade 6 to 7 (MedlinePlus 2012), sentences of at most 20 words (a hospital's checklist).
TEST_CASE("care sheets are plain", "[care]") {
  for (const char* salon : {"lantern-street", "us-corner"}) {
    Desk table(test::sample(salon));
    for (const std::string& key : table.pets()) {
      test::TextCounts all;
      for (const std::string& sentence : sentences_of(table, key)) {
        const test::TextCounts one = test::count(sentence);
        INFO(key << ": " << sentence);
        CHECK(one.words <= 20);
        all += one;
      }
      const double grade = test::flesch_kincaid_grade(all);
      WARN(salon << " " << key << ": " << all.sentences << " sentences, " << all.words << " words, "
                 << all.syllables << " syllables, grade " << grade);
      CHECK(grade <= 7);
    }
  }
}

TEST_CASE("a care sheet never names a blade, and has three to five points of today", "[care]") {
  for (const char* salon : {"lantern-street", "us-corner"}) {
    Desk table(test::sample(salon));
    for (const std::string& key : table.pets()) {
      const test::Kennel kennel = table.kennel(key);
      const auto sheet = table.care(kennel);
      INFO(key << "\n" << table.said());
      REQUIRE(sheet);
      // But for what a person wrote into an alert that is for everyone.
      std::string alerts;
      for (const Alert& alert : kennel.pet.alerts) {
        if (alert.audience == Audience::everyone) alerts += alert.text.value + alert.action.value;
      }
      CHECK(std::ranges::count(test::text_of(sheet->page.frame), '#') ==
            std::ranges::count(alerts, '#'));
      const SheetInput input = table.input(kennel, "A4", kinds::care);
      const HomeCare at_home =
          home_care(table.salon(), kennel.pet, kennel.plan, nullptr, kennel.today);
      const CareInput care{at_home, nullptr, {}};
      const SheetVoice voice = table.voice();
      const auto points = care_today(CareDesk{{input, voice}, care});
      CHECK(points.size() <= 5);
      if (!kennel.pet.trim.empty()) CHECK(points.size() >= 2);
    }
  }
}

TEST_CASE("tools are named to owners only where the salon wants it", "[care]") {
  for (const bool wanted : {false, true}) {
    Desk table(std::map<std::string, std::string>{
        {"pets/rex.toml",
         "[pet]\nname = \"Rex\"\ncoat = \"curly\"\n[trim]\nbody = { blade = \"4F\" }\n"},
        {"salon.toml",
         std::string("[salon]\ntools_for_owners = ") + (wanted ? "true" : "false") + "\n"},
        {"days/2026-11-24.toml",
         "date = 2026-11-24\n[[booking]]\nat = 09:00:00\npet = \"rex\"\n"}});
    const auto sheet = table.care(table.kennel());
    REQUIRE(sheet);
    CHECK(test::says(sheet->page.frame, "(#4F)") == wanted);
  }
}

TEST_CASE("a curly coat changes its rhythm when it passes its limit", "[care]") {
  Desk table(std::map<std::string, std::string>{
      {"pets/rex.toml",
       "[pet]\nname = \"Rex\"\ncoat = \"curly\"\n[trim]\nvisit_every = \"6 weeks\"\n"
       "back = { shears = \"curved\", leave = \"20 mm\" }\n"
       "ears = { shears = \"straight\", leave = \"40 mm\" }\n"},
      {"days/2026-11-24.toml", "date = 2026-11-24\n[[booking]]\nat = 09:00:00\npet = \"rex\"\n"}});
  const auto sheet = table.care(table.kennel());
  REQUIRE(sheet);
  CHECK(test::says(sheet->page.frame, "Every day: ears."));
  CHECK(test::says(sheet->page.frame,
                   "Three times a week: back. From Sunday, 6 December: every day, all over."));
  CHECK(test::says(sheet->page.frame, "over 25\u202Fmm"));
}

TEST_CASE("no next visit leaves a line to write on", "[care]") {
  Desk table = test::desk("[pet]\nname = \"Rex\"\n");
  const auto sheet = table.care(table.kennel());
  REQUIRE(sheet);
  CHECK(test::says(sheet->page.frame, "No date is set yet."));
}

TEST_CASE("heat is a danger to flat faces", "[care]") {
  for (const char* nose : {"short", "long"}) {
    Desk table =
        test::desk("[pet]\nname = \"Rex\"\n[build]\nnose = \"" + std::string(nose) + "\"\n");
    const auto sheet = table.care(table.kennel());
    REQUIRE(sheet);
    CHECK(test::says(sheet->page.frame, "Heat is a danger to Rex.") ==
          (std::string(nose) == "short"));
  }
}
}  // namespace furnish
