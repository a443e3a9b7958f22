#include "output/photo.h"

#include <fmt/format.h>
#include <catch2/catch.hpp>

#include "output/photo_files.h"

using namespace furnish;
using namespace furnish::test;

namespace {
/// The whole photo at its own size, as a file.
std::string shown(const PhotoFiles& files, const Photograph& photo) {
  const auto whole = reduced(photo, {0, 0, photo.width, photo.height}, photo.width, photo.height);
  REQUIRE(whole);
  CHECK(whole->width == photo.width);
  CHECK(whole->height == photo.height);
  return files.keep("shown.jpg", whole->jpeg);
}
}  // namespace

TEST_CASE("Every orientation of a camera comes out upright, as ImageMagick has it") {
  const PhotoFiles files;
  constexpr const char* endings[] = {"jpg", "png", "webp"};
  const auto turned = [&](int orientation, const std::string& ending) {
    return files.path(fmt::format("turned-{}.{}", orientation, ending));
  };
  // One exiftool for all of them: it is long in starting.
  std::string copies, turns;
  for (const std::string ending : endings) {
    const std::string stored = files.make("stored." + ending, 90, 60, "-quality 95");
    for (int orientation = 1; orientation <= 8; ++orientation) {
      copies += fmt::format("cp '{}' '{}' && ", stored, turned(orientation, ending));
      turns +=
          fmt::format("-Orientation={} '{}' -execute ", orientation, turned(orientation, ending));
    }
  }
  REQUIRE(run(copies + "exiftool " + turns + "-common_args -q -overwrite_original -n").status == 0);
  for (int orientation = 1; orientation <= 8; ++orientation) {
    const std::string wanted = files.path("wanted.png"), crop = files.path("crop.png");
    // It turns a JPEG by its orientation, whatever it knows of that of the other kinds.
    REQUIRE(run(fmt::format("convert '{}' -auto-orient +repage -write '{}' -crop 30x25+10+20 "
                            "+repage '{}'",
                            turned(orientation, "jpg"), wanted, crop))
                .status == 0);
    for (const std::string ending : endings) {
      INFO(ending << " " << orientation);
      const PhotographPtr photo = opened(turned(orientation, ending));
      CHECK(photo->orientation == orientation);
      CHECK(photo->width == (orientation < 5 ? 90U : 60U));
      const std::string picture = shown(files, *photo);
      CHECK(distance(picture, wanted) < 0.03);
      if (orientation > 1) CHECK(distance(picture, files.path("stored." + ending)) > 0.05);
      // A part is where it is in the upright picture.
      const PixelRect part{10, 20, 30, 25};
      const auto cut = reduced(*photo, part, part.width, part.height);
      REQUIRE(cut);
      CHECK(distance(files.keep("cut.jpg", cut->jpeg), crop) < 0.04);
    }
  }
}

TEST_CASE("A photo is reduced to the pixels asked for and never enlarged") {
  const PhotoFiles files;
  const std::string ending = GENERATE("jpg", "png", "webp");
  INFO(ending);
  const std::string path = files.make("large." + ending, 900, 600, "-quality 95");
  const PhotographPtr photo = opened(path);
  const PixelRect whole{0, 0, 900, 600};
  for (const std::uint32_t width : {899U, 700U, 333U, 90U}) {
    const std::uint32_t height = width * 2 / 3;
    const auto small = reduced(*photo, whole, width, height);
    REQUIRE(small);
    CHECK(small->width == width);
    CHECK(small->height == height);
    const std::string wanted = files.path("wanted.png");
    REQUIRE(run(fmt::format("convert '{}' -filter Catrom -resize {}x{}! '{}'", path, width, height,
                            wanted))
                .status == 0);
    CHECK(distance(files.keep("small.jpg", small->jpeg), wanted) < 0.02);
  }
  const auto large = reduced(*photo, whole, 5000, 5000);
  REQUIRE(large);
  CHECK(large->width == 900);
  CHECK(large->height == 600);
  const auto again = reduced(*photo, whole, 5000, 5000);
  CHECK(again->jpeg == large->jpeg);
}

TEST_CASE("Grey photos stay grey, CMYK ones come out as light, transparent ones on white") {
  const PhotoFiles files;
  SECTION("grey") {
    for (const std::string ending : {"jpg", "png"}) {
      const std::string path = files.make("grey." + ending, 80, 60, "-colorspace Gray");
      const std::string picture = shown(files, *opened(path));
      CHECK(run("identify -format '%[channels] %[type]' '" + picture + "'").out ==
            "gray Grayscale");
      CHECK(distance(picture, path) < 0.03);
    }
  }
  SECTION("CMYK") {
    // Printers' files: ImageMagick writes the inks inverted and says so by Adobe's marker. Without
    // a profile it turns them to light as we do.
    const std::string path = files.make("inks.jpg", 80, 60, "-colorspace CMYK -quality 96");
    REQUIRE(run("identify -format '%[colorspace]' '" + path + "'").out == "CMYK");
    const std::string wanted = files.path("light.png");
    REQUIRE(run("convert '" + path + "' -colorspace sRGB '" + wanted + "'").status == 0);
    CHECK(distance(shown(files, *opened(path)), wanted) < 0.03);
  }
  SECTION("transparent") {
    for (const std::string ending : {"png", "webp"}) {
      const std::string path = files.path("hole." + ending);
      REQUIRE(run("convert -size 40x30 xc:'rgba(200,0,0,0.5)' '" + path + "'").status == 0);
      const std::string wanted = files.path("wanted.png");
      REQUIRE(run("convert '" + path + "' -background white -flatten '" + wanted + "'").status ==
              0);
      CHECK(distance(shown(files, *opened(path)), wanted) < 0.02);
    }
  }
}

TEST_CASE("A photo keeps nothing of what the camera wrote beside its pixels") {
  const PhotoFiles files;
  const std::string path = files.make("told.jpg", 120, 90);
  REQUIRE(run("exiftool -q -overwrite_original -GPSLatitude=51.5 -GPSLatitudeRef=N "
              "-GPSLongitude=0.1 -GPSLongitudeRef=W -Make=Camera -SerialNumber=77 "
              "-XMP:Creator=Somebody -IPTC:City=Eastmere -Comment=secret '" +
              path + "'")
              .status == 0);
  // So that the check below can fail.
  REQUIRE(run("exiftool -s '" + path + "'").out.find("GPSLatitude") != std::string::npos);
  const std::string picture = shown(files, *opened(path));
  CHECK(run("exiftool -s -a -G1 -EXIF:all -GPS:all -XMP:all -IPTC:all -ICC_Profile:all "
            "-MakerNotes:all -Photoshop:all -APP14:all -File:Comment '" +
            picture + "'")
            .out.empty());
}
