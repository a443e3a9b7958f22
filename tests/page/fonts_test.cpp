#include "page/fonts.h"

#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <thread>

#include "support.h"
#include "threads_started.h"

using namespace furnish;

namespace {
/// A big-endian number of two bytes from a font file, read without any font library.
int number_at(const std::string& bytes, std::size_t at) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(bytes.at(i)); };
  const int value = byte(at) << 8 | byte(at + 1);
  return value >= 0x8000 ? value - 0x10000 : value;
}

std::size_t table_at(const std::string& bytes, const std::string& tag) {
  for (int i = 0; i < number_at(bytes, 4); ++i) {
    const auto entry = static_cast<std::size_t>(12 + 16 * i);
    if (bytes.compare(entry, 4, tag) != 0) continue;
    return static_cast<std::size_t>(number_at(bytes, entry + 8) & 0xFFFF) << 16 |
           static_cast<std::size_t>(number_at(bytes, entry + 10) & 0xFFFF);
  }
  return 0;
}

std::string bytes_of(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}
}  // namespace

TEST_CASE("capital height agrees with the font file's own table", "[page][fonts]") {
  test::Desk desk;
  REQUIRE(desk.fonts);
  const std::pair<Face, const char*> files[] = {{Face::regular, "Regular"},
                                                {Face::semibold, "SemiBold"},
                                                {Face::bold, "Bold"},
                                                {Face::italic, "Italic"}};
  for (const auto& [face, file] : files) {
    INFO(file);
    const std::string bytes = bytes_of(test::fonts_folder() + "/SourceSans3-" + file + ".ttf");
    // OpenType 1.9: sCapHeight is at byte 88 of OS/2, sxHeight at 86, unitsPerEm at 18 of head.
    const std::size_t os2 = table_at(bytes, "OS/2"), head = table_at(bytes, "head");
    const double em = number_at(bytes, head + 18), said = number_at(bytes, os2 + 88) / em;
    CHECK(said == Approx(0.66));
    CHECK(desk.fonts->capital_height(face) <= said);
    CHECK(desk.fonts->capital_height(face) > said * 0.985);
    // The drawn H, by Pango and Cairo, at a size where a micrometre is a hundred-thousandth.
    const auto drawn =
        desk.shaper.shape({{"H", face, Role::body, TypeSize::quarters(1200)}}, {}, Breaking::never);
    CHECK(-drawn->lines[0]->ink().top() / Length::points(300) ==
          Approx(desk.fonts->capital_height(face)).margin(0.0005));
  }
  CHECK(desk.fonts->small_height() == Approx(0.486));  // TECH notes: x-height of Source Sans 3
  CHECK(desk.fonts->capital_height() == desk.fonts->capital_height(Face::bold));
}

TEST_CASE("a folder without fonts is an error, not a crash", "[page][fonts]") {
  DiagnosticSink sink;
  CHECK_FALSE(FontSet::open("/nowhere/at/all", sink));
  REQUIRE(sink.all().size() == 1);
  CHECK(to_text(sink.all()[0], SourceSet{}) ==
        "furnish: error: no font 'SourceSans3-Regular.ttf' in the folder '/nowhere/at/all'\n"
        "  hint: the fonts come with furnish, in its folder 'fonts'; install it again\n");
}

TEST_CASE("a file that is no font is an error", "[page][fonts]") {
  const auto folder = std::filesystem::temp_directory_path() / "furnish-fonts-test";
  std::filesystem::create_directories(folder);
  for (const char* face : {"Regular", "SemiBold", "Bold", "Italic"}) {
    std::ofstream(folder / (std::string("SourceSans3-") + face + ".ttf")) << "not a font";
  }
  DiagnosticSink sink;
  CHECK_FALSE(FontSet::open(folder.string(), sink));
  REQUIRE(sink.all().size() == 1);
  CHECK(sink.all()[0].code == "fonts-missing");
  CHECK(sink.all()[0].message.find("is not a font") != std::string::npos);
  std::filesystem::remove_all(folder);
}

TEST_CASE("a font that is gone when it is needed is an error, and the set is broken",
          "[page][fonts]") {
  namespace fs = std::filesystem;
  const fs::path folder = fs::temp_directory_path() / "furnish-fonts-gone";
  fs::remove_all(folder);
  fs::copy(test::fonts_folder(), folder);
  DiagnosticSink sink;
  const auto fonts = FontSet::open(folder.string(), sink);
  REQUIRE(fonts);
  TextShaper shaper(*fonts, sink);
  const auto set = [&](const char* text, Face face) {
    return shaper.shape({{text, face, Role::body, TypeSize::quarters(48)}}, {}, Breaking::never);
  };
  set("Marlow", Face::regular);
  CHECK_FALSE(fonts->broken());
  fs::remove(folder / "SourceSans3-Bold.ttf");
  set("Marlow", Face::regular);
  CHECK_FALSE(fonts->broken());
  set("Marlow", Face::bold);
  CHECK(fonts->broken());
  set("Snaps", Face::bold);
  REQUIRE(sink.all().size() == 1);
  CHECK(sink.all()[0].code == "font-unreadable");
  CHECK(sink.all()[0].severity == Severity::error);
  fs::remove_all(folder);
}

TEST_CASE("fonts of other scripts must be there too, and are missed when they go",
          "[page][fonts]") {
  namespace fs = std::filesystem;
  const fs::path folder = fs::temp_directory_path() / "furnish-fonts-script";
  for (const bool there : {false, true}) {
    fs::remove_all(folder);
    fs::copy(test::fonts_folder(), folder);
    fs::remove(folder / "Vazirmatn-Bold.ttf");
    if (there) std::ofstream(folder / "Vazirmatn-Bold.ttf") << "no font";
    DiagnosticSink sink;
    CHECK_FALSE(FontSet::open(folder.string(), sink));
    REQUIRE(sink.all().size() == 1);
    CHECK(sink.all()[0].code == "fonts-missing");
    CHECK(sink.all()[0].message.find("Vazirmatn-Bold.ttf") != std::string::npos);
  }
  fs::remove_all(folder);
  fs::copy(test::fonts_folder(), folder);
  DiagnosticSink sink;
  const auto fonts = FontSet::open(folder.string(), sink);
  REQUIRE(fonts);
  fs::remove(folder / "Vazirmatn-Bold.ttf");
  TextShaper shaper(*fonts, sink);
  const auto set = [&](const char* text) {
    return shaper.shape({{text, Face::regular, Role::body, TypeSize::quarters(48)}}, {},
                        Breaking::never);
  };
  set("Marlow");
  CHECK_FALSE(fonts->broken());
  set("ريكس");
  CHECK(fonts->broken());
  set("ريكس الصغير");
  REQUIRE(sink.all().size() == 1);
  CHECK(sink.all()[0].code == "font-unreadable");
  fs::remove_all(folder);
}

TEST_CASE("holding the faces changes nothing that is set", "[page][fonts]") {
  test::Desk plain, holding;
  holding.fonts->hold_faces();
  holding.fonts->hold_faces();
  for (const char* const text : {"Ears, rounded", "Καλλιόπη", "ريكس الصغير"}) {
    const std::vector<SizedText> wanted{{text, Face::semibold, Role::body, TypeSize::quarters(48)}};
    CHECK(holding.shaper.natural_width(wanted) == plain.shaper.natural_width(wanted));
  }
}

TEST_CASE("advances are those of the set text but for kerning", "[page][fonts]") {
  test::Desk desk;
  for (const Face face : {Face::regular, Face::semibold, Face::bold, Face::italic}) {
    for (char c = 'a'; c <= 'z'; ++c) {
      const auto set = desk.shaper.natural_width(
          {{std::string(1, c), face, Role::body, TypeSize::quarters(400)}});
      CHECK(set / Length::points(100) ==
            Approx(desk.fonts->advance(face, static_cast<char32_t>(c))).margin(0.0001));
    }
  }
}

TEST_CASE("setting text in many sizes starts no thread", "[page][fonts]") {
  test::Desk desk;
  REQUIRE(desk.fonts);
  const int before = test::threads_started();
  for (int quarters = 20; quarters < 60; quarters += 4) {
    desk.shaper.shape({{"Rex", Face::bold, Role::body, TypeSize::quarters(quarters)}}, {},
                      Breaking::never);
  }
  CHECK(test::threads_started() == before);
  // Else nothing would be counted.
  std::thread([] {}).join();
  CHECK(test::threads_started() == before + 1);
}
