#include <fmt/format.h>
#include <sys/syscall.h>

#include <algorithm>
#include <array>
#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <map>

#include "app/desk_salon.h"
#include "app/killed.h"
#include "app/one_salon.h"
#include "app/program.h"
#include "app/run.h"
#include "share.h"

// A run is killed before each of the calls that it makes of the system. Whatever was there is
// whole, whatever is there is whole, and the next run clears what was left and does the rest.

namespace furnish::test {
namespace {
namespace fs = std::filesystem;

/// Calls that change what lies on a disk, or say that it is safe there.
bool changes(long call) {
  constexpr std::array all{SYS_write, SYS_fsync,  SYS_syncfs,    SYS_linkat, SYS_rename,
                           SYS_mkdir, SYS_unlink, SYS_renameat2, SYS_fchmod, SYS_flock};
  return std::ranges::find(all, call) != all.end();
}

/// Where a run of these calls is killed: before each that changes something, and after each that
/// gives a name; in a long run before all others, and after each change.
std::vector<CallPoint> points(const std::vector<long>& calls) {
  std::vector<CallPoint> out;
  std::map<long, std::size_t> met;
  for (const long call : calls) {
    const std::size_t nth = met[call]++;
    if (changes(call) || long_run()) out.push_back({call, nth, false});
    const bool names = call == SYS_linkat || call == SYS_rename || call == SYS_renameat2;
    if (names || (changes(call) && long_run())) out.push_back({call, nth, true});
  }
  return out;
}

constexpr std::string_view day = "2026-11-25", earlier = "2026-11-24";

const std::array tasks{Task{"a card made again", Command::sheet, &sheets::card, true},
                       Task{"a care sheet", Command::sheet, &sheets::care},
                       Task{"new visit", Command::new_visit},
                       Task{"new pet", Command::new_files, nullptr, false, "pet"},
                       Task{"import", Command::import_list}};

/// Files that are none of what a whole run makes, nor of what was there, nor unfinished ones.
std::string strange(const Tree& now, const Tree& before, const Tree& wanted) {
  for (const auto& [path, bytes] : now) {
    if (fs::path(path).filename().string().starts_with(".furnish-")) continue;
    const auto old = before.find(path), fresh = wanted.find(path);
    const bool whole = (old != before.end() && old->second == bytes) ||
                       (fresh != wanted.end() && fresh->second == bytes);
    if (!whole) return path;
  }
  for (const auto& [path, bytes] : before) {
    if (!now.contains(path)) return path + " is lost";
  }
  return {};
}
}  // namespace

TEST_CASE("a run that is killed at any call leaves all whole, and the next one goes on") {
  if (!can_watch_calls()) {
    WARN("no process may watch another's calls here");
    return;
  }
  const OneSalon salon;
  const Task task = GENERATE(from_range(tasks));
  if (!long_run() && task.sheet == &sheets::care) return;
  INFO(task.name);
  const DiskFiles files;
  Tree before;
  if (task.again) {
    REQUIRE(salon.run(task, earlier, files, system_disk()).exit == Exit::ok);
    before = salon.made();
  }
  const auto run = [&] { salon.run(task, day, files, system_disk()); };
  run();
  const Tree wanted = salon.made();
  REQUIRE_FALSE(wanted.empty());
  salon.restore(before);
  const std::vector<long> calls = calls_of(run);
  CHECK(salon.made() == wanted);
  const std::vector<CallPoint> at = points(calls);
  REQUIRE(at.size() > 5);
  std::size_t reached = 0;
  for (const CallPoint& one : at) {
    salon.restore(before);
    INFO("killed at " << one.nth << " of call " << one.number << (one.done ? ", done" : ""));
    // What changes nothing may be called more or less often, as memory and caches are.
    const bool killed = killed_at(one, run);
    if (changes(one.number)) CHECK(killed);
    reached += killed ? 1 : 0;
    for (const auto& [path, bytes] : salon.written()) {
      INFO(path);
      CHECK(bytes_of(salon.root() + "/" + path) == bytes);
    }
    const Tree left = salon.made();
    CHECK(strange(left, before, wanted) == "");
    run();
    CHECK_FALSE(salon.left_unfinished());
    const Tree then = salon.made();
    // A visit or a pet that was there already is not begun a second time under its name.
    for (const auto& [path, bytes] : wanted) {
      INFO(path);
      CHECK(then.contains(path));
      if (then.contains(path)) CHECK(then.at(path) == bytes);
    }
  }
  fmt::print("{}: killed {} times, at {} points of {} calls\n", task.name, reached, at.size(),
             calls.size());
}

TEST_CASE("the desk's save that is killed at any call leaves the old file or the new one") {
  if (!can_watch_calls()) return;
  const OneSalon salon;
  Options options;
  options.salon = salon.root();
  options.data = FURNISH_SOURCE_DIR;
  options.on = parse_date(day);
  const std::string file = salon.root() + "/pets/marlow.toml", old = bytes_of(file);
  const std::string fresh = old + "# He likes cheese.\n";
  const DiskFiles files;
  const auto save = [&] {
    SalonAtDesk desk(options, files, system_disk());
    desk.write({"pet", "marlow"}, fresh);
  };
  const std::vector<long> calls = calls_of(save);
  REQUIRE(bytes_of(file) == fresh);
  std::size_t kept = 0, saved = 0, reached = 0;
  const std::vector<CallPoint> at = points(calls);
  for (const CallPoint& one : at) {
    salon.restore({});
    std::ofstream(file) << old;
    INFO("killed at " << one.nth << " of call " << one.number << (one.done ? ", done" : ""));
    const bool killed = killed_at(one, save);
    if (changes(one.number)) CHECK(killed);
    reached += killed ? 1 : 0;
    const std::string now = bytes_of(file);
    CHECK((now == old || now == fresh));
    ++(now == old ? kept : saved);
    save();
    CHECK(bytes_of(file) == fresh);
    CHECK_FALSE(salon.left_unfinished());
  }
  CHECK(kept > 0);
  CHECK(saved > 0);
  fmt::print("the desk's save: killed {} times, at {} points of {} calls\n", reached, at.size(),
             calls.size());
}
}  // namespace furnish::test
