#include <fmt/format.h>
#include <signal.h>
#include <unistd.h>

#include <array>
#include <catch2/catch.hpp>
#include <chrono>
#include <ctime>
#include <filesystem>
#include <fstream>
#include <functional>
#include <thread>

#include "app/one_salon.h"
#include "app/program.h"
#include "output/failing_disk.h"
#include "output/seal.h"
#include "share.h"

// Whatever call fails while a salon is watched, it goes on being watched: what is saved next is
// made, whole.

namespace furnish::test {
namespace {
/// The polite request to end waits for whoever takes it, in this thread and those it begins.
class Patient {
 public:
  Patient() {
    ::sigemptyset(&asked_);
    ::sigaddset(&asked_, SIGTERM);
    ::pthread_sigmask(SIG_BLOCK, &asked_, &before_);
  }
  ~Patient() {
    const timespec no_wait{};
    ::sigtimedwait(&asked_, nullptr, &no_wait);  // if nobody did
    ::pthread_sigmask(SIG_SETMASK, &before_, nullptr);
  }
  Patient(const Patient&) = delete;
  Patient& operator=(const Patient&) = delete;

 private:
  ::sigset_t asked_{}, before_{};
};

/// Whether anything is told but that it was ended, in the midst of looking what else changed: an
/// error, or that a card is without its photo.
bool has_fault(std::string_view said) {
  if (has(said, "warning: the photo ")) return true;
  constexpr std::string_view error = "error: ";
  for (auto at = said.find(error); at != said.npos; at = said.find(error, at + 1)) {
    if (!said.substr(at + error.size()).starts_with("stopped after ")) return true;
  }
  return false;
}

constexpr std::array<std::string_view, 2> colours{"grey", "brown"};

class Watched {
 public:
  /// `watch`, while a person saves the pet's file with so many colours, each once something was
  /// said of the one before, and ends it once the last is on the card or a fault was told of it.
  Outcome run(std::size_t saves, const Files& files, const Disk& disk) const {
    salon.give_back();
    const Patient patient;
    salon.forget_said();
    std::thread person([&] {
      until([&] { return has(salon.said(), "watching "); });
      std::size_t heard = 0;
      for (std::size_t i = 0; i < saves; ++i) {
        heard = salon.said().size();
        const std::string beside = salon.root() + "/../saved";
        std::ofstream(beside) << pet(i);
        std::filesystem::rename(beside, salon.root() + "/pets/marlow.toml");
        until([&] {
          if (i + 1 < saves) return salon.said().size() > heard;
          const bool shown = !wanted.empty() && salon.made() == wanted;
          const std::string more = salon.said().substr(heard);
          return wanted.empty() ? has(more, "-card.pdf") : shown || has_fault(more);
        });
      }
      ::kill(::getpid(), SIGTERM);
    });
    const Outcome out =
        salon.run({"watch", Command::watch, &sheets::card}, "2026-11-25", files, disk);
    person.join();
    return out;
  }
  std::string pet(std::size_t save) const {
    const std::string& written = salon.written().at("pets/marlow.toml");
    const std::size_t at = written.find("[owner]");
    return written.substr(0, at) + fmt::format("colour = \"{}\"\n", colours.at(save)) +
           written.substr(at);
  }

  OneSalon salon;
  Tree wanted;  ///< after the last save

 private:
  static void until(const std::function<bool()>& true_at_last) {
    using namespace std::chrono_literals;
    for (int i = 0; i < 2000 && !true_at_last(); ++i) std::this_thread::sleep_for(2ms);
  }
};

constexpr std::array failures{Failure{EIO}, Failure{ENOSPC, true}, Failure{EACCES},
                              Failure{EIO, false, true}};

/// A long run tries all points, a usual one some.
bool turn_of(int at, std::size_t way) {
  return long_run() || (at % 16 == 5 && static_cast<std::size_t>(at / 16) % failures.size() == way);
}
}  // namespace

TEST_CASE("whatever call fails, a watched salon goes on being watched") {
  Watched watched;
  const DiskFiles files;
  FailingDisk counting;
  FailingFiles reading;
  const auto runs = [&](std::size_t saves) {
    counting.set(std::nullopt);
    reading = FailingFiles();
    const Outcome good = watched.run(saves, reading, counting);
    INFO(good.said);
    REQUIRE(good.exit == Exit::stopped);
    REQUIRE_FALSE(has_fault(good.said));
    return std::pair(counting.calls(), reading.calls());
  };
  const auto before = runs(colours.size() - 1), all = runs(colours.size());
  watched.wanted = watched.salon.made();
  REQUIRE(watched.wanted.size() == 1);
  REQUIRE(before < all);

  int points = 0, told = 0;
  // `last`: what fails may be the making of the last save itself.
  const auto holds = [&](const Outcome& outcome, bool last, bool gone, const std::string& what) {
    INFO(what << '\n' << outcome.said);
    CHECK(outcome.exit == Exit::stopped);
    const bool said = has_fault(outcome.said);
    Tree made = watched.salon.made();
    // A disk that is gone lets nothing be removed either.
    if (gone) {
      std::erase_if(made, [](const auto& one) { return has(one.first, "/.furnish-"); });
    }
    if (!last) CHECK(made == watched.wanted);
    if (made != watched.wanted) CHECK(said);
    for (const auto& [path, bytes] : made) {
      INFO(path);
      CHECK(seal_holds(bytes));
    }
    CHECK(bytes_of(watched.salon.root() + "/pets/marlow.toml") == watched.pet(colours.size() - 1));
    ++points, told += said ? 1 : 0;
  };
  for (std::size_t way = 0; way < failures.size(); ++way) {
    const bool gone = failures.at(way).and_after;
    for (int at = 0; at < all.first; ++at) {
      if (!turn_of(at, way)) continue;
      const Outcome outcome = watched.run(colours.size(), files, FailingDisk(at, failures.at(way)));
      holds(outcome, gone || at >= before.first, gone, fmt::format("{} at {}", way, at));
    }
  }
  for (int at = 0; at < all.second; ++at) {
    if (!turn_of(at, 0)) continue;
    const Outcome outcome = watched.run(colours.size(), FailingFiles(at), system_disk());
    holds(outcome, at >= before.second, false, fmt::format("reading {}", at));
  }
  CHECK(told > 0);
  fmt::print("watch: {} points of failure, {} with a message\n", points, told);
}
}  // namespace furnish::test
