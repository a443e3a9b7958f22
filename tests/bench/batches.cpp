#include "batches.h"

#include <fmt/format.h>

#include <filesystem>

#include "salons.h"

namespace furnish::bench {
namespace {
constexpr int few = 100, visits = 20;
constexpr double most_mib = 60;

/// Cards of many pets beside those of few, and then with nothing changed.
void against_few(const std::string& folder, int many, int visits_of_many) {
  Cost small;
  {
    const ManyPets salon(folder + "/few", few, visits_of_many);
    small = salon.made("card", 2);
  }
  const ManyPets salon(folder + "/many", many, visits_of_many);
  const Cost all = salon.made("card", 2), again = salon.made("card", 2);
  show(fmt::format("{}, two threads", few), small, few);
  show(fmt::format("{}, two threads", many), all, many);
  fmt::print("  a pet of {} to one of {}: {:.2f}    goal <= 1.05, and < {} MiB\n", many, few,
             all.cpu_ms / many / (small.cpu_ms / few), most_mib);
  show("nothing changed", again, many);
}
}  // namespace

void batches(const std::string& folder) {
  fmt::print("Cards to disk, pets with {} visits\n", visits);
  Cost one, two;
  {
    const ManyPets salon(folder + "/few", few, visits);
    one = salon.made("card", 1);
    salon.forget();
    two = salon.made("card", 2);
  }
  show(fmt::format("{}, one thread", few), one, few);
  show(fmt::format("{}, two threads", few), two, few);
  fmt::print("  two against one      {:7.2f}      goal >= 1.8\n", one.wall_ms / two.wall_ms);
  against_few(folder, 1000, visits);
}

void scale(const std::string& folder) {
  fmt::print("Cards to disk, 10,000 pets with {} visits\n", visits);
  against_few(folder, 10'000, visits);
}

void hundred_thousand(const std::string& folder) {
  fmt::print("Cards to disk, 100,000 pets with one visit, in about 5 GB that are gone again\n");
  against_few(folder, 100'000, 1);
}

void to_disk(const std::vector<std::string>& bare, int runs, const std::string& folder) {
  constexpr int cards = 208;
  const ManyPets salon(folder + "/disk", cards, 1);
  std::vector<Cost> ours, least;
  for (int i = 0; i < runs; ++i) {
    salon.forget();
    ours.push_back(salon.made("card", 2));
    least.push_back(run(bare));
  }
  const Cost all = median(ours), one = median(least);
  fmt::print("{} cards to disk, median of {} runs in turn with the bare program\n", cards, runs);
  show("two threads", all, cards);
  fmt::print("  as bare programs     {:7.1f}      goal < 1 s\n", all.wall_ms / one.wall_ms);
}

void together(const std::string& folder) {
  constexpr int cards = 500;
  const ManyPets salon(folder + "/together", cards, 1);
  const Cost each = salon.made("card", 2),
             all = salon.made("card", 2, {"--together", "-o", salon.path("all.pdf")});
  fmt::print("Cards in one file\n");
  show(fmt::format("{} files", cards), each, cards);
  show(fmt::format("{} together", cards), all, cards);
  fmt::print("  together to files    {:7.2f} of the cpu, {:.1f} kB a card    goal < {} MiB\n",
             all.cpu_ms / each.cpu_ms,
             static_cast<double>(std::filesystem::file_size(salon.path("all.pdf"))) / 1e3 / cards,
             most_mib);
}

void book(const std::string& folder) {
  constexpr int pets = 1000;
  const ManyPets salon(folder + "/book", pets, 3);
  const Cost cost = salon.made("book", 0, {"-o", salon.path("book.pdf")});
  fmt::print("A book\n");
  show(fmt::format("{} pets", pets), cost, pets);
  fmt::print("  {:.1f} MB    goal < 8 MB, and < {} MiB\n",
             static_cast<double>(std::filesystem::file_size(salon.path("book.pdf"))) / 1e6,
             most_mib);
}
}  // namespace furnish::bench
