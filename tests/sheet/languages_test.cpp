#include <catch2/catch.hpp>

#include <algorithm>
#include <map>

#include "output/pdf.h"
#include "output/pdf_rules.h"
#include "output/tool.h"
#include "share.h"
#include "sheet/caution_words.h"
#include "sheet/desk.h"
#include "sheet/parts.h"
#include "sheet/roles.h"
#include "sheet/rules.h"
#include "sheet/texts.h"

// Sheets in every language that furnish ships. What a page must be is what legibility_test asks of
// English ones, of the same sources.

namespace furnish::test {
namespace {
constexpr const char* translated[] = {"es", "fr", "de", "pt", "vi", "ar"};

/// Every text large enough for its distance (NUREG-0700 rev. 2, 1.3.1-4), in the margins, under the
/// clip's zone and over no other.
void check_page(const Frame& frame, const std::vector<TypeRole>& roles, Length free_top) {
  std::map<Role, Length> distance;
  for (const TypeRole& role : roles) distance[role.role] = role.distance;
  std::vector<Rect> inks;
  std::size_t wrong = 0;
  each_text(frame, [&](const TextMark& text, Ink, Ink) {
    for (const ShapedRun& run : text.line->runs()) {
      if (arc_minutes(distance.at(run.role), run.capital_height) >= 16.0) continue;
      UNSCOPED_INFO("too small: " << text.line->text());
      ++wrong;
    }
    const Rect ink = ink_of(text);
    if (ink.size.width == Length{}) return;
    const bool outside = ink.top() < free_top || ink.left() < 5_mm ||
                         ink.right() > frame.size.width - 5_mm ||
                         ink.bottom() > frame.size.height - 5_mm;
    const bool over = std::ranges::any_of(inks, [&](Rect one) { return overlap(one, ink); });
    if (outside || over) {
      UNSCOPED_INFO((over ? "over another: " : "outside: ") << text.line->text());
      ++wrong;
    }
    inks.push_back(ink);
  });
  CHECK(wrong == 0);
  CHECK(inks.size() > 10);
}

const TextMark& text_with(const Frame& frame, std::string_view words) {
  for (const Mark& mark : frame.marks) {
    const auto* const text = std::get_if<TextMark>(&mark);
    if (text != nullptr && text->line->text().find(words) != std::string::npos) return *text;
  }
  FAIL("nothing says " << words);
  throw std::logic_error("not reached");
}

/// Without the marks of direction that the tool puts between the lines (U+202A to U+202E).
std::string without_marks(std::string text) {
  for (const char* mark : {"\u202A", "\u202B", "\u202C", "\u202D", "\u202E"}) {
    for (auto at = text.find(mark); at != std::string::npos; at = text.find(mark))
      text.erase(at, 3);
  }
  return text;
}

Length right_end(const TextMark& text) {
  return text.baseline.x + text.line->logical().right();
}
}  // namespace

TEST_CASE("every sample's sheets fit and are legible in every language", "[languages]") {
  std::size_t pet = 0;
  for (const char* salon : {"lantern-street", "us-corner"}) {
    Desk table(sample(salon));
    const ReadingDistances& own = table.salon().paper.distances;
    for (const std::string& key : table.pets()) {
      const Kennel kennel = table.kennel(key);
      std::size_t spoken = 0;
      ++pet;
      for (const char* language : translated) {
        if (!in_turn(pet, spoken++, 4)) continue;
        table.speak(language);
        INFO(key << " in " << language);
        const auto card = table.card(kennel, "A5"), style = table.style(kennel, "A4"),
                   care = table.care(kennel, "A4");
        INFO(table.said());
        REQUIRE(card);
        REQUIRE(style);
        REQUIRE(care);
        check_page(care->page.frame, fridge_roles(*parse_paper("A4"), own), 5_mm);
        check_page(card->page.frame, hanging_roles(*parse_paper("A5"), own), 14_mm);
        check_page(style->page.frame, hand_roles(*parse_paper("A4"), own), 5_mm);
        if (kennel.visits.empty()) continue;
        const auto note = table.note(kennel, Audience::staff, "A4");
        INFO(table.said());
        REQUIRE(note);
        check_page(note->page.frame, hand_roles(*parse_paper("A4"), own), 5_mm);
      }
    }
  }
}

TEST_CASE("the page of rules is one legible side on every paper of a wall, in every language",
          "[languages][rules]") {
  Desk table(sample("lantern-street"));
  REQUIRE(table.salon().rules.size() == 4);
  std::vector<std::string> languages{"en"};
  languages.insert(languages.end(), std::begin(translated), std::end(translated));
  for (const std::string& language : languages) {
    table.speak(language);
    const SheetVoice voice = table.voice();
    for (const char* name : {"A3", "A4", "letter"}) {
      INFO(language << " on " << name);
      const Paper paper = *parse_paper(name);
      DiagnosticSink sink;
      const auto page = make_rules(table.salon(), paper, demo_day, voice, sink);
      REQUIRE(page);
      CHECK(page->page.more.empty());
      CHECK(sink.all().empty());
      check_page(page->page.frame, wall_roles(paper, table.salon().paper.distances), 5_mm);
      for (const SafetyRule& rule : safety_rules()) {
        const std::string key = std::string(rule.key) + "-do";
        if (!is_standing(rule)) continue;
        std::string what = caution_text({key, {}}, voice);
        // Which coats that holds for stands before it.
        if (rule.id != RuleId::prebrush) what = sentence(what);
        CHECK(says(page->page.frame, what));
      }
      // What to do with an overheated dog.
      CHECK(says(page->page.frame, voice.words.say(Phrase::if_breath)));
      CHECK(says(page->page.frame, voice.words.say(Phrase::local_rules)));
      CHECK(says(page->page.frame, voice.words.say(Phrase::rules_practice)));
      CHECK(says(page->page.frame, voice.words.say(Phrase::rules_burns)));
    }
  }
}

TEST_CASE("a sheet in another language is a PDF without faults that says its language",
          "[languages]") {
  Desk table(sample("lantern-street"));
  const Kennel kennel = table.kennel("marlow");
  for (const char* language : translated) {
    table.speak(language);
    INFO(language);
    const auto style = table.style(kennel);
    REQUIRE(style);
    CHECK(style->info.language == language);
    DiagnosticSink sink;
    const auto pdf = to_pdf(std::span(&style->page.frame, 1), style->info, {}, sink);
    REQUIRE(pdf);
    CHECK(pdf_faults(*pdf) == std::vector<std::string>{});
  }
}

TEST_CASE("what the salon wrote stays, what is the program's is said in the reader's language",
          "[languages]") {
  Desk table(sample("lantern-street"));
  const Kennel kennel = table.kennel("marlow");
  table.speak("es");
  const auto card = table.card(kennel, "A4");
  REQUIRE(card);
  const std::string text = without_space(text_of(card->page.frame));
  for (const char* words :
       {"Snaps when a rear foot is held.", "corvejón derecho", "Natural repasado, salvo:",
        "ADVERTENCIA", "4,6 kg", "Perdió un 11,5 % desde el 9 de junio de 2026: de 5,2 kg a 4,6 kg",
        "martes 19 de enero de 2027", "orejas: borde recto", "tijera de entresacar"}) {
    INFO(words);
    // The first letter may be a capital on the page.
    CHECK(text.find(without_space(std::string_view(words)).substr(1)) != std::string::npos);
  }
}

TEST_CASE("a page from right to left has its columns and margins turned over", "[languages]") {
  Desk table(sample("lantern-street"));
  const Kennel kennel = table.kennel("marlow");
  const auto english = table.style(kennel);
  table.speak("ar");
  const auto arabic = table.style(kennel), card = table.card(kennel);
  REQUIRE(english);
  REQUIRE(arabic);
  REQUIRE(card);
  const Length width = arabic->page.frame.size.width;

  // The name begins at the left margin, or ends at the right one, which is as wide.
  const TextMark& name = text_with(arabic->page.frame, "Marlow");
  const Length margin = text_with(english->page.frame, "Marlow").baseline.x;
  CHECK(right_end(name) > width - margin - 1_mm);
  CHECK(right_end(name) < width - margin + 1_mm);
  // Numbers, tool, part, what is left: from the right.
  const auto middle = [](const TextMark& text) { return text.baseline.x + text.line->width() / 2; };
  const TextMark& tool = text_with(arabic->page.frame, "الأداة");
  const TextMark& part = text_with(arabic->page.frame, "الموضع والطريقة");
  const TextMark& left = text_with(arabic->page.frame, "يبقى");
  CHECK(middle(left) < middle(part));
  CHECK(middle(part) < middle(tool));
  // The clip's zone of a card is at the top as ever.
  check_page(card->page.frame, hanging_roles(*parse_paper("A5"), {}), 14_mm);
}

TEST_CASE("a page from right to left is read in its own order", "[languages]") {
  Desk table(sample("lantern-street"));
  table.speak("ar");
  const auto card = table.card(table.kennel("marlow"));
  REQUIRE(card);
  DiagnosticSink sink;
  const auto pdf = to_pdf(sides(card->page), card->info, {}, sink);
  REQUIRE(pdf);
  const TemporaryFolder folder;
  const auto text = run("pdftotext -layout " + folder.file("card.pdf", *pdf) + " -");
  REQUIRE(text.status == 0);
  const std::string said = without_space(without_marks(text.out));
  // Letters come in the order they are spoken, and numbers, measures, dates and names as they are.
  for (const char* words : {"تحذير", "العرقوب", "طبيب بيطري", "#30", "455", "11.5", "2027", "Priya",
                            "brings his own towel"}) {
    INFO(words << " in\n" << text.out);
    CHECK(said.find(without_space(words)) != std::string::npos);
  }
}
}  // namespace furnish::test
