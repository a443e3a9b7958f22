#include "salons.h"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <regex>
#include <utility>

#include "sample_files.h"

namespace furnish::bench {
namespace {
namespace fs = std::filesystem;

std::vector<std::string> grown_pets() {
  std::vector<fs::path> files;
  for (const auto& file : fs::directory_iterator(sample + "/pets")) files.push_back(file.path());
  std::ranges::sort(files);
  std::vector<std::string> texts;
  for (const fs::path& file : files) {
    std::string text = bytes_of(file);
    // A puppy has no twenty visits behind it, and photos are another matter.
    const bool young = std::regex_search(text, std::regex("born *= 202[3-9]"));
    if (text.find("photo ") == text.npos && !young) texts.push_back(text);
  }
  return texts;
}

/// The pet a tenth heavier or lighter.
std::string of_weight(const std::string& text, int i) {
  constexpr int weights = 199;
  std::smatch found;
  if (!std::regex_search(text, found, std::regex("(\\d+\\.?\\d*) kg"))) return text;
  const double kg = std::stod(found[1]) * (0.9 + 0.2 * (i % weights) / weights);
  return found.prefix().str() + fmt::format("{:.2f} kg", kg) + found.suffix().str();
}
}  // namespace

ManyPets::ManyPets(std::string folder, int pets, int visits)
    : folder_(std::move(folder)), pets_(pets) {
  fs::create_directories(folder_);
  fs::copy(sample + "/salon.toml", path("salon.toml"));
  fs::copy(sample + "/styles", path("styles"), fs::copy_options::recursive);
  const std::vector<std::string> texts = grown_pets();
  for (int i = 0; i < pets; ++i) {
    const std::string key = fmt::format("pet-{:06}", i);
    put(path("pets/" + key + ".toml"),
        of_weight(texts[static_cast<std::size_t>(i) % texts.size()], i));
    for (int j = 0; j < visits; ++j) {
      const std::string day = fmt::format("20{}-{:02}-{:02}", 25 - j / 10, 1 + j % 10, 1 + i % 28);
      put(path("visits/" + key + "/" + day + ".toml"),
          fmt::format(
              "date = {}\ngroomer = \"Ines\"\nminutes = {}\n[came_in]\nears = {{ mats = {} }}\n",
              day, 60 + j, j % 3));
    }
  }
}

ManyPets::~ManyPets() {
  std::error_code ignored;
  fs::remove_all(folder_, ignored);
}

Cost ManyPets::made(const std::string& what, int jobs, const std::vector<std::string>& more) const {
  std::vector<std::string> words{FURNISH_PROGRAM, what, "--salon", folder_, "--on", "2026-11-24"};
  if (jobs > 0) words.insert(words.end(), {"-j", std::to_string(jobs)});
  words.insert(words.end(), more.begin(), more.end());
  return run(words);
}

void ManyPets::forget() const {
  fs::remove_all(path("sheets"));
}

void show(std::string_view what, const Cost& cost, int pets) {
  fmt::print("  {:<20} {:7.2f} s    cpu {:7.2f} s    {:6.2f} ms cpu a pet    {:6.1f} MiB\n", what,
             cost.wall_ms / 1000, cost.cpu_ms / 1000, cost.cpu_ms / pets, cost.peak_mib);
}
}  // namespace furnish::bench
