#include <catch2/catch.hpp>

#include <algorithm>

#include "sheet/desk.h"

// What an owner's page says is on record, has its day, and is in its language or marked.

namespace furnish::test {
namespace {
const std::string rex =
    "[pet]\nname = \"Rex\"\ncoat = \"curly\"\n[trim]\nvisit_every = \"6 weeks\"\n";

Desk with_visits(const std::map<std::string, std::string>& visits, const std::string& pet = rex,
                 const std::string& salon = "[salon]\nname = \"Demo\"\nphone = \"555 0100\"\n") {
  std::map<std::string, std::string> files{{"pets/rex.toml", pet}, {"salon.toml", salon}};
  for (const auto& [day, text] : visits) {
    files["visits/rex/" + day + ".toml"] =
        "date = " + day + "\n" +
        (text.starts_with("unfinished") || text.starts_with("not_done") ? ""
                                                                        : "unfinished = false\n") +
        text;
  }
  return Desk(std::move(files));
}

std::string text_of(const std::optional<Sheet>& sheet) {
  REQUIRE(sheet);
  std::string out;
  for (const Frame& side : sides(sheet->page)) out += test::text_of(side) + "\n";
  return without_space(out);
}
bool has(const std::string& text, std::string_view what) {
  return text.find(without_space(what)) != std::string::npos;
}

std::size_t photos_on(const Frame& frame) {
  return static_cast<std::size_t>(std::ranges::count_if(frame.marks, [](const Mark& mark) {
    const auto* const tag = std::get_if<OpenTag>(&mark);
    return tag != nullptr && tag->role == Structure::figure &&
           (tag->alt.starts_with("Before") || tag->alt.starts_with("After") ||
            tag->alt.find("missing") != std::string::npos);
  }));
}
}  // namespace

TEST_CASE("the owner's vet stands on the owner's pages, else a line for the number",
          "[care][note]") {
  const std::string vet = rex + "[owner]\nvet = { name = \"M. Okoye\", phone = \"555 0199\" }\n";
  Desk known = with_visits({{"2026-11-24", ""}}, vet), unknown = with_visits({{"2026-11-24", ""}});
  const Kennel one = known.kennel(), other = unknown.kennel();
  const std::string care = text_of(known.care(one));
  CHECK(has(care, "Your vet: M. Okoye · 555 0199"));
  CHECK_FALSE(has(care, "name and phone"));
  CHECK(has(text_of(known.note(one, Audience::everyone)), "Your vet: M. Okoye · 555 0199"));
  CHECK_FALSE(has(text_of(known.note(one, Audience::staff)), "555 0199"));
  CHECK(has(text_of(unknown.care(other)), "Your vet: name and phone"));
  CHECK_FALSE(has(text_of(unknown.note(other, Audience::everyone)), "Your vet"));
}

TEST_CASE("advice of an earlier visit says on which day it was given", "[care]") {
  const std::string found =
      "[[finding]]\nregion = \"belly\"\nwhat = \"lump\"\nadvised = \"Vet today\"\n"
      "for = \"everyone\"\n";
  Desk before = with_visits({{"2026-10-20", found}}), today = with_visits({{"2026-11-24", found}});
  CHECK(has(text_of(before.care(before.kennel())),
            "Belly: lump. Vet today (said on 20 October 2026)."));
  const std::string now = text_of(today.care(today.kennel()));
  CHECK(has(now, "Belly: lump. Vet today."));
  CHECK_FALSE(has(now, "said on"));
}

TEST_CASE("a note has the next day of the day of print, and what has passed is not to come",
          "[note]") {
  Desk table =
      with_visits({{"2026-09-01", "next = 2026-10-13\n"}, {"2026-10-13", "next = 2026-11-17\n"}});
  // A week after the agreed day nobody has come.
  const std::string late = text_of(table.note(table.kennel(), Audience::everyone));
  CHECK(has(late, "The visit was due on Tuesday, 17 November. Please call us."));
  CHECK(has(text_of(table.note(table.kennel(), Audience::staff)),
            "Tuesday, 17 November, 7 days overdue"));
  const std::string in_time = text_of(
      table.note(table.kennel("rex", std::chrono::sys_days(std::chrono::year(2026) / 11 / 3)),
                 Audience::everyone));
  CHECK(has(in_time, "Tuesday, 17 November · 555 0100"));
  CHECK_FALSE(has(in_time, "was due"));
}

TEST_CASE("names of products in another language stand apart and are marked", "[note]") {
  const std::string product = "[[product]]\nname = \"oat wash\"\nkind = \"shampoo\"\n";
  Desk table = with_visits({{"2026-11-24", product}}, rex + "[owner]\nlanguage = \"es\"\n",
                           "[salon]\nlanguage = \"en\"\n[paper]\nsheet = \"A4\"\n");
  table.speak("es");
  const auto sheet = table.note(table.kennel(), Audience::everyone);
  REQUIRE(sheet);
  bool marked = false;
  const auto& marks = sheet->page.frame.marks;
  for (std::size_t i = 0; i + 1 < marks.size(); ++i) {
    const auto* const tag = std::get_if<OpenTag>(&marks[i]);
    const auto* const text = std::get_if<TextMark>(&marks[i + 1]);
    if (tag == nullptr || text == nullptr || text->line->text() != "Oat wash.") continue;
    CHECK(tag->language == "en");
    marked = true;
  }
  CHECK(marked);
  CHECK_FALSE(table.says("other-language"));  // a name is nobody's fault
}

TEST_CASE("photos beyond four go on over the page, and none is left out", "[note]") {
  for (const int count : {3, 4, 5, 7}) {
    std::string photos;
    for (int i = 0; i < count; ++i) {
      photos += "[[photo]]\nfile = \"photos/" + std::to_string(i) + ".jpg\"\nwhen = \"" +
                (i % 2 == 0 ? "before" : "after") + "\"\n";
    }
    Desk table = with_visits({{"2026-11-24", photos}});
    const auto sheet = table.note(table.kennel(), Audience::staff);
    INFO(count << "\n" << table.said());
    REQUIRE(sheet);
    std::size_t shown = 0;
    for (const Frame& side : sides(sheet->page)) shown += photos_on(side);
    CHECK(shown == static_cast<std::size_t>(count));
    CHECK(sheet->page.more.size() == (count > 4 ? 1 : 0));
    CHECK(photos_on(sheet->page.frame) == static_cast<std::size_t>(std::min(count, 4)));
  }
}

TEST_CASE("a note shows whether the coat comes back and the weight is steady", "[note]") {
  const auto visit = [](const std::string& came, const std::string& left, const std::string& kg) {
    return "weight = \"" + kg + "\"\n[came_in]\nback = { length = \"" + came +
           "\" }\n[went_out]\nback = { length = \"" + left + "\" }\n";
  };
  const auto charts = [](const std::map<std::string, std::string>& visits) {
    Desk table = with_visits(visits);
    const auto sheet = table.note(table.kennel(), Audience::everyone);
    REQUIRE(sheet);
    std::vector<std::string> out;
    for (const Mark& mark : sheet->page.frame.marks) {
      const auto* const tag = std::get_if<OpenTag>(&mark);
      if (tag == nullptr || tag->role != Structure::figure) continue;
      for (const char* title : {"Weight", "Coat as it came", "Weeks"}) {
        if (tag->alt.starts_with(title)) out.push_back(tag->alt);
      }
    }
    return out;
  };
  const auto both = charts({{"2026-09-01", visit("30 mm", "16 mm", "8 kg")},
                            {"2026-10-13", visit("34 mm", "16 mm", "8.1 kg")},
                            {"2026-11-24", visit("33 mm", "17 mm", "8.1 kg")}});
  REQUIRE(both.size() == 2);
  CHECK(both[0].starts_with("Weight"));
  CHECK(without_space(both[1]).find(without_space("back: 30 mm (1 Sept 2026); 16 mm; 34 mm")) !=
        std::string::npos);
  // Of one visit there is nothing to compare.
  CHECK(charts({{"2026-11-24", visit("30 mm", "16 mm", "8 kg")}}).empty());
}

TEST_CASE("a care sheet shows on the dog what is brushed how often, and its calendar the same",
          "[care]") {
  Desk table = with_visits({{"2026-11-24", ""}},
                           rex +
                               "back = { shears = \"curved\", leave = \"20 mm\" }\n"
                               "ears = { shears = \"straight\", leave = \"40 mm\" }\n");
  const auto sheet = table.care(table.kennel());
  REQUIRE(sheet);
  int daily = 0, less_often = 0;
  std::string picture;
  for (const Mark& mark : sheet->page.frame.marks) {
    if (const auto* const hatch = std::get_if<HatchMark>(&mark)) {
      (hatch->degrees == 45 ? daily : less_often) += 1;
    }
    const auto* const tag = std::get_if<OpenTag>(&mark);
    if (tag != nullptr && tag->alt.starts_with("Rex from the side")) picture = tag->alt;
  }
  // A field or more of the dog, and a patch in the key, for each.
  CHECK(daily >= 2);
  CHECK(less_often >= 2);
  CHECK(picture.find("Every day: ears.") != std::string::npos);
  CHECK(picture.find("Three times a week: back.") != std::string::npos);
  const std::string text = text_of(sheet);
  CHECK(has(text, "every day three times a week nails next visit today"));
  // A coat without hair has no such picture.
  Desk bare = test::desk("[pet]\nname = \"Rex\"\ncoat = \"hairless\"\n");
  const auto other = bare.care(bare.kennel());
  REQUIRE(other);
  for (const Mark& mark : other->page.frame.marks) {
    CHECK_FALSE(std::holds_alternative<HatchMark>(mark));
  }
}
}  // namespace furnish::test
