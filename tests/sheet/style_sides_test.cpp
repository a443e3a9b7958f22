#include <catch2/catch.hpp>

#include <algorithm>
#include <cctype>
#include <set>

#include "base/text.h"
#include "sheet/desk.h"
#include "sheet/parts.h"
#include "sheet/style_rows.h"
#include "sheet/style_words.h"
#include "sheet/style_work.h"

namespace furnish {
namespace {
using test::Desk;
using test::without_space;

constexpr const char* salons[] = {"lantern-street", "us-corner"};

/// Every style sheet of the samples, on both papers.
template <typename Visit>
void each_sheet(Visit visit) {
  for (const char* salon : salons) {
    Desk table(test::sample(salon));
    for (const std::string& key : table.pets()) {
      const test::Kennel kennel = table.kennel(key);
      for (const char* paper : {"A4", "letter"}) {
        const auto sheet = table.style(kennel, paper);
        INFO(key << " on " << paper << ":\n" << table.said());
        REQUIRE(sheet);
        const SheetInput input = table.input(kennel, paper, kinds::style);
        visit(*sheet, SheetDesk{input, table.voice()});
      }
    }
  }
}

/// A piece of structure: what it is, the text in it without space, and where its drawing reaches.
struct Tagged {
  OpenTag tag;
  std::string text;
  std::vector<std::string> texts;
  Length left = Length::mm(1e4), right;
  bool photo = false;

  void reach(Point point) {
    left = std::min(left, point.x);
    right = std::max(right, point.x);
  }
};
std::vector<Tagged> tagged(const Frame& frame) {
  std::vector<Tagged> out;
  std::vector<std::size_t> open;
  for (const Mark& mark : frame.marks) {
    if (const auto* tag = std::get_if<OpenTag>(&mark)) {
      open.push_back(out.size());
      out.emplace_back().tag = *tag;
    } else if (std::holds_alternative<CloseTag>(mark)) {
      open.pop_back();
    }
    for (const std::size_t i : open) {
      if (const auto* text = std::get_if<TextMark>(&mark)) {
        out[i].text += without_space(text->line->text());
        out[i].texts.emplace_back(text->line->text());
      }
      if (std::holds_alternative<ImageMark>(mark)) out[i].photo = true;
      const auto* path = std::get_if<PathMark>(&mark);
      if (path == nullptr) continue;
      for (const Contour& contour : path->contours) {
        out[i].reach(contour.start);
        for (const Contour::Curve& curve : contour.curves) out[i].reach(curve.end);
      }
    }
  }
  return out;
}

/// The dog on a front.
Tagged figure_of(const Frame& front, const Pet& pet) {
  for (Tagged& one : tagged(front)) {
    if (one.tag.role == Structure::figure && !one.photo && one.tag.alt.find(pet.name.value) == 0) {
      return one;
    }
  }
  FAIL("no figure");
  return {};
}

bool has(const Frame& frame, const std::string& what) {
  return without_space(test::text_of(frame)).find(without_space(what)) != std::string::npos;
}
}  // namespace

TEST_CASE("a style sheet is one sheet of paper, its front has the dog, half of the page wide",
          "[style]") {
  std::size_t most = 0;
  each_sheet([&](const Sheet& sheet, const SheetDesk& desk) {
    const Pet& pet = desk.input.pet;
    const Frame& front = sheet.page.frame;
    INFO(pet.key);
    CHECK(sheet.page.more.size() <= 1);
    const Tagged figure = figure_of(front, pet);
    CHECK(figure.right - figure.left >= front.size.width / 2);
    // The style's own sentence stands beside it, and when the dog comes again.
    REQUIRE(pet.style);
    CHECK(has(front, sentence(pet.style->looks)));
    CHECK(has(front, desk.voice.words.say(Phrase::label_due)));
    CHECK(has(front, desk.voice.words.say(Phrase::head_part)));
    // Never more numbers than are followed; each is a row of the table.
    const auto rows = style_rows(desk);
    std::set<std::string> numbers(figure.texts.begin(), figure.texts.end());
    for (const StyleRow& row : rows) numbers.erase(std::to_string(row.number));
    for (int finding = 1; finding < 10; ++finding) numbers.erase(finding_letter(finding));
    CHECK(numbers.empty());
    most = std::max(most, style_figure(rows, desk).callouts.size());
  });
  CHECK(most <= most_numbers + 2);
  CHECK(most > most_numbers / 2);
}

TEST_CASE("what runs on is 10.5 pt or more on both sides of a style sheet", "[style]") {
  std::size_t seen = 0;
  each_sheet([&](const Sheet& sheet, const SheetDesk& desk) {
    INFO(desk.input.pet.key);
    for (const Frame& side : sides(sheet.page)) {
      for (const Mark& mark : side.marks) {
        const auto* text = std::get_if<TextMark>(&mark);
        if (text == nullptr) continue;
        for (const ShapedRun& run : text->line->runs()) {
          if (run.role == Role::foot) continue;
          CHECK(run.points >= 10.5);
          ++seen;
        }
      }
    }
  });
  CHECK(seen > 3000);
}

TEST_CASE("each blend is a whole pair, on a line of its own", "[style]") {
  std::size_t blends = 0;
  each_sheet([&](const Sheet& sheet, const SheetDesk& desk) {
    INFO(desk.input.pet.key);
    std::set<std::string> items;
    for (const Frame& side : sides(sheet.page)) {
      for (const Tagged& one : tagged(side)) {
        if (one.tag.role == Structure::item) items.insert(one.text);
      }
    }
    for (const std::string& blend : style_blends(desk).blends) {
      INFO(blend);
      CHECK(items.count(without_space(blend)) == 1);
      ++blends;
    }
  });
  CHECK(blends > 100);
}

TEST_CASE("every style sheet has one code and says how it is read", "[style]") {
  each_sheet([&](const Sheet& sheet, const SheetDesk& desk) {
    INFO(desk.input.pet.key);
    const std::string says = desk.voice.words.say(Phrase::code_says);
    int codes = 0;
    for (const Frame& side : sides(sheet.page)) {
      for (const Tagged& one : tagged(side)) {
        if (one.tag.role != Structure::figure || one.tag.alt != says) continue;
        ++codes;
        CHECK(has(side, desk.voice.words.say(Phrase::code_how)));
      }
    }
    CHECK(codes == 1);
  });
}

TEST_CASE("the other side says in which order, where the dog stands, and what to answer",
          "[style]") {
  Desk table(test::sample("lantern-street"));
  const test::Kennel kennel = table.kennel("marlow");
  const auto sheet = table.style(kennel);
  REQUIRE(sheet);
  REQUIRE(sheet->page.more.size() == 1);
  const Frame& back = sheet->page.more.front();
  for (const char* said :
       {"\u00BD\u202Fin comb over #30\u20075\u00A0Right hock, from behind.",
        "Straight shears\u20076\u00A0Belly, forelegs up.", "Pants hard, gums blue or pale.",
        "1\u00A0Left hock, left alone; 5\u00A0right hock, 13\u201316\u202Fmm",
        "Ears straight edge; tail plume, tip tidied; feet hare foot", "Said back to", "Heard by",
        "4 Aug, Ines, 1\u00A0h 20\u202Fmin"}) {
    INFO(said);
    CHECK(has(back, said));
  }
  // The order of the table is that of the work.
  const SheetInput input = table.input(kennel, "A4", kinds::style);
  const SheetDesk desk{input, table.voice()};
  int last = 0;
  for (const SheetRow& row : style_order(style_rows(desk), desk, WithHow::no)) {
    for (const SheetRow::Point& point : row.points) {
      const int number = std::stoi(point.text.front().text);
      CHECK(number >= last);
      last = number;
    }
  }
  CHECK(last == 13);
}

namespace {
/// All sides of the style sheet of one of the samples, without space.
std::string sides_said(const char* key) {
  Desk table(test::sample("lantern-street"));
  const auto sheet = table.style(table.kennel(key));
  REQUIRE(sheet);
  std::string out;
  for (const Frame& side : sides(sheet->page)) out += without_space(test::text_of(side));
  return out;
}
std::size_t times_in(const std::string& what, const std::string& text) {
  std::size_t count = 0;
  const std::string wanted = without_space(what);
  for (std::size_t at = 0; (at = text.find(wanted, at)) != std::string::npos; ++at) ++count;
  return count;
}
}  // namespace

TEST_CASE("the order of work holds the dog as its handling, its notes and its alerts say",
          "[style]") {
  for (const char* key : {"bjarne", "agnes"}) {
    const std::string text = sides_said(key);
    INFO(key << ":\n" << text);
    CHECK(times_in(", lying, foot held low.", text) > 0);
    CHECK(times_in("on its feet only while the line is judged", text) == 1);
    for (const char* never : {"foot up", "forelegs up", "weight on all feet", "standing square"}) {
      CHECK(times_in(never, text) == 0);
    }
  }
  CHECK(times_in("foot up", sides_said("marlow")) > 0);
}

TEST_CASE("lines for a newer groomer go by tool and coat, and none is said twice", "[style]") {
  CHECK(times_in("Thinners, comb up", sides_said("moth")) == 0);
  CHECK(times_in("on the head only low air or a towel", sides_said("moth")) > 0);
  CHECK(times_in("slicker", sides_said("otter")) == 0);
  CHECK(times_in("once round at the edge of the pad", sides_said("dot")) == 1);
  const std::string bare = sides_said("sol");
  CHECK(times_in("Brush, no cut", bare) == 0);
  CHECK(times_in("mats", bare) == 0);
  CHECK(times_in("By hand, no cut", bare) > 0);
}

TEST_CASE("what stops the work are signs to stop at, and what is not wanted says so", "[style]") {
  const auto stops = [](const char* key) {
    Desk table(test::sample("lantern-street"));
    const test::Kennel kennel = table.kennel(key);
    const SheetInput input = table.input(kennel, "A4", kinds::style);
    const SheetDesk desk{input, table.voice()};
    const auto asked = style_read_back(style_rows(desk), desk);
    std::string out;
    for (const TextSpan& span : asked.front().answer) out += span.text;
    return out;
  };
  CHECK(stops("dot") == "Pants hard, gums blue or pale.");
  CHECK(stops("nefeli") == "Pants hard, gums blue or pale.");
  CHECK(stops("bjarne") == "Curled tongue. Pants hard, gums blue or pale.");
  CHECK(times_in("Not wanted Anything oily.", sides_said("sol")) == 1);
}

TEST_CASE("a bottle's name is not said twice", "[style]") {
  for (const auto& [language, twice] : {std::pair("de", "Conditioner Sanfter Conditioner"),
                                        {"fr", "après-shampoing Après"},
                                        {"es", "acondicionar Acondicionador"}}) {
    Desk table(test::sample("lantern-street"));
    table.speak(language);
    const test::Kennel kennel = table.kennel("juniper");
    const SheetInput input = table.input(kennel, "A4", kinds::style);
    const SheetDesk desk{input, table.voice()};
    std::string text;
    for (const SheetRow& row : style_before(desk, WithHow::no)) {
      text += row.label + " ";
      for (const TextSpan& span : row.text) text += span.text;
    }
    INFO(text);
    CHECK(times_in(twice, without_space(text)) == 0);
  }
}

TEST_CASE("what is not seen from the side has no number on any figure, unless it differs",
          "[style]") {
  each_sheet([](const Sheet&, const SheetDesk& desk) {
    for (const FigureCallout& one : style_figure(style_rows(desk), desk).callouts) {
      INFO(desk.input.pet.name.value << " " << one.number);
      for (const Region region : one.regions) {
        const bool hidden = region == Region::pads || region == Region::sanitary;
        if (hidden) CHECK(one.differs);
      }
    }
  });
}

TEST_CASE("what a ring says stands on no sheet without one, and on all that have room for a line",
          "[style]") {
  int told = 0, untold = 0, none = 0;
  each_sheet([&](const Sheet& sheet, const SheetDesk& desk) {
    const FigureInput figure = style_figure(style_rows(desk), desk);
    const DrawnDogPtr dog = draw_dog(figure);
    const bool covered = std::ranges::any_of(
        figure.callouts, [&](const FigureCallout& one) { return points_at_covered(one, dog); });
    INFO(desk.input.pet.key);
    const bool says = has(sheet.page.frame, desk.voice.words.say(Phrase::covered_says));
    CHECK((covered || !says));
    ++(says ? told : covered ? untold : none);
  });
  CHECK(told > 2 * untold);
  CHECK(none > 0);
}

namespace {
/// A giant of whom nothing is short, for whom every tool is a matter.
std::string long_pet(int times) {
  std::string out =
      "[pet]\nname = \"Bartholomew Montgomery the Magnificent of Windermere\"\nbreed = "
      "\"mountain dog cross\"\ncoat = \"double\"\nweight = \"92 kg\"\nborn = 2014-03-02\n"
      "[owner]\nname = \"Ottoline Featherstone\"\n[health]\nconditions = [\"seizures\", "
      "\"arthritis\", \"heart disease\", \"thin skin\"]\n[handling]\nhold = \"under the jaw\"\n"
      "lift = \"ramp and two people\"\nstop = \"tongue curls\"\nrest_every = \"10 min\"\n"
      "[bath]\nbefore = \"rake to the skin\"\ndry = \"stand dryer on low\"\n"
      "[preferences]\nlikes = [\"a big tail\"]\ndislikes = [\"bows\"]\n"
      "[[alert]]\nlevel = \"danger\"\ntext = \"Bites without warning when a foot is held\"\n"
      "do = \"Two people, and a basket muzzle from the door on.\"\n";
  for (int i = 0; i < 8; ++i) {
    out += "[[alert]]\nlevel = \"caution\"\ntext = \"Does not care for number " +
           std::to_string(i) + "\"\ndo = \"";
    for (int word = 0; word < times; ++word) out += "Go round it slowly and talk to him. ";
    out += "\"\n";
  }
  out += "[trim]\nstyle = \"natural-tidy\"\n";
  for (const char* part : {"crown", "neck", "back", "chest", "belly", "tail", "breeches", "rump"}) {
    out += std::string(part) + " = { shears = \"thinning\", leave = \"" +
           std::to_string(20 + std::string(part).size()) + " mm\", note = \"" + part +
           " as he likes it, a soft edge and no points\" }\n";
  }
  return out;
}
}  // namespace

TEST_CASE("no pet is refused a style sheet on any paper, and nothing of it is lost", "[style]") {
  for (const Paper& paper : papers) {
    for (const int times : {1, 13}) {
      Desk table = test::desk(long_pet(times));
      const auto sheet = table.style(table.kennel(), paper.name);
      INFO(paper.name << ", " << times << "\n" << table.said());
      REQUIRE(sheet);
      const auto all = sides(sheet->page);
      const bool large = paper.size.width >= 200_mm;
      CHECK((times > 1 || !large || all.size() <= 3));
      WARN(paper.name << ", " << times << ": " << all.size() << " sides, " << sheet->page.layout);
      std::string text;
      for (std::size_t i = 0; i < all.size(); ++i) {
        text += test::text_of(all[i]);
        // A table that goes on is headed once a side.
        const std::string side = without_space(test::text_of(all[i])), head = "Partandhow";
        const std::size_t first = side.find(head);
        const bool again =
            first != std::string::npos && side.find(head, first + 1) != std::string::npos;
        CHECK((sheet->page.layout != "flowing" || !again));
        if (all.size() == 1) continue;
        CHECK(has(all[i], std::to_string(i + 1) + "/" + std::to_string(all.size())));
        CHECK(has(all[i], "Bartholomew Montgomery"));
      }
      const std::string squeezed = without_space(text);
      for (const char* said : {"Bites without warning", "number 0", "number 7", "under the jaw",
                               "ramp and two people", "tongue curls", "Seizures", "a big tail",
                               "rump as he likes it", "A fit", "Said back to", "camera over it",
                               "Due again", "nobody sees where the shears went", "Order of work"}) {
        INFO(said);
        const bool found = squeezed.find(without_space(said)) != std::string::npos ||
                           squeezed.find(without_space(capitalised(said))) != std::string::npos;
        CHECK(found);
      }
    }
  }
}
}  // namespace furnish
