// What a card costs, beside what it must cost. Prints a table; judges nothing.
//     furnish_bench [RUNS [PART...]]    parts: cold warm parts fits rivals desk find batches disk
//     together watch import; none: all of them. Only by name, as they take minutes: book scale
//     hundred-thousand
#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <fstream>

#include "app/workshop.h"
#include "at_desk.h"
#include "base/paper.h"
#include "batches.h"
#include "frame_file.h"
#include "output/pdf.h"
#include "output/pdf_draw.h"
#include "output/pdf_finish.h"
#include "process.h"
#include "sample_files.h"
#include "sheets.h"

namespace furnish::bench {
namespace {
namespace fs = std::filesystem;
using Clock = std::chrono::steady_clock;

constexpr Date day = std::chrono::sys_days(std::chrono::year(2026) / 11 / 24);
constexpr const char* fullest = "juniper";

template <typename... Arguments>
void say(fmt::format_string<Arguments...> form, Arguments&&... arguments) {
  fmt::print("{}\n", fmt::format(form, std::forward<Arguments>(arguments)...));
}

/// Milliseconds of one call, the median of so many.
template <typename Work>
double timed(int times, Work work) {
  std::vector<double> took;
  for (int i = 0; i < times; ++i) {
    const auto start = Clock::now();
    work();
    took.push_back(std::chrono::duration<double, std::milli>(Clock::now() - start).count());
  }
  return median(std::move(took));
}

Options options_for(std::string paper = {}) {
  Options options;
  options.salon = sample;
  options.data = source;
  options.on = day;
  options.paper = std::move(paper);
  return options;
}
PetPath path_of(const std::string& pet) {
  return {sample + "/pets/" + pet + ".toml", sample};
}
std::string key_of(const PetPath& path) {
  return fs::path(path.file).stem();
}

/// The bare program for the marks of the fullest card.
std::vector<std::string> bare_command(const std::string& folder) {
  const Options options = options_for();
  const DiskFiles files;
  Workshop shop(options, files);
  const auto one = shop.open(path_of(fullest), shop.sink());
  const auto sheet = one ? shop.sheet(*one, shop.sink()) : std::nullopt;
  if (!sheet) std::exit(1);
  const std::string frame = folder + "/frame.txt";
  std::ofstream(frame, std::ios::binary) << frame_file(sheet->sheet.page.frame);

  return {FURNISH_BARE, frame, source + "/fonts", folder + "/bare.pdf"};
}

std::vector<std::string> card_command(const std::string& folder) {
  return {FURNISH_PROGRAM, "card",       fullest,   "--salon", sample,
          "--on",          "2026-11-24", "--fresh", "-o",      folder + "/card.pdf"};
}

void cold(int runs, const std::string& folder) {
  const std::vector<std::string> card = card_command(folder), bare = bare_command(folder);
  run(card);
  run(bare);
  std::vector<Cost> cards, bares;
  for (int i = 0; i < runs; ++i) {  // in turn, so that what else the machine does meets both
    cards.push_back(run(card));
    bares.push_back(run(bare));
  }
  const Cost ours = median(cards), least = median(bares);
  say("Cold, one process a card ({}, median of {} runs in turn)", fullest, runs);
  say("  furnish card         {:7.1f} ms   cpu {:7.1f} ms   goal < 30 ms", ours.wall_ms,
      ours.cpu_ms);
  say("  bare: same marks     {:7.1f} ms   cpu {:7.1f} ms", least.wall_ms, least.cpu_ms);
  say("  ratio                {:7.2f}      cpu {:7.2f}      goal <= 1.3",
      ours.wall_ms / least.wall_ms, ours.cpu_ms / least.cpu_ms);
  const Cost batch = run({FURNISH_PROGRAM, "card", "--together", "--salon", sample, "--on",
                          "2026-11-24", "-o", folder + "/all.pdf"});
  cold_sheets(bare, runs, folder);
  say("Peak memory");
  say("  one card             {:7.1f} MiB", ours.peak_mib);
  say("  bare                 {:7.1f} MiB", least.peak_mib);
  say("  whole salon together {:7.1f} MiB", batch.peak_mib);
}

/// Every pet of the salon in one process, file to PDF; the first card, which opens the fonts, by
/// itself.
void warm(int rounds) {
  double first = 0, rest = 0;
  std::size_t cards = 0;
  for (int i = 0; i < rounds; ++i) {
    const Options options = options_for();
    const DiskFiles files;
    Workshop shop(options, files);
    bool complete = true;
    bool opened = false;
    for (const PetPath& path : shop.pets(complete)) {
      const auto start = Clock::now();
      const auto one = shop.open(path, shop.sink());
      const auto sheet = one ? shop.sheet(*one, shop.sink()) : std::nullopt;
      const auto pdf =
          sheet ? to_pdf(std::span(&sheet->sheet.page.frame, 1), sheet->sheet.info, {}, shop.sink())
                : std::nullopt;
      if (!pdf) std::exit(1);
      const double took = std::chrono::duration<double, std::milli>(Clock::now() - start).count();
      (opened ? rest : first) += took;
      cards += opened;
      opened = true;
    }
  }
  say("Warm, one process a salon, file to PDF");
  say("  first card           {:7.2f} ms", first / rounds);
  say("  each other card      {:7.2f} ms", rest / static_cast<double>(cards));
}

void parts(int times) {
  const Options options = options_for();
  const DiskFiles files;
  Workshop shop(options, files);
  std::string slowest;
  double plan = 0;
  bool complete = true;
  for (const PetPath& path : shop.pets(complete)) {
    const auto one = shop.open(path, shop.sink());
    if (!one) std::exit(1);
    DiagnosticSink sink;
    const double took = timed(
        times, [&] { make_plan(one->folder->salon(), one->pet, one->visits, {}, day, sink); });
    if (took <= plan) continue;
    plan = took;
    slowest = key_of(path);
  }
  const auto one = shop.open(path_of(fullest), shop.sink());
  const auto sheet = shop.sheet(*one, shop.sink());
  const std::span page(&sheet->sheet.page.frame, 1);
  const auto drawn = draw_pdf(page, sheet->sheet.info, {}, shop.sink());
  const double draw = timed(times, [&] { draw_pdf(page, sheet->sheet.info, {}, shop.sink()); });
  const double finish =
      timed(times, [&] { finish_pdf(*drawn, page, sheet->sheet.info, {}, shop.sink()); });
  // A new workshop each time, as what was set once is kept.
  const double set = timed(std::max(3, times / 10), [&] {
    Workshop fresh(options, files);
    const auto again = fresh.open(path_of(fullest), fresh.sink());
    if (!fresh.sheet(*again, fresh.sink())) std::exit(1);
  });
  say("Parts of {}, in process", fullest);
  say("  plan, slowest pet    {:7.3f} ms   goal < 5 ms ({})", plan, slowest);
  say("  fonts, read and set  {:7.2f} ms", set);
  say("  draw the PDF         {:7.2f} ms", draw);
  say("  finish the PDF       {:7.2f} ms a page", finish);
}

void fits() {
  int most_measures = 0, most_drafts = 0, measures = 0, drafts = 0, pages = 0;
  for (const Paper& paper : papers) {
    const Options options = options_for(std::string(paper.name));
    const DiskFiles files;
    Workshop shop(options, files);
    bool complete = true;
    for (const PetPath& path : shop.pets(complete)) {
      const auto one = shop.open(path, shop.sink());
      const auto sheet = one ? shop.sheet(*one, shop.sink()) : std::nullopt;
      if (!sheet) continue;
      ++pages;
      measures += sheet->sheet.page.measures;
      drafts += sheet->sheet.page.drafts;
      most_measures = std::max(most_measures, sheet->sheet.page.measures);
      most_drafts = std::max(most_drafts, sheet->sheet.page.drafts);
    }
  }
  say("Fits, {} cards on {} papers", pages, papers.size());
  say("  page measured        {:7.2f} times with its text set, at most {}",
      static_cast<double>(measures) / pages, most_measures);
  say("  page drafted         {:7.2f} times by widths alone, at most {}",
      static_cast<double>(drafts) / pages, most_drafts);
}

/// A client list of 20,000 pets, as one run shows it, makes their files, and finds them made.
void import_list(const std::string& folder) {
  constexpr int pets = 20'000;
  const std::string list = folder + "/clients.csv", to = folder + "/salon";
  std::ofstream out(list, std::ios::binary);
  out << "Pet,Breed,Owner,Phone,Born,Weight,Notes\r\n";
  for (int i = 0; i < pets; ++i) {
    out << fmt::format(
        "Rex {0},spaniel cross,A. Nobody {0},555 {0:05},{1}/{2}/20{3},{4}.5 kg,"
        "\"shy, \"\"soft\"\"\r\nsecond line\"\r\n",
        i, 1 + i % 28, 1 + i % 12, 10 + i % 15, 3 + i % 40);
  }
  out.close();
  run({FURNISH_PROGRAM, "new", "salon", to});
  const std::vector<std::string> show{FURNISH_PROGRAM, "import", list, "--salon", to};
  std::vector<std::string> write = show;
  write.emplace_back("--write");
  const Cost shown = run(show), made = run(write), again = run(write);
  say("A client list of {} lines", pets);
  say("  shown                {:7.2f} s    cpu {:7.2f} s", shown.wall_ms / 1000,
      shown.cpu_ms / 1000);
  say("  files made           {:7.2f} s    cpu {:7.2f} s    goal < 10 s", made.wall_ms / 1000,
      made.cpu_ms / 1000);
  say("  found made           {:7.2f} s    cpu {:7.2f} s", again.wall_ms / 1000,
      again.cpu_ms / 1000);
}
}  // namespace
}  // namespace furnish::bench

int main(int argc, char** argv) {
  using namespace furnish::bench;
  if (argc > 2 && std::string_view(argv[1]) == measured_word) return measured(argv + 2);
  const int runs = argc > 1 ? std::max(1, std::atoi(argv[1])) : 41;
  std::string form = fs::temp_directory_path() / "furnish-bench-XXXXXX";
  if (::mkdtemp(form.data()) == nullptr) return 1;
  say("Times of a busy machine are of no use: run this when nothing else does. Ratios and cpu\n"
      "times suffer least.\n");
  const std::vector<std::string> wanted(argv + std::min(argc, 2), argv + argc);
  const auto part = [&](const char* name, const auto& work) {
    if (wanted.empty() || std::ranges::find(wanted, name) != wanted.end()) work();
  };
  const auto long_part = [&](const char* name, const auto& work) {
    if (!wanted.empty()) part(name, work);
  };
  part("cold", [&] { cold(runs, form); });
  part("warm", [&] {
    warm(std::max(2, runs / 4));
    warm_sheets(bare_command(form), std::max(3, runs / 4));
  });
  part("rivals", [&] { rivals(card_command(form), bare_command(form), runs, form); });
  part("parts", [&] { parts(runs); });
  part("fits", [] { fits(); });
  part("desk", [&] { at_desk(runs); });
  part("find", [&] { find_pets(runs, form); });
  part("batches", [&] { batches(form); });
  part("disk", [&] { to_disk(bare_command(form), std::clamp(runs / 4, 3, 11), form); });
  part("together", [&] { together(form); });
  long_part("book", [&] { book(form); });
  long_part("scale", [&] { scale(form); });
  long_part("hundred-thousand", [&] { hundred_thousand(form); });
  part("watch", [&] { watching(form, std::max(5, runs / 2)); });
  part("import", [&] { import_list(form); });
  std::error_code ignored;
  fs::remove_all(form, ignored);
}
