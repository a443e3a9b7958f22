#include "app/photos.h"

#include <catch2/catch.hpp>

#include <filesystem>

#include "app/program.h"
#include "app/small_salon.h"
#include "base/recording_files.h"
#include "output/pdf_rules.h"
#include "sheet/desk.h"

namespace furnish::test {
namespace {
namespace fs = std::filesystem;

/// A salon with one pet, whose photo is photos/ada.jpg, whatever that is.
struct OnePhoto : SmallSalon {
  explicit OnePhoto(std::string_view salon = "[salon]\nname = \"S\"\n")
      : SmallSalon{{"salon.toml", salon},
                   {"pets/ada.toml", "[pet]\nname  = \"Ada\"\nphoto = \"photos/ada.jpg\"\n"}} {
    fs::create_directory(folder.path("photos"));
  }
  std::string photo() const { return folder.path("photos/ada.jpg"); }
  std::string sheet() const { return folder.path("sheets/ada-style.pdf"); }

  /// The sheet is made all the same, and what is wrong is said at the photo's place.
  void warned(const std::string& what) const {
    const auto ran = run("style ada --on 2026-11-24");
    INFO(ran.err);
    CHECK(ran.status == 0);
    CHECK(has(ran.err, "pets/ada.toml:3:9: warning: "));
    CHECK(has(ran.err, what));
    CHECK(pdf_faults(bytes_of(sheet())).empty());
    CHECK_FALSE(has(test::run("pdfimages -list " + sheet()).out, "jpeg"));
  }
  std::string shown() const {
    const auto ran = run("style ada --on 2026-11-24");
    CHECK(ran.status == 0);
    CHECK(has(test::run("pdfimages -list " + sheet()).out, "jpeg"));
    return ran.err;
  }
};

std::string sample_photo() {
  return sample("lantern-street") + "/photos/juniper.jpg";
}
}  // namespace

TEST_CASE("a pet's photo is on its style sheet", "[photos]") {
  const OnePhoto salon;
  fs::copy_file(sample_photo(), salon.photo());
  CHECK_FALSE(has(salon.shown(), "photo"));
  CHECK(pdf_faults(bytes_of(salon.sheet())).empty());
}

TEST_CASE("the name of a photo's file reaches no owner, in whatever format", "[photos]") {
  for (const char* format : {"text", "svg"}) {
    const auto ran = furnish("note marlow --for owner --on 2026-11-24 -o - --salon " +
                             sample("lantern-street") + " --format " + format);
    CHECK(ran.status == 0);
    CHECK(has(ran.out, "image"));
    CHECK_FALSE(has(ran.out, ".jpg"));
    CHECK_FALSE(has(ran.out, "photos/"));
  }
}

TEST_CASE("a photo that cannot be shown is a warning and the sheet is made", "[photos]") {
  const OnePhoto salon;
  SECTION("nothing there") {
    salon.warned("the photo 'photos/ada.jpg' cannot be read: No such file or directory");
  }
  SECTION("a folder") {
    fs::create_directory(salon.photo());
    salon.warned("is a folder, not a file");
  }
  SECTION("a pipe is not waited for") {
    REQUIRE(run("mkfifo " + salon.photo()).status == 0);
    salon.warned("is not a regular file");
  }
  SECTION("a file without end") {
    fs::create_symlink("/dev/zero", salon.photo());
    salon.warned("a link out of the salon's folder");
  }
  SECTION("33 megabytes") {
    put(salon.folder, "photos/ada.jpg", std::string(std::size_t{33} << 20, 'x'));
    salon.warned("(32 MiB) are read");
  }
  SECTION("text with the name of a picture") {
    put(salon.folder, "photos/ada.jpg", "Ada, before\n");
    salon.warned("is no photo");
  }
  SECTION("what a telephone keeps") {
    put(salon.folder, "photos/ada.jpg", std::string("\0\0\0\x18", 4) + "ftypheic...............");
    salon.warned("export it as JPEG");
  }
  SECTION("cut off") {
    const std::string whole = bytes_of(sample_photo());
    put(salon.folder, "photos/ada.jpg", whole.substr(0, whole.size() / 2));
    salon.warned("the photo 'photos/ada.jpg' is cut off");
  }
}

TEST_CASE("a photo leaves the salon's folder only where the salon says so", "[photos]") {
  const TemporaryFolder outside;
  const auto linked = [&](const OnePhoto& salon) {
    fs::copy_file(sample_photo(), outside.path("secret.jpg"));
    fs::create_symlink(outside.path("secret.jpg"), salon.photo());
  };
  SECTION("a link out is not followed") {
    const OnePhoto salon;
    linked(salon);
    salon.warned("a link out of the salon's folder");
  }
  SECTION("nor is a link of a folder") {
    const OnePhoto salon;
    fs::remove(salon.folder.path("photos"));
    fs::copy_file(sample_photo(), outside.path("ada.jpg"));
    fs::create_symlink(outside.path(""), salon.folder.path("photos"));
    salon.warned("a link out of the salon's folder");
  }
  SECTION("unless photos may lie anywhere") {
    const OnePhoto salon("[salon]\nname = \"S\"\nphotos_anywhere = true\n");
    linked(salon);
    salon.shown();
  }
  SECTION("a link inside is one's own affair") {
    const OnePhoto salon;
    fs::copy_file(sample_photo(), salon.folder.path("photos/2026.jpg"));
    fs::create_symlink("2026.jpg", salon.photo());
    salon.shown();
  }
}

TEST_CASE("a pet in no salon has its photo beside its own file", "[photos]") {
  const TemporaryFolder folder;
  put(folder, "here/ada.toml", "[pet]\nname  = \"Ada\"\nphoto = \"ada.jpg\"\n");
  fs::copy_file(sample_photo(), folder.path("here/ada.jpg"));
  const auto ran = furnish("style " + folder.path("here/ada.toml") + " -o " + folder.path("a.pdf"));
  CHECK(ran.status == 0);
  CHECK(has(run("pdfimages -list " + folder.path("a.pdf")).out, "jpeg"));
}

TEST_CASE("the photos of a visit come in its order, missing ones without a picture", "[photos]") {
  const TemporaryFolder folder;
  fs::create_directory(folder.path("photos"));
  fs::copy_file(sample_photo(), folder.path("photos/b.jpg"));
  Visit visit;
  visit.photos = {{{"photos/a.jpg", {}}, PhotoTime::before, "", {}},
                  {{"photos/b.jpg", {}}, PhotoTime::after, "", {}}};
  SourceSet sources;
  DiagnosticSink sink;
  furnish::Salon salon;
  const DiskFiles disk;
  const RecordingFiles files(disk);
  PhotoFolder photos(folder.path(""), salon, {files, sources, sink});
  const auto loaded = photos.of(visit);
  REQUIRE(loaded.size() == 2);
  CHECK_FALSE(loaded[0]);
  REQUIRE(loaded[1]);
  CHECK(loaded[1]->name == "photos/b.jpg");
  REQUIRE(sink.all().size() == 1);
  CHECK(sink.all().front().code == "photo-missing");
  // Photos are read as all files are, and so it is known which ones.
  using enum RecordingFiles::Found;
  CHECK(files.asked() ==
        std::map<std::string, RecordingFiles::Found>{{folder.path("photos/a.jpg"), absent},
                                                     {folder.path("photos/b.jpg"), contents}});
}
}  // namespace furnish::test
