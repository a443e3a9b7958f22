#include <catch2/catch.hpp>

#include <algorithm>
#include <map>

#include "page/contrast.h"
#include "page/shaped_line.h"
#include "share.h"
#include "sheet/card_rows.h"
#include "sheet/desk.h"
#include "sheet/full_day.h"
#include "sheet/roles.h"
#include "sheet/texts.h"

namespace furnish {
namespace {
using test::Desk;
using test::each_text;
using test::ink_of;

constexpr const char* salons[] = {"lantern-street", "us-corner"};

/// A page that was set, and what it must keep to.
struct SetPage {
  std::string label;
  const Frame& frame;
  std::vector<TypeRole> roles;
  Paper paper;
  Length free_top;
};

/// Every side of the demo salon's day and week, and of those of forty bookings; the front of a
/// book.
template <typename Visit>
void each_day_page(Visit visit) {
  Desk demo(test::sample("lantern-street")), full(test::full_day(40, 8));
  for (Desk* const table : {&demo, &full}) {
    for (const char* name : {"A3", "A4", "letter"}) {
      const auto paper = parse_paper(name);
      REQUIRE(paper);
      const ReadingDistances& own = table->salon().paper.distances;
      const auto day = table->day(name), week = table->week(name);
      INFO(name << ":\n" << table->said());
      REQUIRE(day);
      REQUIRE(week);
      for (const Frame& frame : sides(day->page)) {
        visit(
            SetPage{std::string("a day on ") + name, frame, day_roles(*paper, own), *paper, 5_mm});
      }
      for (const Frame& frame : sides(week->page)) {
        visit(
            SetPage{std::string("a week on ") + name, frame, day_roles(*paper, own), *paper, 5_mm});
      }
      for (const Sheet& index : table->index(name)) {
        visit(SetPage{std::string("an index on ") + name, index.page.frame, hand_roles(*paper, own),
                      *paper, 5_mm});
      }
    }
  }
}

/// Every side of every sheet of every sample pet, on all papers in their turn: cards on each, the
/// others on the two they are made for.
template <typename Visit>
void each_page(Visit visit) {
  each_day_page(visit);
  std::size_t turn = 0;
  for (const char* name : salons) {
    Desk table(test::sample(name));
    const ReadingDistances& own = table.salon().paper.distances;
    for (const std::string& key : table.pets()) {
      const test::Kennel kennel = table.kennel(key);
      const auto set = [&](const std::optional<Sheet>& sheet, const Paper& paper,
                           const std::vector<TypeRole>& roles, Length free_top) {
        INFO(key << " on " << paper.name << ":\n" << table.said());
        REQUIRE(sheet);
        const std::vector<Frame> all = sides(sheet->page);
        for (std::size_t i = 0; i < all.size(); ++i) {
          visit(SetPage{key + " on " + std::string(paper.name) + ", side " + std::to_string(i + 1),
                        all[i], roles, paper, free_top});
        }
      };
      ++turn;
      for (std::size_t number = 0; number < std::size(papers); ++number) {
        if (!test::in_turn(turn, number)) continue;
        const Paper& paper = papers[number];
        const Length clip = paper_class(paper) == PaperClass::small ? 12_mm : 14_mm;
        set(table.card(kennel, paper.name), paper, hanging_roles(paper, own), clip);
      }
      for (const char* sheet : {"A4", "letter"}) {
        if (!test::in_turn(turn, sheet[0] == 'A' ? 0 : 1)) continue;
        const auto paper = parse_paper(sheet);
        REQUIRE(paper);
        set(table.style(kennel, sheet), *paper, hand_roles(*paper, own), 5_mm);
        set(table.care(kennel, sheet), *paper, fridge_roles(*paper, own), 5_mm);
        if (kennel.visits.empty()) continue;
        set(table.note(kennel, Audience::staff, sheet), *paper, hand_roles(*paper, own), 5_mm);
        set(table.note(kennel, Audience::everyone, sheet), *paper, hand_roles(*paper, own), 5_mm);
      }
    }
  }
}

/// How much was looked at, so that no check passes on an empty page.
struct Seen {
  std::size_t texts = 0, other_fonts = 0, on_black = 0, on_paper = 0;
};

// NUREG-0700 rev. 2, 1.3.1-4: capitals at least 16 minutes of arc high. One size for each role.
void check_sizes(const SetPage& page, Seen& seen) {
  std::map<Role, Length> distance;
  std::map<Role, double> size;
  for (const TypeRole& role : page.roles) distance[role.role] = role.distance;
  seen.texts += each_text(page.frame, [&](const TextMark& text, Ink, Ink) {
    INFO(page.label << ": " << text.line->text());
    for (const ShapedRun& run : text.line->runs()) {
      REQUIRE(distance.count(run.role) == 1);
      CHECK(arc_minutes(distance[run.role], run.capital_height) >= 16.0);
      CHECK(size.try_emplace(run.role, run.points).first->second == run.points);
    }
  });
}

// Latin, Greek, Cyrillic, spaces and marks are ours: a font of the machine is read for none of
// them. Code points from U+0590 on, without the spaces and marks of U+2000 to U+2BFF, are scripts.
bool is_script(std::string_view text) {
  for (const char* at = text.data(); at < text.data() + text.size(); ++at) {
    const auto lead = static_cast<unsigned char>(*at);
    const bool general = lead == 0xE2 && static_cast<unsigned char>(at[1]) < 0xB0;
    if (lead >= 0xD6 && !general) return true;
  }
  return false;
}

void check_fonts(const SetPage& page, Seen& seen) {
  each_text(page.frame, [&](const TextMark& text, Ink, Ink) {
    for (const ShapedRun& run : text.line->runs()) {
      if (run.family == FontSet::family()) continue;
      INFO(page.label << ": " << text.line->text());
      CHECK(is_script(text.line->text().substr(run.begin, run.end - run.begin)));
      ++seen.other_fonts;
    }
  });
}

// WCAG 2.2, success criterion 1.4.6 (AAA): at least 7:1. A printer without colour makes greys of
// it.
void check_contrast(const SetPage& page, Seen& seen) {
  each_text(page.frame, [&](const TextMark& text, Ink start, Ink end) {
    // A number on a black disc: its ground is a path, which is checked where figures are.
    if (text.ink == Ink::paper && start == Ink::paper) return;
    INFO(page.label << ": " << text.line->text());
    CHECK(start == end);
    CHECK(contrast(rgb(text.ink), rgb(start)) >= 7);
    CHECK(contrast(to_grey(rgb(text.ink)), to_grey(rgb(start))) >= 7);
    ++(start == Ink::text ? seen.on_black : seen.on_paper);
  });
}

void check_places(const SetPage& page) {
  std::vector<Rect> inks;
  each_text(page.frame, [&](const TextMark& text, Ink, Ink) {
    INFO(page.label << ": " << text.line->text());
    const Rect ink = ink_of(text);
    if (ink.size.width == Length{}) return;
    CHECK(ink.top() >= page.free_top);
    CHECK(ink.left() >= 5_mm);
    CHECK(ink.right() <= page.paper.size.width - 5_mm);
    CHECK(ink.bottom() <= page.paper.size.height - 5_mm);
    CHECK(std::ranges::none_of(inks, [&](Rect other) { return overlap(other, ink); }));
    inks.push_back(ink);
  });
}
}  // namespace

TEST_CASE("the labels of all cards of a salon stand in one column, and so do their texts",
          "[legibility]") {
  for (const char* name : salons) {
    for (const char* language : {"en-GB", "ar"}) {
      Desk table(test::sample(name));
      table.speak(language);
      const Words& words = table.voice().words;
      const auto is_label = [&](const TextMark& mark) {
        const auto labels = card_labels();
        return mark.role == "label" && std::ranges::any_of(labels, [&](Phrase phrase) {
                 return mark.line->text() == words.say(phrase);
               });
      };
      for (const Paper& paper : papers) {
        std::map<Length, int> labels, texts;  // by where their first letter stands
        for (const std::string& key : table.pets()) {
          const auto sheet = table.card(table.kennel(key), paper.name);
          REQUIRE(sheet);
          const bool back = std::string_view(language) == "ar";
          const auto start = [&](const TextMark& mark) {
            return back ? mark.baseline.x + mark.line->width() : mark.baseline.x;
          };
          const TextMark* label = nullptr;
          for (const Mark& mark : sheet->page.frame.marks) {
            const auto* text = std::get_if<TextMark>(&mark);
            if (text == nullptr) continue;
            // A box to tick has a label too; what follows it is no text.
            const bool says = text->role == "body" || text->role == "action";
            if (label != nullptr && says && text->line->text() != words.say(Phrase::turn_over)) {
              ++labels[start(*label)];
              if (text->role == "body") ++texts[start(*text)];
            }
            label = is_label(*text) ? text : nullptr;
          }
        }
        INFO(name << " in " << language << " on " << paper.name);
        // The left half and, where two rows share a line, the right one.
        CHECK(labels.size() <= 2);
        CHECK(texts.size() <= 2);
        CHECK(std::max(labels.begin()->second, labels.rbegin()->second) >
              6 * static_cast<int>(table.pets().size()));
      }
    }
  }
}

TEST_CASE(
    "every sheet is large enough for its distance, in few sizes, in our own font, dark on "
    "light, and nothing over anything else",
    "[legibility]") {
  Seen seen;
  each_page([&](const SetPage& page) {
    check_sizes(page, seen);
    check_fonts(page, seen);
    check_contrast(page, seen);
    check_places(page);
  });
  CHECK(seen.texts > 4000);
  CHECK(seen.other_fonts > 0);
  CHECK(seen.on_black > 20);
  CHECK(seen.on_paper > 2000);
}
}  // namespace furnish
