#include <catch2/catch.hpp>

#include <algorithm>
#include <map>

#include "page/contrast.h"
#include "page/shaped_line.h"
#include "sheet/desk.h"
#include "sheet/roles.h"

namespace furnish {
namespace {
using test::Desk;

constexpr const char* salons[] = {"lantern-street", "us-corner"};

/// What lies under a point: the last filled area painted before the text.
Ink ground_at(const std::vector<Mark>& marks, std::size_t before, Point point) {
  Ink ground = Ink::paper;
  for (std::size_t i = 0; i < before; ++i) {
    const auto* fill = std::get_if<FillMark>(&marks[i]);
    if (fill && contains(fill->area, {point, {}})) ground = fill->ink;
  }
  return ground;
}

/// Each text of the page with the ground under both ends of its baseline.
template <typename Visit>
std::size_t each_text(const Frame& frame, Visit visit) {
  std::size_t texts = 0;
  for (std::size_t i = 0; i < frame.marks.size(); ++i) {
    const auto* text = std::get_if<TextMark>(&frame.marks[i]);
    if (text == nullptr) continue;
    const Point end{text->baseline.x + text->line->width(), text->baseline.y};
    visit(*text, ground_at(frame.marks, i, text->baseline), ground_at(frame.marks, i, end));
    ++texts;
  }
  return texts;
}

Rect ink_of(const TextMark& text) {
  Rect ink = text.line->ink();
  ink.origin.x += text.baseline.x;
  ink.origin.y += text.baseline.y;
  return ink;
}
}  // namespace

// NUREG-0700 rev. 2, 1.3.1-4: capitals at least 16 minutes of arc high.
TEST_CASE("every text of every card is large enough for its distance", "[legibility]") {
  std::size_t texts = 0;
  for (const char* name : salons) {
    Desk table(test::sample(name));
    for (const std::string& key : table.pets()) {
      const test::Kennel kennel = table.kennel(key);
      for (const Paper& paper : papers) {
        INFO(key << " on " << paper.name);
        std::map<Role, Length> distance;
        for (const TypeRole& role : hanging_roles(paper, table.salon().paper.distances)) {
          distance[role.role] = role.distance;
        }
        const auto sheet = table.card(kennel, paper.name);
        INFO(table.said());
        REQUIRE(sheet);
        texts += each_text(sheet->page.frame, [&](const TextMark& text, Ink, Ink) {
          INFO(text.line->text());
          for (const ShapedRun& run : text.line->runs()) {
            REQUIRE(distance.count(run.role) == 1);
            CHECK(arc_minutes(distance[run.role], run.capital_height) >= 16.0);
          }
        });
      }
    }
  }
  CHECK(texts > 2000);
}

TEST_CASE("the sizes of a card are few", "[legibility]") {
  // One for each role, no more: what stands in one role has one size on the page.
  Desk table(test::sample("lantern-street"));
  for (const std::string& key : table.pets()) {
    const auto sheet = table.card(table.kennel(key));
    REQUIRE(sheet);
    std::map<Role, double> size;
    each_text(sheet->page.frame, [&](const TextMark& text, Ink, Ink) {
      for (const ShapedRun& run : text.line->runs()) {
        INFO(key << ": " << text.line->text());
        CHECK(size.try_emplace(run.role, run.points).first->second == run.points);
      }
    });
  }
}

TEST_CASE("only letters that the family lacks are set in another font", "[legibility]") {
  // Latin, Greek, Cyrillic, spaces and marks are ours: a font of the machine is read for none of
  // them. Code points from U+0590 on, without the spaces and marks of U+2000 to U+2BFF, are
  // scripts.
  const auto is_script = [](std::string_view text) {
    for (const char* at = text.data(); at < text.data() + text.size(); ++at) {
      const auto lead = static_cast<unsigned char>(*at);
      const bool general = lead == 0xE2 && static_cast<unsigned char>(at[1]) < 0xB0;
      if (lead >= 0xD6 && !general) return true;
    }
    return false;
  };
  std::size_t others = 0;
  for (const char* name : salons) {
    Desk table(test::sample(name));
    for (const std::string& key : table.pets()) {
      const test::Kennel kennel = table.kennel(key);
      for (const char* paper : {"A4", "A5", "A6"}) {
        const auto sheet = table.card(kennel, paper);
        REQUIRE(sheet);
        each_text(sheet->page.frame, [&](const TextMark& text, Ink, Ink) {
          for (const ShapedRun& run : text.line->runs()) {
            if (run.family == FontSet::family()) continue;
            INFO(key << " on " << paper << ": " << text.line->text());
            CHECK(is_script(text.line->text().substr(run.begin, run.end - run.begin)));
            ++others;
          }
        });
      }
    }
  }
  CHECK(others > 0);
}

// WCAG 2.2, success criterion 1.4.6 (AAA): at least 7:1. A printer without colour makes greys of
// it.
TEST_CASE("every text stands out from its ground, also without colour", "[legibility]") {
  std::size_t on_black = 0, on_paper = 0;
  for (const char* name : salons) {
    Desk table(test::sample(name));
    for (const std::string& key : table.pets()) {
      const test::Kennel kennel = table.kennel(key);
      for (const char* paper : {"A4", "A5", "A6", "half letter"}) {
        const auto sheet = table.card(kennel, paper);
        REQUIRE(sheet);
        each_text(sheet->page.frame, [&](const TextMark& text, Ink start, Ink end) {
          INFO(key << " on " << paper << ": " << text.line->text());
          CHECK(start == end);
          CHECK(contrast(rgb(text.ink), rgb(start)) >= 7);
          CHECK(contrast(to_grey(rgb(text.ink)), to_grey(rgb(start))) >= 7);
          ++(start == Ink::text ? on_black : on_paper);
        });
      }
    }
  }
  CHECK(on_black > 20);
  CHECK(on_paper > 1000);
}

TEST_CASE("nothing is over anything else, in the clip's zone or outside the margins",
          "[legibility]") {
  for (const char* name : salons) {
    Desk table(test::sample(name));
    for (const std::string& key : table.pets()) {
      const test::Kennel kennel = table.kennel(key);
      for (const Paper& paper : papers) {
        const auto sheet = table.card(kennel, paper.name);
        REQUIRE(sheet);
        const Length clip = paper_class(paper) == PaperClass::small ? 12_mm : 14_mm;
        std::vector<Rect> inks;
        each_text(sheet->page.frame, [&](const TextMark& text, Ink, Ink) {
          INFO(key << " on " << paper.name << ": " << text.line->text());
          const Rect ink = ink_of(text);
          if (ink.size.width == Length{}) return;
          CHECK(ink.top() >= clip);
          CHECK(ink.left() >= 5_mm);
          CHECK(ink.right() <= paper.size.width - 5_mm);
          CHECK(ink.bottom() <= paper.size.height - 5_mm);
          CHECK(std::ranges::none_of(inks, [&](Rect other) { return overlap(other, ink); }));
          inks.push_back(ink);
        });
      }
    }
  }
}
}  // namespace furnish
