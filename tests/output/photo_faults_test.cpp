#include <fmt/format.h>
#include <sys/resource.h>
#include <zlib.h>
#include <catch2/catch.hpp>

#include <ctime>

#include "output/photo.h"
#include "output/photo_files.h"
#include "share.h"

using namespace furnish;
using namespace furnish::test;

namespace {
std::string big_endian(std::uint32_t n) {
  std::string out;
  for (int shift = 24; shift >= 0; shift -= 8) out += static_cast<char>(n >> shift & 0xFF);
  return out;
}
std::string chunk(const std::string& kind, const std::string& data) {
  const std::string body = kind + data;
  const auto sum =
      ::crc32(0, reinterpret_cast<const Bytef*>(body.data()), static_cast<uInt>(body.size()));
  return big_endian(static_cast<std::uint32_t>(data.size())) + body +
         big_endian(static_cast<std::uint32_t>(sum));
}
/// A PNG of grey pixels whose data are `length` zeros, whatever its header says.
std::string png_of_zeros(std::uint32_t width, std::uint32_t height, std::size_t length) {
  const std::string zeros(length, '\0');
  uLongf size = ::compressBound(length);
  std::string packed(size, '\0');
  REQUIRE(::compress2(reinterpret_cast<Bytef*>(packed.data()), &size,
                      reinterpret_cast<const Bytef*>(zeros.data()), length, 9) == Z_OK);
  packed.resize(size);
  const std::string header =
      big_endian(width) + big_endian(height) + std::string("\x08\0\0\0\0", 5);
  return "\x89PNG\r\n\x1A\n" + chunk("IHDR", header) + chunk("IDAT", packed) + chunk("IEND", "");
}

/// Writes other sides into the frame header of a JPEG.
std::string with_sides(std::string jpeg, unsigned width, unsigned height) {
  const std::size_t frame = jpeg.find("\xFF\xC0");
  REQUIRE(frame != std::string::npos);
  const unsigned sides[] = {height, width};
  for (std::size_t i = 0; i < 2; ++i) {
    jpeg[frame + 5 + 2 * i] = static_cast<char>(sides[i] >> 8);
    jpeg[frame + 6 + 2 * i] = static_cast<char>(sides[i] & 0xFF);
  }
  return jpeg;
}

/// Most memory that this process ever had, in megabytes.
long peak() {
  rusage usage{};
  ::getrusage(RUSAGE_SELF, &usage);
  return usage.ru_maxrss / 1024;
}
}  // namespace

TEST_CASE("What is no photo is refused by its bytes, whatever its name") {
  CHECK(refused("") == "photo-kind: the photo 'photos/a.jpg' is empty");
  const std::string none =
      "photo-kind: 'photos/a.jpg' is no photo: it is not a JPEG, PNG or WebP file";
  CHECK(refused("Dear groomer,\nplease find attached\n") == none);
  CHECK(refused("\xFF") == none);
  CHECK(refused(std::string(1000, '\0')) == none);
  const auto is_a = [](const std::string& kind) {
    return "photo-kind: the photo 'photos/a.jpg' is a " + kind + " file, which is not read";
  };
  // The first bytes of a telephone's HEIC file: a box of 24 bytes with its brand.
  CHECK(refused(std::string("\0\0\0\x18", 4) + "ftypheic" + std::string(40, '\0')) == is_a("HEIC"));
  CHECK(refused("GIF89a....") == is_a("GIF"));
  CHECK(refused(std::string("II*\0....", 8)) == is_a("TIFF"));
  DiagnosticSink sink;
  open_photograph("a", std::string("\0\0\0\x18", 4) + "ftypmif1", {}, sink);
  CHECK(sink.all().front().hint == "export it as JPEG");
}

TEST_CASE("Photos beyond the bounds are refused before they are decoded, and told the bound") {
  const PhotoFiles files;
  CHECK(refused(std::string(most_photo_bytes + 1, 'x')) ==
        "photo-size: the photo 'photos/a.jpg' has 33554433 bytes; at most 33554432 (32 "
        "MiB) are read");
  const std::string jpeg = bytes_of(files.make("a.jpg", 80, 60));
  const auto too_many = [](unsigned width, unsigned height) {
    return fmt::format(
        "photo-size: the photo 'photos/a.jpg' has {} × {} pixels; at most 64 megapixels are read",
        width, height);
  };
  CHECK(refused(with_sides(jpeg, 20000, 10000)) == too_many(20000, 10000));
  CHECK(refused(png_of_zeros(20000, 10000, 100)) == too_many(20000, 10000));
  // 65,000² pixels that pack to almost nothing.
  CHECK(refused(png_of_zeros(65000, 65000, 50'000'000)) == too_many(65000, 65000));
  CHECK(refused(png_of_zeros(0x7FFFFFFF, 0x7FFFFFFF, 100)) == too_many(0x7FFFFFFF, 0x7FFFFFFF));
}

TEST_CASE("The largest photo that is read takes seconds and megabytes, not more") {
  std::string bytes = png_of_zeros(8000, 8000, 8001 * 8000);
  const long before = peak();
  const std::clock_t start = std::clock();
  DiagnosticSink sink;
  const auto photo = open_photograph("a.png", std::move(bytes), {}, sink);
  REQUIRE(photo);
  REQUIRE(reduced(*photo, {0, 0, 8000, 8000}, 400, 400));
  // Of this process alone, so that a busy machine does not count: thirty times what it takes.
  CHECK(std::clock() - start < 60 * CLOCKS_PER_SEC);
  CHECK(peak() - before < 400);
}

TEST_CASE("Photos that are cut off or lie about themselves are refused") {
  const PhotoFiles files;
  const std::string cut = "photo-broken: the photo 'photos/a.jpg' is cut off";
  const std::string jpeg = bytes_of(files.make("a.jpg", 400, 300));
  CHECK(refused(jpeg.substr(0, jpeg.size() / 2)) == cut);
  CHECK(refused(jpeg.substr(0, 100)) == cut);
  CHECK(refused(jpeg.substr(0, 4)) == cut);
  CHECK(refused(with_sides(jpeg, 4000, 3000)) == cut);
  CHECK(refused(with_sides(jpeg, 0, 300)) == cut);
  const std::string layered = bytes_of(files.make("b.jpg", 400, 300, "-interlace JPEG"));
  CHECK(refused(layered.substr(0, layered.size() * 2 / 3)) == cut);
  const std::string png = bytes_of(files.make("a.png", 400, 300));
  CHECK(refused(png.substr(0, png.size() / 2)) == cut);
  CHECK(refused(png.substr(0, 20)) == cut);
  CHECK(refused(png_of_zeros(1000, 1000, 100)).starts_with("photo-broken"));
  CHECK(refused(png_of_zeros(0, 10, 100)).starts_with("photo-broken"));
  const std::string webp = bytes_of(files.make("a.webp", 400, 300));
  CHECK(refused(webp.substr(0, webp.size() / 2)) == cut + " or broken");
  CHECK(refused(webp.substr(0, 14)) == cut);
  std::string wrong = png;
  wrong[png.size() / 2] = static_cast<char>(~wrong[png.size() / 2]);
  CHECK(refused(wrong).starts_with("photo-broken: the photo 'photos/a.jpg' is broken"));
}

TEST_CASE("A JPEG of scans without end is refused") {
  const PhotoFiles files;
  std::string jpeg = bytes_of(files.make("a.jpg", 400, 300, "-interlace JPEG"));
  const std::size_t last = jpeg.rfind("\xFF\xDA"), end = jpeg.rfind("\xFF\xD9");
  const std::string scan = jpeg.substr(last, end - last);
  std::string many;
  for (int i = 0; i < 5000; ++i) many += scan;
  jpeg.insert(end, many.substr(0, 20'000'000));
  CHECK(refused(jpeg) ==
        "photo-broken: the photo 'photos/a.jpg' is not stored as a camera stores its photos");
}

TEST_CASE("No bytes in the place of others make a reader of photos fall") {
  const PhotoFiles files;
  std::uint32_t state = 1;
  const auto draw = [&](std::size_t below) {
    state = state * 1664525 + 1013904223;
    return (state >> 8) % below;
  };
  const std::size_t rounds = share_of(400);
  std::size_t usable = 0;
  for (const std::string ending : {"jpg", "png", "webp"}) {
    const std::string path = files.make("a." + ending, 64, 48);
    REQUIRE(run("exiftool -q -overwrite_original -n -Orientation=6 -Make=Camera '" + path + "'")
                .status == 0);
    const std::string whole = bytes_of(path);
    for (std::size_t round = 0; round < rounds; ++round) {
      std::string bytes = whole;
      for (std::size_t i = 0; i < 1 + draw(4); ++i) {
        bytes[draw(round % 2 == 0 ? 200 : bytes.size())] = static_cast<char>(draw(256));
      }
      if (draw(8) == 0) bytes.resize(draw(bytes.size()));
      DiagnosticSink sink;
      const auto photo = open_photograph("a", bytes, {}, sink);
      CHECK(photo.has_value() == sink.all().empty());
      if (!photo) continue;
      ++usable;
      CHECK(reduced(*photo, {0, 0, photo->width, photo->height}, 20, 20));
    }
  }
  CHECK(usable > rounds / 4);
  CHECK(usable < 3 * rounds);
}
