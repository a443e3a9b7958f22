#include "page/mirror.h"

#include <catch2/catch.hpp>

#include "page/direction.h"

namespace furnish {
namespace {
constexpr Size page{100_mm, 50_mm};

Frame mirrored_of(std::vector<Mark> marks) {
  return mirrored({page, std::move(marks)});
}
template <typename T>
const T& mark(const Frame& frame, std::size_t i) {
  return std::get<T>(frame.marks.at(i));
}
}  // namespace

TEST_CASE("what stands at the left edge stands at the right one, at the same height", "[mirror]") {
  const Frame turned = mirrored_of({FillMark{{{10_mm, 5_mm}, {30_mm, 2_mm}}, Ink::text},
                                    StrokeMark{{10_mm, 9_mm}, {90_mm, 9_mm}, 1_mm},
                                    LinkMark{{{0_mm, 0_mm}, {5_mm, 5_mm}}, "row", "Row"}});
  CHECK(mark<FillMark>(turned, 0).area.left() == 60_mm);
  CHECK(mark<FillMark>(turned, 0).area.top() == 5_mm);
  CHECK(mark<FillMark>(turned, 0).area.size.width == 30_mm);
  CHECK(mark<StrokeMark>(turned, 1).from.x == 90_mm);
  CHECK(mark<StrokeMark>(turned, 1).to.x == 10_mm);
  CHECK(mark<LinkMark>(turned, 2).area.left() == 95_mm);
}

TEST_CASE("what is said under a drawing turns over though the drawing does not", "[mirror]") {
  const Rect room{{10_mm, 10_mm}, {20_mm, 20_mm}};
  const auto mark_at = [](Length x) { return StrokeMark{{x, 12_mm}, {x + 2_mm, 12_mm}, 1_mm}; };
  const Frame turned = mirrored_of({OpenTag{Structure::figure, "Rex", "", room}, mark_at(11_mm),
                                    OpenTag{Structure::caption, "", ""}, mark_at(11_mm), CloseTag{},
                                    mark_at(12_mm), CloseTag{}});
  CHECK(mark<StrokeMark>(turned, 1).from.x == 71_mm);
  CHECK(mark<StrokeMark>(turned, 3).from.x == 89_mm);
  CHECK(mark<StrokeMark>(turned, 5).from.x == 72_mm);
}

TEST_CASE("a drawing with a room of its own is moved as it is", "[mirror]") {
  const Rect room{{10_mm, 10_mm}, {20_mm, 20_mm}};
  const auto mark_at = [](Length x) { return StrokeMark{{x, 12_mm}, {x + 2_mm, 12_mm}, 1_mm}; };
  const Frame turned = mirrored_of({OpenTag{Structure::figure, "Rex", "", room}, mark_at(11_mm),
                                    OpenTag{Structure::paragraph, "", ""}, mark_at(25_mm),
                                    CloseTag{}, CloseTag{}, mark_at(11_mm)});
  // The room goes from 10..30 to 70..90; what is in it goes with it.
  CHECK(mark<StrokeMark>(turned, 1).from.x == 71_mm);
  CHECK(mark<StrokeMark>(turned, 1).to.x == 73_mm);
  CHECK(mark<StrokeMark>(turned, 3).from.x == 85_mm);
  CHECK(mark<StrokeMark>(turned, 6).from.x == 89_mm);
  CHECK(mark<StrokeMark>(turned, 6).to.x == 87_mm);
}

TEST_CASE("hatching turns its area over and keeps the direction that tells the tool", "[mirror]") {
  HatchMark hatch;
  hatch.area = {rectangle_contour({{10_mm, 10_mm}, {5_mm, 5_mm}})};
  hatch.degrees = 30;
  const Frame turned = mirrored_of({hatch});
  CHECK(mark<HatchMark>(turned, 0).degrees == 30);
  CHECK(mark<HatchMark>(turned, 0).area.front().start.x >= 85_mm);
}

TEST_CASE("twice turned is as before", "[mirror]") {
  const Frame frame{page, {FillMark{{{10_mm, 5_mm}, {30_mm, 2_mm}}, Ink::text}}};
  CHECK(to_text(mirrored(mirrored(frame))) == to_text(frame));
}

// Directions of scripts: Unicode's CLDR, scriptMetadata ("Arab", "Hebr" … run from the right).
TEST_CASE("languages that run from the right are known by language and script", "[direction]") {
  for (const char* tag : {"ar", "ar-EG", "AR", "he", "fa", "ur-PK", "az-Arab", "ckb"}) {
    INFO(tag);
    CHECK(right_to_left(tag));
  }
  for (const char* tag : {"en", "de-CH", "vi", "az", "ar-Latn", "uz-Cyrl", "es-419", ""}) {
    INFO(tag);
    CHECK_FALSE(right_to_left(tag));
  }
}
}  // namespace furnish
