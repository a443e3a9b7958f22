#include <catch2/catch.hpp>

#include <png.h>

#include "output/png.h"
#include "output/sample_page.h"
#include "output/svg.h"
#include "output/tool.h"

using namespace furnish;
using namespace furnish::test;

namespace {
std::uint32_t big_endian(const std::string& bytes, std::size_t at) {
  std::uint32_t n = 0;
  for (std::size_t i = 0; i < 4; ++i) n = n << 8 | static_cast<unsigned char>(bytes.at(at + i));
  return n;
}

/// Grey of each pixel, read by libpng.
struct Picture {
  explicit Picture(const std::string& bytes) {
    png_image image{};
    image.version = PNG_IMAGE_VERSION;
    REQUIRE(png_image_begin_read_from_memory(&image, bytes.data(), bytes.size()) != 0);
    image.format = PNG_FORMAT_GRAY;
    width = image.width;
    height = image.height;
    grey.resize(PNG_IMAGE_SIZE(image));
    REQUIRE(png_image_finish_read(&image, nullptr, grey.data(), 0, nullptr) != 0);
  }
  int at(double x_mm, double y_mm, int dpi) const {
    const auto pixel = [&](double mm) { return static_cast<std::size_t>(mm / 25.4 * dpi); };
    return grey.at(pixel(y_mm) * width + pixel(x_mm));
  }
  std::size_t width, height;
  std::vector<unsigned char> grey;
};
}  // namespace

TEST_CASE("A PNG has the page's size at its resolution, and says both") {
  Type type;
  DiagnosticSink sink;
  const auto bytes = to_png(sample_page(type), sample_info(), 150, sink);
  REQUIRE(bytes);
  const Picture picture(*bytes);
  // A5: 148 × 210 mm, at 150 dots to 25.4 mm 874.02 × 1240.16, of which a hundredth is rounded
  // away.
  CHECK(picture.width == 875);
  CHECK(picture.height == 1241);
  const std::size_t at = bytes->find("pHYs");
  REQUIRE(at != std::string::npos);
  CHECK(big_endian(*bytes, at + 4) == 5906);  // 150 / 0.0254
  CHECK(bytes->find(sample_info().title) != std::string::npos);
}

TEST_CASE("A PNG shows the marks where they are") {
  DiagnosticSink sink;
  const Contour ring_out = disc({50_mm, 50_mm}, 20_mm), ring_in = disc({50_mm, 50_mm}, 10_mm);
  const Frame page{
      {100_mm, 100_mm},
      {FillMark{{{5_mm, 5_mm}, {10_mm, 10_mm}}, Ink::text},
       FillMark{{{7_mm, 7_mm}, {2_mm, 2_mm}}, Ink::paper},
       FillMark{{{20_mm, 5_mm}, {10_mm, 10_mm}}, Ink::tint},
       PathMark{{ring_out, ring_in}, Ink::quiet, std::nullopt, 0_mm, Dash::solid},
       StrokeMark{{5_mm, 90_mm}, {95_mm, 90_mm}, 2_mm, Ink::text, Dash::solid},
       HatchMark{{box({{80_mm, 10_mm}, {10_mm, 20_mm}})}, 0, 4_mm, 1_mm, Ink::text, false},
       HatchMark{{box({{80_mm, 40_mm}, {16_mm, 20_mm}})}, 0, 4_mm, 1_mm, Ink::text, true}}};
  const auto bytes = to_png(page, sample_info(), 254, sink);
  REQUIRE(bytes);
  const Picture picture(*bytes);
  const auto at = [&](double x, double y) { return picture.at(x, y, 254); };
  CHECK(picture.width == 1000);
  CHECK(at(2, 2) == 255);
  CHECK(at(6, 6) == 0);
  CHECK(at(8, 8) == 255);
  CHECK(at(25, 10) == 0xE4);
  CHECK(at(35, 50) == 0x55);
  CHECK(at(50, 50) == 255);  // even-odd: a hole
  CHECK(at(50, 90.9) == 0);
  CHECK(at(50, 91.2) == 255);
  // Lines at multiples of the spacing from the page's corner, inside the area only.
  CHECK(at(85, 12.4) == 0);
  CHECK(at(85, 14) == 255);
  CHECK(at(85, 16) == 0);
  CHECK(at(91, 16) == 255);
  CHECK(at(84, 44) == 0);
  CHECK(at(86, 44) == 255);
  CHECK(at(84, 46) == 255);
  CHECK(at(88, 48) == 0);
}

TEST_CASE("Pictures that nobody can want are refused with the bounds") {
  DiagnosticSink sink;
  const Frame page{{148_mm, 210_mm}, {}};
  for (const int dpi : {-1, 0, 9, 1201, 1'000'000})
    CHECK_FALSE(to_png(page, sample_info(), dpi, sink));
  CHECK_FALSE(to_png({{5000_mm, 5000_mm}, {}}, sample_info(), 300, sink));
  CHECK(sink.error_count() == 6);
  CHECK(sink.all().front().hint == "use 10 to 1200 dpi, and at most 200 million pixels");
}

TEST_CASE("An SVG is XML with the page's size, its title and its language") {
  Type type;
  DiagnosticSink sink;
  const TemporaryFolder folder;
  const auto bytes = to_svg(sample_page(type), sample_info(), sink);
  REQUIRE(bytes);
  const std::string path = folder.file("a.svg", *bytes);
  CHECK(run("xmllint --noout --nonet " + path).status == 0);
  const auto ask = [&](const std::string& what) {
    return run("xmllint --nonet --xpath 'string(" + what + ")' " + path).out;
  };
  CHECK(ask("/*/@width").starts_with("419.5"));  // 148 mm in points
  CHECK(ask("/*/@xml:lang") == "en-GB\n");
  CHECK(ask("/*/*[local-name()=\"title\"]") == sample_info().title + "\n");
}

TEST_CASE("The same page gives the same pictures") {
  Type type;
  DiagnosticSink sink;
  const Frame page = sample_page(type), again = sample_page(type);
  CHECK(to_png(page, sample_info(), 100, sink) == to_png(again, sample_info(), 100, sink));
  CHECK(to_svg(page, sample_info(), sink) == to_svg(again, sample_info(), sink));
}
