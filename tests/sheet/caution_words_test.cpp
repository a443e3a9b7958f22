#include "sheet/caution_words.h"

#include <catch2/catch.hpp>

#include <algorithm>

#include "sheet/desk.h"
#include "sheet/shipped_words.h"

namespace furnish::test {
namespace {
std::vector<Place> at(std::string_view words) {
  const auto place = parse_place(words);
  REQUIRE(place);
  return {*place};
}
}  // namespace

TEST_CASE("at a terminal a caution is a sentence in English, with ISO dates", "[cautions]") {
  const ShippedWords english("en");
  const PlanWords plain = plan_words(english.words(), Units::metric);
  const Date day = demo_day;
  for (const auto& [text, sentence] : std::vector<std::pair<CautionText, std::string>>{
           {{"avoid-region", {at("left hock")}}, "left hock: no tool there"},
           {{"avoid-region", {at("hocks")}}, "hocks: no tool there"},
           {{"skip-tooth", {at("belly")}}, "belly: skip teeth catch thin and folded skin"},
           {{"skip-tooth-twin-do", {find_blade("7F")}}, "the finish twin, #7F"},
           // A pattern need not name all facts.
           {{"ear-edge", {at("ears")}}, "The edge of the ear is easily cut"},
           {{"mat-wound-do", {}}, "vet today"},
           {{"mat-wound-past", {at("tail"), day}},
            "tail: a mat all round on 2026-11-24; it may cut off the blood"},
           {{"vaccination-expired", {std::string("rabies"), day}},
            "rabies vaccination: expired after 2026-11-24"},
           {{"senior", {12}}, "Old dog: 12\u00A0years"},
           {{"puppy", {1}}, "Puppy: 1\u00A0month"},
           {{"vet-work", {VetTask::teeth}},
            "teeth below the gum: many places reserve this to a veterinarian"},
           {{"dryer-seizure", {Condition::heart_disease}},
            "Force dryer and heart disease: noise and stress can trigger an attack"},
           {{"dwell-short",
             {std::string("med"), std::chrono::seconds(600), std::chrono::seconds(90)}},
            "med is to stay on 10\u202Fmin, planned 90\u202Fs"},
           {{"weight-loss", {11.5, day, Mass::kg(5.2), Mass::kg(4.6)}},
            "Lost 11.5\u00A0% since 2026-11-24: 5.2\u202Fkg to 4.6\u202Fkg"},
           {{"thin-skin", {at("back")}}, "back: thin skin tears under tension or a close blade"},
           {{"thin-skin-do", {}}, "with the lay, #10 or longer, nothing under tension"},
           {{"thin-skin-mats", {at("back"), day}}, "back matted on 2026-11-24, on thin skin"},
           {{"thin-skin-mats-do", {}}, "leave these mats to a vet"},
           {{"felted-coat", {at("back"), day}},
            "back felted on 2026-11-24: water draws felt tighter"},
           {{"felted-coat-to-skin", {at("back"), day}},
            "back matted to the skin on 2026-11-24: water draws mats tighter"},
           {{"felted-coat-do", {}}, "clip, never comb through; before the bath, or ask the desk"},
           {{"against-handling", {at("ears"), std::string("no clippers")}},
            "ears: the planned tool is ruled out: no clippers"},
           {{"against-handling-do", {}}, "another tool; ask the desk which of the two holds"},
           {{"against-handling-dryer", {std::string("quiet air only")}},
            "The planned drying is ruled out: quiet air only"},
           {{"against-handling-dryer-do", {}}, "dry as that line says"},
           {{"found-there", {at("belly"), std::string("lump"), day}}, "belly: lump (2026-11-24)"},
       }) {
    CHECK(plain.caution(text) == sentence);
  }
  CHECK(plain.how(Method::nails_leave) == "not touched");
}

TEST_CASE("sheets and the terminal say the same but for dates", "[cautions]") {
  std::size_t seen = 0;
  for (const char* salon : {"lantern-street", "us-corner"}) {
    Desk table(sample(salon));
    const SheetVoice voice = table.voice();
    const PlanWords plain = plan_words(voice.words, table.salon().units);
    for (const std::string& key : table.pets()) {
      const Kennel kennel = table.kennel(key);
      std::vector<Caution> all = kennel.plan.cautions;
      all.insert(all.end(), kennel.plan.standing.begin(), kennel.plan.standing.end());
      for (const Caution& caution : all) {
        for (const CautionText& text : {caution.what, caution.instead}) {
          const bool dated = std::ranges::any_of(text.facts, [](const CautionFact& fact) {
            return std::holds_alternative<Date>(fact);
          });
          INFO(text.key);
          CHECK((caution_text(text, voice) == plain.caution(text)) != dated);
          ++seen;
        }
      }
    }
  }
  CHECK(seen > 40);
}
}  // namespace furnish::test
