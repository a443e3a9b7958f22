#include <fmt/format.h>
#include <signal.h>
#include <unistd.h>

#include <array>
#include <catch2/catch.hpp>
#include <filesystem>
#include <set>
#include <span>
#include <utility>

#include "app/hushed.h"
#include "app/one_salon.h"
#include "app/program.h"
#include "app/run.h"
#include "output/failing_disk.h"
#include "output/seal.h"
#include "share.h"

// Every call by which a command reads or writes fails once, in each way that a system has. Whatever
// happens, the sheet is the old one or the new one, whole; nothing that a person wrote has changed;
// nothing is left lying about; and the status and the message say what is so.

namespace furnish::test {
namespace {
namespace fs = std::filesystem;

/// Empty, or what is not as promised after a run in which something failed.
std::string broken_promise(const OneSalon& salon, const Tree& before, const Tree& wanted,
                           const Outcome& outcome) {
  const Tree now = salon.tree();
  for (const auto& [path, bytes] : salon.written()) {
    const auto found = now.find(path);
    if (found == now.end() || found->second != bytes) return path + " has changed";
  }
  const Tree sheets = salon.made();
  // A card is made without a visit that cannot be read, and the status says so; a note is made
  // without a photo, and a warning says so.
  const bool no_photo = outcome.said.find("warning: the photo") != std::string::npos;
  const bool may_lack = outcome.exit != Exit::ok || no_photo;
  for (const auto& [path, bytes] : sheets) {
    const auto old = before.find(path), fresh = wanted.find(path);
    const bool is_old = old != before.end() && old->second == bytes;
    const bool is_new = fresh != wanted.end() && fresh->second == bytes;
    // A list of who is due or found has those that could be read, and no seal.
    const bool shorter = outcome.exit != Exit::ok && path == "due.txt";
    // A visit that is begun names no next day where not all bookings can be read, and has no seal.
    const bool begun = outcome.exit != Exit::ok && path.ends_with(".toml") &&
                       bytes.find("unfinished = true") != bytes.npos && bytes.ends_with('\n');
    if (!is_old && !is_new && !shorter && !begun && !(may_lack && seal_holds(bytes)))
      return path + " is neither the old one nor the new one";
  }
  for (const auto& [path, bytes] : before) {
    if (!sheets.contains(path)) return path + " is lost";
  }
  if (outcome.exit == Exit::ok && !no_photo && sheets != wanted)
    return "status 0, and a sheet is missing";
  const bool told = outcome.said.find("error: ") != std::string::npos;
  if (outcome.exit != Exit::ok && !told) return "a failure, and no message";
  if (outcome.exit == Exit::ok && told) return "status 0, and an error";
  return {};
}

/// Of the first three one at each call in every run, each in its turn; all in a long one.
constexpr std::array failures{Failure{EIO},
                              Failure{ENOSPC, true},
                              Failure{EIO, false, true},
                              Failure{EINTR},
                              Failure{EACCES},
                              Failure{EMFILE},
                              Failure{ENOSPC},
                              Failure{ENOSPC, false, true}};

/// The disk's files, one of which is not what it is later when it is read for the first time.
class OnceOther final : public Files {
 public:
  OnceOther(std::string path, FileContent first)
      : path_(std::move(path)), first_(std::move(first)) {}
  FileContent read_up_to(const std::string& path, std::size_t most) const override {
    if (path != path_ || std::exchange(asked_, true)) return disk_.read_up_to(path, most);
    return first_;
  }
  bool exists(const std::string& path) const override { return disk_.exists(path); }
  FolderContent list(const std::string& folder) const override { return disk_.list(folder); }

 private:
  DiskFiles disk_;
  std::string path_;
  FileContent first_;
  mutable bool asked_ = false;
};
}  // namespace

TEST_CASE("whatever call fails, nothing is lost and the status is true") {
  const Task task = GENERATE(from_range(all_tasks()));
  if (task.seldom && !long_run()) return;
  const OneSalon salon;
  INFO(task.name);
  constexpr std::string_view day = "2026-11-25", earlier = "2026-11-24";
  DiskFiles files;
  Tree before;
  if (task.again) {
    REQUIRE(salon.run(task, earlier, files, system_disk()).exit == Exit::ok);
    before = salon.made();
    REQUIRE_FALSE(before.empty());
  }
  FailingDisk counting;
  FailingFiles reading;
  const Outcome good = salon.run(task, day, reading, counting);
  INFO(good.said);
  REQUIRE(good.exit == Exit::ok);
  const Tree wanted = salon.made();
  const bool shows = task.command == Command::check || task.command == Command::plan ||
                     (task.command == Command::import_list && task.seldom);
  REQUIRE(wanted.empty() == shows);
  int points = 0, failed = 0;
  const auto holds = [&](const Outcome& outcome, int at, std::string_view what) {
    const std::string broken = broken_promise(salon, before, wanted, outcome);
    INFO(what << ' ' << at << '\n' << outcome.said);
    CHECK(broken == "");
    ++points;
    if (outcome.exit != Exit::ok) ++failed;
  };
  for (const Failure& failure : std::span(failures).first(long_run() ? failures.size() : 3)) {
    for (int at = 0; at < counting.calls(); ++at) {
      const auto turn = static_cast<std::ptrdiff_t>(at) % 3;
      if (!long_run() && turn != &failure - failures.data()) continue;
      salon.restore(before);
      FailingDisk disk(at, failure);
      const Outcome outcome = salon.run(task, day, files, disk);
      // A disk that is gone lets nothing be removed either; the next run does that.
      if (failure.and_after && salon.left_unfinished()) {
        // What is lost of the record of what sheets were made from is nobody's loss.
        Tree finished = salon.made();
        std::erase_if(finished, [](const auto& file) {
          return file.first.find("/.furnish-") != std::string::npos;
        });
        CHECK((outcome.exit != Exit::ok || finished == wanted));
        REQUIRE(salon.run(task, day, files, system_disk()).exit == Exit::ok);
        CHECK(salon.made() == wanted);
        ++points, ++failed;
        continue;
      }
      holds(outcome, at, std::to_string(failure.code));
    }
  }
  for (int at = 0; at < reading.calls(); ++at) {
    salon.restore(before);
    const Outcome outcome = salon.run(task, day, FailingFiles(at), system_disk());
    holds(outcome, at, "reading");
  }
  // Most of them are needed, so most of them must be felt.
  CHECK(failed > points / 4);
  fmt::print("{}: {} points of failure, {} ended with a message\n", task.name, points, failed);
}

TEST_CASE("a book that found a pet's file one way and then another says so") {
  const OneSalon salon;
  const Task book{"a book", Command::book};
  const FileContent first =
      GENERATE(FileContent{{}, "Input/output error"},
               FileContent{"[pet]\nname = \"Marlow\"\n[owner]\nname = \"A. Bo\"\n", {}},
               FileContent{"[pet]\nname = \"Arlo\"\n", {}});
  const OnceOther files(salon.root() + "/pets/marlow.toml", first);
  const Outcome outcome = salon.run(book, "2026-11-25", files, system_disk());
  INFO(outcome.said);
  CHECK(outcome.exit == Exit::faults);
  CHECK(has(outcome.said, "pets/marlow.toml:1:1: error: its file changed while the book was made"));
  CHECK(has(outcome.said, "make the book again"));
}

TEST_CASE("a pet that cannot be renamed whole has all its files, and it is told") {
  const OneSalon salon;
  const Task rename{"rename", Command::rename,
                    nullptr,  false,
                    {},       [](Options& options) {
                      options.pets = {"marlow", "bo"}; }};
  const DiskFiles files;
  const auto contents = [&] {
    std::multiset<std::string> out;
    for (const auto& [path, bytes] : salon.tree()) out.insert(bytes);
    return out;
  };
  const auto before = contents();
  FailingDisk counting;
  const Outcome good = salon.run(rename, "2026-11-25", files, counting);
  INFO(good.said);
  REQUIRE(good.exit == Exit::ok);
  const Tree renamed = salon.tree();
  REQUIRE(counting.calls() == 2);  // visits, the pet
  for (int at = 0; at < counting.calls(); ++at) {
    for (const Failure& failure : failures) {
      salon.give_back();
      const Outcome outcome = salon.run(rename, "2026-11-25", files, FailingDisk(at, failure));
      INFO(at << ": " << outcome.said);
      CHECK(outcome.exit == Exit::faults);
      CHECK(has(outcome.said, "error: cannot move "));
      CHECK(contents() == before);
      if (!failure.and_after) CHECK(salon.tree() == salon.written());
      // Where the disk was gone, the next run goes on.
      CHECK(salon.run(rename, "2026-11-25", files, system_disk()).exit == Exit::ok);
      CHECK(salon.tree() == renamed);
    }
  }
}

TEST_CASE("what runs that were killed left unfinished is cleared, what another works on is not") {
  const TemporaryFolder folder;
  copy_sample("us-corner", folder.path("salon"));
  const std::string sheets = folder.path("salon") + "/sheets";
  fs::create_directories(sheets);
  put(folder, "salon/sheets/.furnish-1-0.part", "half a sheet");
  put(folder, "salon/sheets/.furnish-1-1.part", "half a sheet");
  put(folder, "salon/sheets/.furnish-notes", "a person's");
  // The shell holds the lock as another run would.
  const ToolOutput ran =
      furnish("card --salon " + test::quoted(folder.path("salon")) + " --on 2026-11-24",
              "exec 9<" + test::quoted(sheets + "/.furnish-1-1.part") + "; flock -n 9;");
  REQUIRE(ran.status == 0);
  CHECK_FALSE(fs::exists(sheets + "/.furnish-1-0.part"));
  CHECK(fs::exists(sheets + "/.furnish-1-1.part"));
  CHECK(fs::exists(sheets + "/.furnish-notes"));
}

TEST_CASE("who stops a run finds every sheet whole, and is told how far it came") {
  const TemporaryFolder folder;
  copy_sample("lantern-street", folder.path("salon"));
  const std::string sheets = folder.path("salon") + "/sheets";
  // The first sheet is there when it is asked to stop; a whole run takes longer than that.
  const ToolOutput ran = run(fmt::format(
      "sh -c '{} style --salon {} --on 2026-11-24 2>{} & pid=$!; "
      "until ls {}/*.pdf >/dev/null 2>&1; do sleep 0.01; done; kill -TERM $pid; wait $pid'",
      FURNISH_PROGRAM, folder.path("salon"), folder.path("told"), sheets));
  CHECK(ran.status == 130);
  const std::string told = bytes_of(folder.path("told"));
  INFO(told);
  CHECK(matches(told, "error: stopped after ([0-9]+) of [0-9]+ pets").size() == 1);
  const std::vector<std::string> written = files_below(sheets);
  CHECK_FALSE(written.empty());
  for (const std::string& name : written) {
    INFO(name);
    CHECK(seal_holds(bytes_of(sheets + "/" + name)));
  }
}

TEST_CASE("twenty visits begun at once are twenty visits") {
  const TemporaryFolder folder;
  copy_sample("lantern-street", folder.path("salon"));
  const std::string visits = folder.path("salon") + "/visits/dot";
  const auto count = [&] { return fs::exists(visits) ? files_below(visits).size() : 0; };
  const std::size_t before = count();
  const ToolOutput ran = run(
      fmt::format("for i in $(seq 20); do {} new visit dot --salon {} --on 2026-11-24 & done; wait",
                  test::quoted(FURNISH_PROGRAM), test::quoted(folder.path("salon"))));
  INFO(ran.err);
  // That a day has a visit already is said; nothing is wrong.
  CHECK(ran.err.find("error:") == std::string::npos);
  CHECK(count() == before + 20);
}

TEST_CASE("who stops whatever makes many finds no file of which a part is missing") {
  const TemporaryFolder folder;
  copy_sample("us-corner", folder.path("salon"));
  Options options;
  options.data = FURNISH_SOURCE_DIR;
  options.salon = folder.path("salon");
  options.on = parse_date("2026-11-24");
  options.output = folder.path("out") + "/";
  const auto stopped = [&](const std::string& says) {
    ::sigset_t asked, before;
    ::sigemptyset(&asked);
    ::sigaddset(&asked, SIGTERM);
    ::pthread_sigmask(SIG_BLOCK, &asked, &before);
    ::kill(::getpid(), SIGTERM);
    Exit exit{};
    {
      const Hushed hushed(folder.path("told"));
      exit = run(options, DiskFiles(), system_disk());
    }
    ::pthread_sigmask(SIG_SETMASK, &before, nullptr);
    CHECK(static_cast<int>(exit) == 130);
    const std::string told = bytes_of(folder.path("told"));
    INFO(told);
    CHECK(has(told, says));
    fs::remove(folder.path("told"));
    CHECK((!fs::exists(folder.path("out")) || files_below(folder.path("out")).empty()));
  };
  stopped("stopped after 0 of ");
  options.together = true;
  stopped("stopped before the file of all pets was written");
  options.together = false;
  options.command = Command::book;
  stopped("before the book was written");
}
}  // namespace furnish::test
