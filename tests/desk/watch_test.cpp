#include <catch2/catch.hpp>

#include <poll.h>
#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <functional>

#include "desk/watch.h"

namespace {
namespace fs = std::filesystem;
using furnish::desk::Watch;
using Names = std::vector<std::string>;

void write(const fs::path& path, const std::string& text) {
  std::ofstream(path, std::ios::binary) << text;
}

/// A salon that is watched. Time goes as the test has it: no test waits for a clock.
struct Salon {
  Salon() {
    std::string name = (fs::temp_directory_path() / "furnish-watch-XXXXXX").string();
    REQUIRE(::mkdtemp(name.data()) != nullptr);
    root = name;
    fs::create_directories(root / "pets");
    fs::create_directories(root / "visits/rex");
    write(rex(), "one");
    watch.emplace(root.string());
    // So that its content is known.
    write(rex(), "two");
    REQUIRE(told() == Names{"pets/rex.toml"});
  }
  ~Salon() {
    watch.reset();
    fs::remove_all(root);
  }
  fs::path rex() const { return root / "pets/rex.toml"; }
  /// What is told of all that was done since the last call.
  Names told() {
    now += std::chrono::seconds(1);
    watch->take(now);
    CHECK(watch->settled(now).empty());  // not before it was still
    return watch->settled(now + Watch::stillness);
  }
  fs::path root;
  std::optional<Watch> watch;
  Watch::Clock::time_point now = Watch::Clock::now();
};
}  // namespace

TEST_CASE("however an editor saves, the file is told once", "[watch]") {
  Salon salon;
  int n = 0;
  const auto text = [&] { return "text " + std::to_string(++n); };
  const std::vector<std::function<void()>> ways{
      [&] { write(salon.rex(), text()); },  // in place
      [&] {                                 // in place, in pieces
        std::ofstream file(salon.rex());
        file << text() << std::flush << " and more";
      },
      [&] {  // beside it, and renamed over it
        write(salon.root / "pets/.rex.toml.new", text());
        fs::rename(salon.root / "pets/.rex.toml.new", salon.rex());
      },
      [&] {  // the old one becomes a backup
        fs::rename(salon.rex(), salon.rex().string() + "~");
        write(salon.rex(), text());
      },
      [&] {  // many times
        for (int i = 0; i < 10; ++i) write(salon.rex(), text());
      }};
  for (const auto& save : ways) {
    save();
    CHECK(salon.told() == Names{"pets/rex.toml"});
  }
}

TEST_CASE("a save of the same text is none, and neither is a touch", "[watch]") {
  Salon salon;
  write(salon.rex(), "two");
  CHECK(salon.told().empty());
  fs::last_write_time(salon.rex(), fs::file_time_type::clock::now());
  CHECK(salon.told().empty());
  write(salon.root / "pets/.rex.toml.swp", "x");
  write(salon.root / "pets/rex.txt", "x");
  write(salon.root / "pets/.hidden.toml", "x");
  write(salon.root / "other.toml", "x");
  CHECK(salon.told().empty());
}

TEST_CASE("files that come and go are told, in folders that come too", "[watch]") {
  Salon salon;
  fs::remove(salon.rex());
  CHECK(salon.told() == Names{"pets/rex.toml"});
  write(salon.root / "salon.toml", "x");
  write(salon.root / "visits/rex/2026-11-24.toml", "x");
  CHECK(salon.told() == Names{"salon.toml", "visits/rex/2026-11-24.toml"});
  fs::create_directories(salon.root / "days");
  write(salon.root / "days/2026-11-24.toml", "x");
  fs::create_directories(salon.root / "visits/pip");
  salon.watch->take(salon.now);
  write(salon.root / "visits/pip/2026-11-24.toml", "x");
  const Names told = salon.told();
  CHECK(std::ranges::count(told, "days/2026-11-24.toml") == 1);
  CHECK(std::ranges::count(told, "visits/pip/2026-11-24.toml") == 1);
}

TEST_CASE("what cannot be watched is never told", "[watch]") {
  Watch watch("/nowhere/at/all");
  watch.take(Watch::Clock::now());
  CHECK_FALSE(watch.due());
}

TEST_CASE("after more changes than the system keeps, every file is looked at", "[watch]") {
  Salon salon;
  write(salon.root / "salon.toml", "x");
  REQUIRE(salon.told() == Names{"salon.toml"});
  std::size_t kept = 0;
  std::ifstream("/proc/sys/fs/inotify/max_queued_events") >> kept;
  if (kept == 0 || kept > 100000) return;
  const fs::path here = salon.root / "pets/a.txt", there = salon.root / "pets/b.txt";
  write(here, "x");
  for (std::size_t i = 0; i < kept / 4 + 2; ++i) {
    fs::rename(here, there);
    fs::rename(there, here);
  }
  write(salon.rex(), "three");
  fs::create_directories(salon.root / "days");
  write(salon.root / "days/2026-11-24.toml", "x");
  CHECK(salon.told() == Names{"days/2026-11-24.toml", "pets/rex.toml"});
  // And goes on.
  write(salon.root / "days/2026-11-24.toml", "y");
  CHECK(salon.told() == Names{"days/2026-11-24.toml"});
}

TEST_CASE("a folder that cannot be watched is named once", "[watch]") {
  Salon salon;
  CHECK(salon.watch->unwatched().empty());
  fs::create_directory_symlink("days", salon.root / "days");  // round and round
  Watch watch(salon.root.string());
  const auto why = watch.unwatched();
  REQUIRE(why.size() == 1);
  CHECK(why.begin()->first == (salon.root / "days").string());
  CHECK_FALSE(why.begin()->second.empty());
  CHECK(watch.unwatched().empty());
}

TEST_CASE("a photo that is followed is told, wherever it lies and whenever it comes", "[watch]") {
  Salon salon;
  const fs::path folder = salon.root / "photos", photo = folder / "rex.jpg";
  const Names told{photo.string()};
  salon.watch->follow(photo.string());
  CHECK(salon.told().empty());
  fs::create_directory(folder);
  // The photo may have come with its folder.
  CHECK(salon.told() == Names{folder.string(), photo.string()});
  write(photo, "one");
  write(folder / "other.jpg", "x");
  CHECK(salon.told() == told);
  write(photo, "two");
  CHECK(salon.told() == told);
  fs::remove(photo);
  CHECK(salon.told() == told);
  // Beside a pet's own file both are told.
  salon.watch->follow((salon.root / "pets/rex.png").string());
  write(salon.root / "pets/rex.png", "x");
  write(salon.rex(), "three");
  CHECK(salon.told() == Names{(salon.root / "pets/rex.png").string(), "pets/rex.toml"});
}
