#include "page/kept_together.h"

#include <catch2/catch.hpp>

#include "page/sketch.h"
#include "support.h"

namespace furnish {
TEST_CASE("what is read as one is told by the letters at its space", "[page][shaper]") {
  // "4 years", "24 November", "½ in", "٤ سنوات", "555 0170", "45 ml + 455 ml", "≥ 3", "Bath: oat".
  for (const auto& [before, after] :
       {std::pair(U'4', U'y'), std::pair(U'4', U'N'), std::pair(U'½', U'i'), std::pair(U'٤', U'س'),
        std::pair(U'5', U'0'), std::pair(U'l', U'+'), std::pair(U'+', U'4'), std::pair(U'≥', U'3'),
        std::pair(U':', U'o'), std::pair(U'·', U'o'), std::pair(U's', U';'), std::pair(U'«', U'l'),
        std::pair(U'l', U'»'), std::pair(U'9', U'%')}) {
    INFO(static_cast<std::uint32_t>(before) << " " << static_cast<std::uint32_t>(after));
    CHECK(kept_together(before, after));
    CHECK(kept_together(before, after, Keeping::numbers) == (before != U':'));
    CHECK_FALSE(kept_together(before, after, Keeping::nothing));
  }
  // "a dog", "3, then", "every 8", "dogs ·", "– from", "(4) years", "years 4".
  for (const auto& [before, after] :
       {std::pair(U'a', U'd'), std::pair(U',', U't'), std::pair(U'y', U'8'), std::pair(U's', U'·'),
        std::pair(U'–', U'f'), std::pair(U')', U'y'), std::pair(U'4', U'(')}) {
    INFO(static_cast<std::uint32_t>(before) << " " << static_cast<std::uint32_t>(after));
    CHECK_FALSE(kept_together(before, after));
  }
}

TEST_CASE("no line ends between them, as set and as drafted, whatever the width",
          "[page][shaper]") {
  test::Desk desk;
  const std::string text =
      "Seen for 4 years, every 8 weeks: 45 ml + 455 ml water\u00A0· on 24 November or ½ in";
  int lines = 0;
  for (int mm = 34; mm <= 120; ++mm) {
    const std::vector<SizedText> parts{{text, Face::regular, Role::body, TypeSize::quarters(48)}};
    const auto shaped = desk.shaper.shape(parts, Length::mm(mm), Breaking::words);
    for (const auto& line : shaped->lines) {
      INFO(mm << " mm: " << line->text());
      const std::string end = "|" + line->text().substr(line->text().find_last_of(' ') + 1) + "|";
      CHECK(std::string("|4|8|24|½|45|455|+|").find(end) == std::string::npos);
      if (mm >= 46) CHECK(end != "|weeks:|");  // they do not fit on a shorter line
      CHECK_FALSE(line->text().starts_with("+"));
      CHECK_FALSE(line->text().ends_with("·"));
      CHECK_FALSE(line->text().ends_with("· "));
      ++lines;
    }
    // Drafts know no kerning: a line more or less now and then, where words only just fit.
    const auto drafted =
        Sketch(parts, *desk.fonts).lines({parts[0].size}, Length::mm(mm), Breaking::words);
    CHECK(std::abs(static_cast<int>(drafted.size()) - static_cast<int>(shaped->lines.size())) <= 1);
  }
  CHECK(lines > 200);
}

TEST_CASE("no line begins with the year of a date", "[page][shaper]") {
  test::Desk desk;
  for (int mm = 42; mm <= 120; ++mm) {
    const std::vector<SizedText> parts{{"Hives, fading (21 juillet 2026), seen again since 2025",
                                        Face::regular, Role::body, TypeSize::quarters(48)}};
    for (const auto& line : desk.shaper.shape(parts, Length::mm(mm), Breaking::words)->lines) {
      INFO(mm << " mm: " << line->text());
      CHECK_FALSE(line->text().starts_with("202"));
    }
  }
}

TEST_CASE("where they do not fit on a line together, words still do", "[page][shaper]") {
  test::Desk desk;
  const auto lines = [&](std::string text, int mm) {
    std::vector<std::string> out;
    const auto shaped =
        desk.shaper.shape({{std::move(text), Face::regular, Role::body, TypeSize::quarters(48)}},
                          Length::mm(mm), Breaking::words);
    for (const auto& line : shaped->lines) out.push_back(line->text());
    return out;
  };
  using Lines = std::vector<std::string>;
  CHECK(lines("Handschuhe: Kettenhalsband", 30) == Lines{"Handschuhe:", "Kettenhalsband"});
  CHECK(lines("144 Regenbogenforellen", 38) == Lines{"144", "Regenbogenforellen"});
  // The label goes first.
  CHECK(lines("Shampoo: 45 ml + 455 ml", 30) == Lines{"Shampoo:", "45 ml + 455 ml"});
}
}  // namespace furnish
