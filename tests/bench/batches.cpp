#include "batches.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <signal.h>
#include <spawn.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <regex>
#include <thread>
#include <vector>

#include "process.h"

extern char** environ;

namespace furnish::bench {
namespace {
namespace fs = std::filesystem;
using Clock = std::chrono::steady_clock;

const std::string sample = std::string(FURNISH_SOURCE_DIR) + "/samples/lantern-street";

std::string bytes_of(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

void put(const fs::path& path, const std::string& bytes) {
  fs::create_directories(path.parent_path());
  std::ofstream(path, std::ios::binary) << bytes;
}

/// The sample's pets again and again, each with as many visits.
void make_salon(const std::string& to, int pets, int visits) {
  fs::create_directories(to);
  fs::copy(sample + "/salon.toml", to + "/salon.toml");
  fs::copy(sample + "/styles", to + "/styles", fs::copy_options::recursive);
  std::vector<std::string> texts;
  std::vector<fs::path> files;
  for (const auto& file : fs::directory_iterator(sample + "/pets")) files.push_back(file.path());
  std::ranges::sort(files);
  for (const fs::path& file : files) {
    std::string text = bytes_of(file);
    // A puppy has no twenty visits behind it, and photos are another matter.
    const bool young = std::regex_search(text, std::regex("born *= 202[3-9]"));
    if (text.find("photo ") == text.npos && !young) texts.push_back(text);
  }
  for (int i = 0; i < pets; ++i) {
    const std::string key = fmt::format("pet-{:05}", i);
    put(to + "/pets/" + key + ".toml", texts[static_cast<std::size_t>(i) % texts.size()]);
    for (int j = 0; j < visits; ++j) {
      const std::string day = fmt::format("20{}-{:02}-{:02}", 25 - j / 10, 1 + j % 10, 1 + i % 28);
      put(fmt::format("{}/visits/{}/{}.toml", to, key, day),
          fmt::format(
              "date = {}\ngroomer = \"Ines\"\nminutes = {}\n[came_in]\nears = {{ mats = {} }}\n",
              day, 60 + j, j % 3));
    }
  }
}

std::vector<std::string> cards(const std::string& salon, const char* jobs) {
  return {FURNISH_PROGRAM, "card", "--salon", salon, "--on", "2026-11-24", "-j", jobs};
}

void show(std::string_view what, const Cost& cost, int pets) {
  fmt::print("  {:<20} {:7.2f} s    cpu {:7.2f} s    {:6.2f} ms cpu a pet    {:6.1f} MiB\n", what,
             cost.wall_ms / 1000, cost.cpu_ms / 1000, cost.cpu_ms / pets, cost.peak_mib);
}
}  // namespace

void batches(const std::string& folder) {
  constexpr int few = 100, many = 1000, visits = 20;
  fmt::print("Cards to disk, pets with {} visits\n", visits);
  const std::string small = folder + "/few", large = folder + "/many";
  make_salon(small, few, visits);
  const Cost one = run(cards(small, "1"));
  fs::remove_all(small + "/sheets");
  const Cost two = run(cards(small, "2"));
  show(fmt::format("{}, one thread", few), one, few);
  show(fmt::format("{}, two threads", few), two, few);
  fmt::print("  two against one      {:7.2f}      goal >= 1.8\n", one.wall_ms / two.wall_ms);
  make_salon(large, many, visits);
  const Cost all = run(cards(large, "2")), again = run(cards(large, "2"));
  show(fmt::format("{}, two threads", many), all, many);
  fmt::print("  a pet of {} to one of {}: {:.2f}    goal <= 1.05, and < 60 MiB\n", many, few,
             all.cpu_ms / many / (two.cpu_ms / few));
  show("nothing changed", again, many);
}

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
