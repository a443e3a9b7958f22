#include "at_desk.h"

#include <fmt/format.h>
#include <time.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <vector>

#include "app/desk_salon.h"
#include "desk/desk.h"
#include "output/svg.h"
#include "process.h"
#include "sample_files.h"

namespace furnish::bench {
namespace {
namespace fs = std::filesystem;
using Json = nlohmann::ordered_json;

constexpr Date day = std::chrono::sys_days(std::chrono::year(2026) / 11 / 24);

/// Milliseconds of this process's own work so far.
double cpu_now() {
  timespec now{};
  ::clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
  return static_cast<double>(now.tv_sec) * 1e3 + static_cast<double>(now.tv_nsec) / 1e6;
}

template <typename Work>
double cpu_of(Work work) {
  const double begun = cpu_now();
  work();
  return cpu_now() - begun;
}

Options options_for(std::string salon) {
  Options options;
  options.salon = std::move(salon);
  options.data = source;
  options.on = day;
  return options;
}

/// A desk that is asked as its page asks it, without a socket between.
struct Table {
  explicit Table(std::string folder)
      : options(options_for(std::move(folder))),
        salon(options, files, system_disk()),
        drafts("", system_disk()),
        desk(salon, drafts, {"", "token", false}) {
    desk.open_at(1);
  }
  Json ask(const std::string& name, const Json& what, double& cpu) {
    const desk::Request request{{"POST", "/token/api/" + name, {}}, what.dump()};
    desk::Response answer;
    cpu = cpu_of([&] { answer = desk.answer(request); });
    if (answer.status != 200) std::exit(1);
    return Json::parse(answer.body);
  }
  Options options;
  DiskFiles files;
  SalonAtDesk salon;
  desk::Drafts drafts;
  desk::Desk desk;
};

/// The same sheet of the same pet, read, planned, set and drawn again in one workshop.
double warm_sheet(const SheetMaker& sheet, const std::string& pet, int runs) {
  Options options = options_for(sample);
  options.sheet = &sheet;
  const DiskFiles files;
  Workshop shop(options, files);
  std::vector<double> took;
  for (int i = 0; i <= runs; ++i) {
    const double cpu = cpu_of([&] {
      const auto one =
          shop.open({options.salon + "/pets/" + pet + ".toml", options.salon}, shop.sink());
      const auto made = one ? shop.sheet(*one, shop.sink()) : std::nullopt;
      if (!made) std::exit(1);
      for (const Frame& side : sides(made->sheet.page)) {
        if (!to_svg(side, made->sheet.info, shop.sink())) std::exit(1);
      }
    });
    if (i > 0) took.push_back(cpu);  // the first opens fonts and words
  }
  return median(std::move(took));
}

/// What somebody changes: another letter of a text each time, or another length of the coat.
enum class Change { text, length };

double last_key(Table& table, const std::string& kind, const std::string& id,
                const std::string& sheet, Change change, int runs) {
  double cpu = 0;
  const Json opened = table.ask("open", {{"kind", kind}, {"id", id}}, cpu);
  Json asked{{"kind", kind}, {"id", id}, {"mark", opened["mark"]}, {"sheet", sheet}};
  std::vector<double> took;
  for (int i = 0; i <= runs; ++i) {
    Json edit{{"op", "set"}, {"path", {"pet", "colour"}}, {"value", fmt::format("grey {}", i)}};
    if (kind == "visit") edit["path"] = {"told"};
    if (change == Change::length) {
      edit["path"] = {"trim", "chest"};
      edit["value"] = {{"shears", "straight"}, {"leave", fmt::format("{} mm", 20 + i % 20)}};
    }
    asked["edits"] = Json::array({edit});
    const Json seen = table.ask("preview", asked, cpu);
    if (seen["pages"].empty()) std::exit(1);
    if (i > 0) took.push_back(cpu);
  }
  return median(std::move(took));
}

/// The samples' pets over and over under other names.
void make_salon(const std::string& folder, int pets) {
  const fs::path from = sample;
  fs::create_directories(folder + "/pets");
  fs::copy_file(from / "salon.toml", folder + "/salon.toml");
  std::vector<std::string> texts;
  for (const auto& file : fs::directory_iterator(from / "pets")) texts.push_back(bytes_of(file));
  std::ranges::sort(texts);
  constexpr std::array names{"Żółw", "Gạo", "Αργώ", "Снежок", "ليلى", "小白", "Ida", "Bjørn"};
  for (int i = 0; i < pets; ++i) {
    const auto n = static_cast<std::size_t>(i);
    std::string text = texts[n % texts.size()];
    const std::size_t begin = text.find("name"), end = text.find('\n', begin);
    text.replace(begin, end - begin, fmt::format("name = \"{} {}\"", names[n % names.size()], i));
    std::ofstream(fmt::format("{}/pets/pet-{:05}.toml", folder, i), std::ios::binary) << text;
  }
  fs::create_directories(folder + "/days");
  std::ofstream today(folder + "/days/2026-11-24.toml", std::ios::binary);
  today << "date = 2026-11-24\n\n";
  for (int i = 0; i < 16; ++i) {
    today << fmt::format("[[booking]]\npet = \"pet-{:05}\"\nat = {:02}:{:02}\n\n", i * 601,
                         9 + i / 2, i % 2 * 30);
  }
}
}  // namespace

void at_desk(int runs) {
  struct Row {
    const char* name;
    std::string kind, id, sheet;
    const SheetMaker* maker;
    const char* goal;
  };
  const std::vector<Row> rows{
      {"card", "pet", "juniper", "card", &sheets::card, "goal <= 100 ms"},
      {"card with a dog", "pet", "marlow", "card", &sheets::card, "goal <= 100 ms"},
      {"style sheet", "pet", "marlow", "style", &sheets::style, "goal <= 250 ms"},
      {"care sheet", "pet", "marlow", "care", &sheets::care, ""},
      {"note", "visit", "gao/2026-10-13", "note", &sheets::note, ""},
  };
  Table table(sample);
  fmt::print("At the desk: from the last key to the new sheet, cpu (median of {})\n", runs);
  for (const Row& row : rows) {
    const std::string pet = row.id.substr(0, row.id.find('/'));
    const double warm = warm_sheet(*row.maker, pet, runs);
    const double text = last_key(table, row.kind, row.id, row.sheet, Change::text, runs);
    fmt::print("  {:<20} {:7.1f} ms  {:5.2f} times the warm sheet ({:.1f} ms)  {}\n", row.name,
               text, text / warm, warm, row.goal);
    if (row.kind == "visit") continue;
    const double length = last_key(table, row.kind, row.id, row.sheet, Change::length, runs);
    fmt::print("    a length pulled    {:7.1f} ms  {:5.2f} times\n", length, length / warm);
  }
}

void find_pets(int runs, const std::string& folder) {
  constexpr int pets = 10'000;
  const std::string salon = folder + "/large";
  make_salon(salon, pets);
  Table table(salon);
  double cpu = 0;
  const Json first = table.ask("find", {{"words", ""}}, cpu);
  fmt::print("Find, of {} pets\n", pets);
  fmt::print("  first answer         {:7.1f} ms  with {} pets, {} not read yet\n", cpu,
             first["pets"].size(), first["reading"].get<int>());
  const double reading = cpu_of([&] {
    while (table.salon.read_on()) {
    }
  });
  fmt::print("  all read             {:7.2f} s\n", reading / 1000);
  const std::vector<std::string> words{"",     "a",   "zolw", "gao 1", "Αργω", "снежок 77", "ليلى",
                                       "小白", "ida", "none", "0101",  "ø 99", "adeyemi"};
  double worst = 0;
  std::vector<double> took;
  for (int i = 0; i < runs; ++i) {
    for (const std::string& one : words) {
      table.ask("find", {{"words", one}}, cpu);
      worst = std::max(worst, cpu);
      took.push_back(cpu);
    }
  }
  fmt::print("  a word               {:7.1f} ms  at most {:.1f} ms   goal <= 50 ms\n",
             median(std::move(took)), worst);
}
}  // namespace furnish::bench
