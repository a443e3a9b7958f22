#include "batches.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <signal.h>
#include <spawn.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <thread>
#include <vector>

#include "process.h"
#include "sample_files.h"

extern char** environ;

namespace furnish::bench {
namespace {
namespace fs = std::filesystem;
using Clock = std::chrono::steady_clock;

}  // namespace

void watching(const std::string& folder, int times) {
  const std::string salon = folder + "/watched", told = folder + "/told";
  fs::copy(sample, salon, fs::copy_options::recursive);
  fs::remove_all(salon + "/sheets");
  std::vector<std::string> words{FURNISH_PROGRAM, "watch", salon, "--on", "2026-11-24"};
  std::vector<char*> arguments;
  for (std::string& word : words) arguments.push_back(word.data());
  arguments.push_back(nullptr);
  posix_spawn_file_actions_t actions;
  posix_spawn_file_actions_init(&actions);
  posix_spawn_file_actions_addopen(&actions, 1, told.c_str(), O_WRONLY | O_CREAT, 0600);
  pid_t child = 0;
  if (posix_spawn(&child, arguments[0], &actions, nullptr, arguments.data(), environ) != 0) return;
  posix_spawn_file_actions_destroy(&actions);
  constexpr std::chrono::milliseconds step{20}, patience{20'000};
  for (const auto end = Clock::now() + patience;
       bytes_of(told).find("watching") == std::string::npos && Clock::now() < end;) {
    std::this_thread::sleep_for(step);
  }
  const std::string pet = salon + "/pets/tuesday.toml", text = bytes_of(pet),
                    sheet = salon + "/sheets/tuesday-card.pdf";
  const auto number = [&] {
    struct stat status {};
    return ::stat(sheet.c_str(), &status) == 0 ? status.st_ino : 0;
  };
  std::vector<double> took;
  for (int i = 0; i < times; ++i) {
    const auto before = number();
    const auto start = Clock::now();
    put(pet, fmt::format("{}# {}\n", text, i));
    while (number() == before && Clock::now() < start + patience) {
      std::this_thread::sleep_for(std::chrono::microseconds(200));
    }
    took.push_back(std::chrono::duration<double, std::milli>(Clock::now() - start).count());
    std::this_thread::sleep_for(10 * step);
  }
  ::kill(child, SIGINT);
  ::waitpid(child, nullptr, 0);
  fmt::print("Watch, a saved file to its card\n  median of {:<11} {:7.1f} ms   goal < 50 ms\n",
             times, median(std::move(took)));
}
}  // namespace furnish::bench
