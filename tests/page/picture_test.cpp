#include "page/picture.h"

#include <catch2/catch.hpp>

#include "page/around_corner.h"
#include "support.h"

using namespace furnish;

namespace {
PhotographPtr photo_of(std::uint32_t width, std::uint32_t height) {
  return std::make_shared<const Photograph>(
      Photograph{"photos/rex.jpg", PhotoKind::jpeg, width, height, 1, {}});
}
}  // namespace

TEST_CASE("a crop is as large as it can be and loses more below than above", "[page][picture]") {
  // 4:3 out of a square of 1200: 900 rows; of the 300 that go, 100 above.
  CHECK(crop_to(1200, 1200, 4.0 / 3, {}) == PixelRect{0, 100, 1200, 900});
  // 1:1 out of 1600 × 1000: 600 columns go, half on each side.
  CHECK(crop_to(1600, 1000, 1, {}) == PixelRect{300, 0, 1000, 1000});
  CHECK(crop_to(1600, 1200, 4.0 / 3, {}) == PixelRect{0, 0, 1600, 1200});
  CHECK(crop_to(1, 1, 4.0 / 3, {}) == PixelRect{0, 0, 1, 1});
  CHECK(crop_to(100'000, 1, 1, {}) == PixelRect{50'000, 0, 1, 1});
}

TEST_CASE("a crop has its focus in the middle, or as near as the edges let it", "[page][picture]") {
  using Focus = std::array<double, 2>;
  CHECK(crop_to(1200, 1200, 4.0 / 3, Focus{0.5, 0.5}) == PixelRect{0, 150, 1200, 900});
  CHECK(crop_to(1200, 1200, 4.0 / 3, Focus{0.5, 0.4}) == PixelRect{0, 30, 1200, 900});
  CHECK(crop_to(1200, 1200, 4.0 / 3, Focus{0.5, 0.1}) == PixelRect{0, 0, 1200, 900});
  CHECK(crop_to(1200, 1200, 4.0 / 3, Focus{0, 1}) == PixelRect{0, 300, 1200, 900});
  CHECK(crop_to(1600, 1000, 1, Focus{0.25, 0.5}) == PixelRect{0, 0, 1000, 1000});
  CHECK(crop_to(1600, 1000, 1, Focus{0.5625, 0.9}) == PixelRect{400, 0, 1000, 1000});
}

TEST_CASE("a crop of any size lies inside and has its shape", "[page][picture]") {
  std::uint32_t state = 5;
  const auto draw = [&](std::uint32_t below) {
    state = state * 1664525 + 1013904223;
    return (state >> 8) % below;
  };
  for (int i = 0; i < 5000; ++i) {
    const std::uint32_t width = 1 + draw(9000), height = 1 + draw(9000);
    const double aspect = (1 + draw(400)) / 100.0;
    std::optional<std::array<double, 2>> focus;
    if (draw(2) == 0) focus = {draw(101) / 100.0, draw(101) / 100.0};
    const PixelRect crop = crop_to(width, height, aspect, focus);
    CHECK((crop.width > 0 && crop.x + crop.width <= width));
    CHECK((crop.height > 0 && crop.y + crop.height <= height));
    CHECK((crop.width == width || crop.height == height));
    CHECK((std::abs(crop.width - crop.height * aspect) <= 0.5 ||
           std::abs(crop.width / aspect - crop.height) <= 0.5 || crop.width == 1 ||
           crop.height == 1));
  }
}

TEST_CASE("a picture grows to its most, keeps its shape and says what it shows",
          "[page][picture]") {
  test::Desk desk;
  const Setting setting = desk.setting(test::reading_roles());
  const Picture picture(photo_of(1200, 1200), "Rex before", std::nullopt, 4.0 / 3, Length::mm(30),
                        Length::mm(45), 2);
  const Extent extent = picture.measure(Length::mm(100), setting);
  CHECK(extent.least == Length::mm(30));
  CHECK(extent.stretch == 2);
  CHECK(extent.too_wide == Length{});
  CHECK(picture.measure(Length::mm(39), setting).too_wide == Length::mm(1));
  Frame frame;
  picture.place({{Length::mm(10), Length::mm(20)}, {Length::mm(100), Length::mm(50)}}, setting,
                frame);
  const auto images = test::marks_of<ImageMark>(frame);
  REQUIRE(images.size() == 1);
  CHECK(images[0]->area ==
        Rect{{Length::mm(30), Length::mm(22.5)}, {Length::mm(60), Length::mm(45)}});
  CHECK(images[0]->crop == PixelRect{0, 100, 1200, 900});
  CHECK(test::marks_of<OpenTag>(frame)[0]->alt == "Rex before");
  CHECK(test::tags_balanced(frame));
}

TEST_CASE("a missing picture has a dashed frame of the same shape with the words inside",
          "[page][picture]") {
  test::Desk desk;
  const Setting setting = desk.setting(test::reading_roles());
  for (const char* says : {"photo missing", "foto no encontrada", "Foto fehlt: photos/rex.jpg"}) {
    const auto missing = missing_picture(says, 4.0 / 3, Length::mm(24), Length::mm(45), 2);
    const Extent extent = missing->measure(Length::mm(100), setting);
    CHECK(extent.least >= Length::mm(24));
    for (const Length height : {extent.least, Length::mm(60)}) {
      Frame frame;
      missing->place({{}, {Length::mm(100), height}}, setting, frame);
      const auto edges = test::marks_of<PathMark>(frame);
      REQUIRE(edges.size() == 1);
      CHECK(edges[0]->dash == Dash::dashed);
      const Contour& edge = edges[0]->contours.at(0);
      const Rect area{edge.start,
                      {edge.curves[0].end.x - edge.start.x, edge.curves[1].end.y - edge.start.y}};
      for (const TextMark* mark : test::marks_of<TextMark>(frame)) {
        CHECK(contains(area, test::ink_on_page(*mark)));
      }
      CHECK(test::text_of(frame) == says);
      CHECK(test::marks_of<OpenTag>(frame)[0]->alt == says);
    }
  }
  // Words too long for the least frame make it higher rather than leave it.
  const auto wordy = missing_picture(
      "This photo of the dog, taken before the trim, is missing or could not be read at all",
      4.0 / 3, Length::mm(10), Length::mm(10), 0);
  CHECK(wordy->measure(Length::mm(200), setting).least > Length::mm(10));
}

namespace {
/// Takes room and leaves it empty.
class Strip final : public Block {
 public:
  explicit Strip(Length height) : height_(height) {}
  Extent measure(Length, const Setting&) const override { return {height_, height_}; }
  void place(const Rect&, const Setting&, Frame&) const override {}

 private:
  Length height_;
};
}  // namespace

TEST_CASE("blocks go round a corner: narrow beside it, whole below it", "[page][picture]") {
  test::Desk desk;
  const Setting setting = desk.setting(test::reading_roles());
  constexpr Length width = Length::mm(100), gutter = Length::mm(5), air = Length::mm(2);
  constexpr Size corner{Length::mm(30), Length::mm(20)};
  const auto strip = [](double mm) { return std::make_shared<Strip>(Length::mm(mm)); };
  const auto rule = std::make_shared<Rule>(rule_row);
  const auto photo = std::make_shared<Picture>(photo_of(1200, 800), "Rex", std::nullopt, 1.5,
                                               corner.height, corner.height, 0);
  struct Case {
    double first, second;
    Length height;
    std::vector<Length> widths;  // of the rules after the first and second strip
  };
  const Length narrow = width - corner.width - gutter;
  for (const Case& one : {Case{5, 5, Length::mm(20), {narrow, narrow}},
                          // The rule after the first strip waits for the end of the corner.
                          Case{21, 5, Length::mm(27) + rule_row * 2, {width, width}},
                          // What begins beside the corner stays narrow to its end.
                          Case{5, 30, Length::mm(35) + rule_row * 2, {narrow, width}}}) {
    const AroundCorner around({strip(one.first), rule, strip(one.second), rule}, photo, corner,
                              gutter, air);
    const Extent extent = around.measure(width, setting);
    CHECK(extent.wanted == one.height);
    CHECK(extent.least == extent.wanted);
    CHECK(around.parts(width, setting).size() == 5);
    Frame frame;
    around.place({{Length::mm(10), Length::mm(10)}, {width, extent.wanted}}, setting, frame);
    const auto rules = test::marks_of<StrokeMark>(frame);
    REQUIRE(rules.size() == 2);
    for (std::size_t i = 0; i < 2; ++i) {
      CHECK(rules[i]->to.x - rules[i]->from.x == one.widths[i]);
    }
    CHECK(test::marks_of<ImageMark>(frame)[0]->area ==
          Rect{{Length::mm(80), Length::mm(10)}, corner});
  }
}

TEST_CASE("text round a corner never meets it", "[page][picture]") {
  test::Desk desk;
  const Setting setting = desk.setting(test::reading_roles());
  std::uint32_t state = 3;
  const auto draw = [&](std::size_t below) {
    state = state * 1664525 + 1013904223;
    return (state >> 8) % below;
  };
  for (int round = 0; round < 60; ++round) {
    const Length height = Length::mm(10 + static_cast<double>(draw(40)));
    const Size corner{scaled(height, 1.5), height};
    const auto photo =
        std::make_shared<Picture>(photo_of(1200, 800), "Rex", std::nullopt, 1.5, height, height, 0);
    std::vector<BlockPtr> blocks;
    for (std::size_t i = 0; i < 1 + draw(6); ++i) {
      blocks.push_back(paragraph(test::made_up_text(draw, 1 + static_cast<int>(draw(30)))));
    }
    const AroundCorner around(blocks, photo, corner, Length::mm(5), Length::mm(1));
    const Length width = Length::mm(120);
    const Rect box{{}, {width, around.measure(width, setting).wanted}};
    Frame frame;
    around.place(box, setting, frame);
    const Rect area = test::marks_of<ImageMark>(frame).at(0)->area;
    CHECK(contains(box, area));
    for (const TextMark* mark : test::marks_of<TextMark>(frame)) {
      CHECK_FALSE(overlap(area, test::ink_on_page(*mark)));
    }
  }
}
