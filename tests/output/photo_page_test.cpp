#include <fmt/format.h>
#include <catch2/catch.hpp>

#include "output/check_page.h"
#include "output/pdf_rules.h"
#include "output/photo.h"
#include "output/photo_files.h"
#include "output/png.h"
#include "output/sample_page.h"
#include "output/svg.h"

using namespace furnish;
using namespace furnish::test;

namespace {
/// An A4 page with photos in frames of 4:3, two in a row, each a figure with its words.
Frame page_of(Type& type, const std::vector<PhotographPtr>& photos, Length width) {
  Frame page{{210_mm, 297_mm}, {}};
  Composer on(type, page);
  const auto document = on.tag(Structure::document);
  {
    const auto title = on.tag(Structure::title);
    on.text(10, 15, "Marlow", 20);
  }
  const Length height = width * 3 / 4;
  for (std::size_t i = 0; i < photos.size(); ++i) {
    const auto column = static_cast<std::int64_t>(i % 2), row = static_cast<std::int64_t>(i / 2);
    const auto figure = on.tag(Structure::figure, fmt::format("Photo {}", i + 1));
    page.marks.emplace_back(ImageMark{
        {{10_mm + (width + 5_mm) * column, 25_mm + (height + 5_mm) * row}, {width, height}},
        photos[i],
        crop_to(photos[i]->width, photos[i]->height, 4.0 / 3, std::nullopt)});
  }
  return page;
}

std::string pdf_of(const Frame& page) {
  DiagnosticSink sink;
  const auto bytes = to_pdf(std::vector{page}, sample_info(), {}, sink);
  for (const Diagnostic& said : sink.all()) FAIL(said.message);
  REQUIRE(bytes);
  return *bytes;
}

/// A line of `pdfimages -list`.
struct Listed {
  int width, height, x_ppi, y_ppi;
  std::string colour, encoding, interpolated;
};
std::vector<Listed> images_in(const std::string& path) {
  const auto said = run("pdfimages -list '" + path + "'");
  REQUIRE(said.status == 0);
  const auto words = words_of(said.out);
  std::vector<Listed> list;
  // Two lines of heads of 16 words and one dash, then 16 words a picture.
  for (std::size_t at = 17; at + 16 <= words.size(); at += 16) {
    list.push_back({std::stoi(words[at + 3]), std::stoi(words[at + 4]), std::stoi(words[at + 12]),
                    std::stoi(words[at + 13]), words[at + 5], words[at + 8], words[at + 9]});
  }
  return list;
}
}  // namespace

TEST_CASE("Photos in a PDF have 300 dpi, and their own pixels if they have fewer") {
  const PhotoFiles files;
  Type type;
  const PhotographPtr large = opened(files.make("large.jpg", 3000, 2250)),
                      small = opened(files.make("small.png", 200, 150)),
                      upright = opened(files.make("upright.webp", 1500, 2000));
  const std::string path =
      files.keep("a.pdf", pdf_of(page_of(type, {large, small, upright}, 80_mm)));
  const auto images = images_in(path);
  REQUIRE(images.size() == 3);
  for (const std::size_t i : {0U, 2U}) {
    CHECK(std::abs(images[i].x_ppi - 300) <= 5);
    CHECK(std::abs(images[i].y_ppi - 300) <= 5);
  }
  CHECK(images[1].width == 200);
  CHECK(images[1].height == 150);
  for (const Listed& image : images) {
    CHECK(image.encoding == "jpeg");
    CHECK(image.colour == "rgb");
    CHECK(image.interpolated == "no");
  }
}

TEST_CASE("A page with four photos of 12 megapixels stays small") {
  const PhotoFiles files;
  Type type;
  // Each opened by itself, so that each is in the file by itself.
  const std::string path = files.make("a.jpg", 4000, 3000, "-quality 92");
  const std::vector<PhotographPtr> photos{opened(path), opened(path), opened(path), opened(path)};
  const std::string bytes = pdf_of(page_of(type, photos, 90_mm));
  CHECK(bytes.size() < 1'500'000);
  CHECK(bytes.size() > 200'000);
  CHECK(bytes == pdf_of(page_of(type, photos, 90_mm)));
  CHECK(images_in(files.keep("a.pdf", bytes)).size() == 4);
}

TEST_CASE("A PDF with photos keeps every rule and says what they show") {
  const PhotoFiles files;
  Type type;
  const std::string bytes =
      pdf_of(page_of(type,
                     {opened(files.make("a.jpg", 1600, 1200)),
                      opened(files.make("grey.jpg", 800, 600, "-colorspace Gray")),
                      opened(files.make("inks.jpg", 800, 600, "-colorspace CMYK"))},
                     85_mm));
  CHECK(pdf_faults(bytes).empty());
  const std::string path = files.keep("a.pdf", bytes);
  CHECK(run("qpdf --check '" + path + "'").status == 0);
  const PdfFile pdf(bytes);
  std::vector<std::string> said;
  for (QPDFObjectHandle element : pdf.elements()) {
    if (type_of(element) == "/Figure") said.push_back(element.getKey("/Alt").getUTF8Value());
  }
  CHECK(said == std::vector<std::string>{"Photo 1", "Photo 2", "Photo 3"});
  CHECK(images_in(path)[1].colour == "gray");
}

TEST_CASE("Nothing of a camera is in a PDF") {
  const PhotoFiles files;
  Type type;
  const std::string photo = files.make("told.jpg", 1600, 1200);
  REQUIRE(run("exiftool -q -overwrite_original -n -GPSLatitude=51.5 -GPSLatitudeRef=N "
              "-Make=Cameramaker -XMP:Creator=Somebody -Comment=whereabouts -Orientation=1 '" +
              photo + "'")
              .status == 0);
  const std::string bytes = pdf_of(page_of(type, {opened(photo)}, 80_mm));
  const std::string pdf = files.keep("a.pdf", bytes), image = files.path("out-000.jpg");
  REQUIRE(run("pdfimages -all '" + pdf + "' '" + files.path("out") + "'").status == 0);
  const auto told = [](const std::string& path) {
    return run("exiftool -s -a -G1 -EXIF:all -GPS:all -XMP:all -File:Comment '" + path + "'").out;
  };
  CHECK(told(photo).find("GPSLatitude") != std::string::npos);
  CHECK(told(image).empty());
  for (const std::string_view word : {"Exif", "Cameramaker", "Somebody", "whereabouts"}) {
    CHECK(bytes.find(word) == std::string::npos);
  }
}

TEST_CASE("PNG and SVG show the same photo as the PDF") {
  const PhotoFiles files;
  Type type;
  DiagnosticSink sink;
  const Frame page = page_of(type, {opened(files.make("a.jpg", 1600, 1200))}, 120_mm);
  const auto png = to_png(page, sample_info(), 100, sink), svg = to_svg(page, sample_info(), sink);
  REQUIRE(png);
  REQUIRE(svg);
  CHECK(*svg == *to_svg(page, sample_info(), sink));
  CHECK(svg->find("data:image/jpeg;base64,") != std::string::npos);
  files.keep("a.pdf", pdf_of(page));
  const std::string pdf = files.path("page.png");
  REQUIRE(run("pdftoppm -r 100 -png -singlefile '" + files.path("a.pdf") + "' '" +
              files.path("page") + "'")
              .status == 0);
  const std::string ours = files.path("ours.png"), theirs = files.path("theirs.png");
  const auto cut = [&](const std::string& from, const std::string& to) {
    // The photo, 10 to 130 mm by 25 to 115 mm, less a pixel round it.
    return run("convert '" + from + "' -crop 470x352+41+100 +repage '" + to + "'").status == 0;
  };
  REQUIRE(cut(files.keep("p.png", *png), ours));
  REQUIRE(cut(pdf, theirs));
  CHECK(distance(ours, theirs) < 0.02);
  // The width and place of the picture in the SVG, in points.
  const auto scale = matches(*svg, R"x(<use xlink:href="#[^"]+" transform="matrix\(([^"]+)\)")x");
  REQUIRE_FALSE(scale.empty());
  CHECK(scale.front().find("28.346") != std::string::npos);  // 10 mm from the left
}

TEST_CASE("A photo that stands several times on a page is in the file once") {
  const PhotoFiles files;
  Type type;
  const PhotographPtr photo = opened(files.make("a.jpg", 1600, 1200));
  const std::string once = pdf_of(page_of(type, {photo}, 80_mm)),
                    often = pdf_of(page_of(type, {photo, photo, photo, photo}, 80_mm));
  CHECK(often.size() < once.size() + 5000);
}

TEST_CASE("A photo that fell to pieces after it was opened is an error, not a white place") {
  const PhotoFiles files;
  Type type;
  Photograph photo = *opened(files.make("a.jpg", 1600, 1200));
  photo.bytes.resize(300);
  const Frame page = page_of(type, {std::make_shared<const Photograph>(photo)}, 80_mm);
  DiagnosticSink sink;
  CHECK_FALSE(to_pdf(std::vector{page}, sample_info(), {}, sink));
  CHECK_FALSE(to_png(page, sample_info(), 100, sink));
  CHECK_FALSE(to_svg(page, sample_info(), sink));
  CHECK(sink.error_count() == 3);
}

TEST_CASE("Photos without room or outside their edges are refused") {
  const PhotoFiles files;
  const PhotographPtr photo = opened(files.make("a.jpg", 160, 120));
  const Rect area{{10_mm, 10_mm}, {40_mm, 30_mm}};
  DiagnosticSink sink;
  const auto passes = [&](ImageMark mark) {
    return check_page({{210_mm, 297_mm}, {std::move(mark)}}, sink);
  };
  CHECK(passes({area, photo, {0, 0, 160, 120}}));
  CHECK_FALSE(passes({area, nullptr, {0, 0, 160, 120}}));
  CHECK_FALSE(passes({area, photo, {1, 0, 160, 120}}));
  CHECK_FALSE(passes({area, photo, {0, 0, 160, 121}}));
  CHECK_FALSE(passes({area, photo, {0, 0, 0, 120}}));
  CHECK_FALSE(passes({area, photo, {0xFFFFFFFF, 0, 2, 120}}));
  CHECK_FALSE(passes({{area.origin, {0_mm, 30_mm}}, photo, {0, 0, 160, 120}}));
}
