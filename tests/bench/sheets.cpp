#include "sheets.h"

#include <fmt/format.h>
#include <time.h>
#include <unistd.h>

#include <array>
#include <cstdlib>
#include <fstream>

#include "app/workshop.h"
#include "output/pdf.h"
#include "process.h"
#include "sample_files.h"

namespace furnish::bench {
namespace {
constexpr Date day = std::chrono::sys_days(std::chrono::year(2026) / 11 / 24);

/// What each kind may take, as what was found possible has it: a process of its own in
/// milliseconds on a computer whose bare program takes 15.5.
struct Kind {
  const char* name;
  const char* pet;
  const SheetMaker* maker;
  double cold_ms;
};
constexpr double bare_ms = 15.5;
constexpr std::array<Kind, 4> kinds{{{"card", "juniper", &sheets::card, 20},
                                     {"style", "marlow", &sheets::style, 60},
                                     {"note", "gao", &sheets::note, 90},
                                     {"care", "gao", &sheets::care, 30}}};

std::vector<std::string> command(const Kind& kind, const std::string& folder) {
  return {FURNISH_PROGRAM, kind.name,    kind.pet,  "--salon", sample,
          "--on",          "2026-11-24", "--fresh", "-o",      folder + "/" + kind.name + ".pdf"};
}

Cost median_of(int runs, const std::vector<std::string>& what) {
  std::vector<Cost> costs;
  for (int i = 0; i < runs; ++i) costs.push_back(run(what));
  return median(costs);
}

double cpu_now() {
  timespec now{};
  ::clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
  return static_cast<double>(now.tv_sec) * 1e3 + static_cast<double>(now.tv_nsec) / 1e6;
}

bool installed(const std::string& program) {
  return ::access(("/usr/bin/" + program).c_str(), X_OK) == 0 ||
         ::access(("/usr/local/bin/" + program).c_str(), X_OK) == 0;
}

/// A title, forty lines and a table of twenty rows, in each program's own way.
std::string repeated(const std::string& before, const std::string& line, const std::string& between,
                     const std::string& row, const std::string& after) {
  std::string out = before;
  for (int i = 0; i < 40; ++i) out += fmt::format(fmt::runtime(line), i);
  out += between;
  for (int i = 0; i < 20; ++i) out += fmt::format(fmt::runtime(row), i, 3 * i);
  return out + after;
}

struct Rival {
  std::string program, file, text;
  std::vector<std::string> command;
};

std::vector<Rival> all_rivals(const std::string& folder) {
  const auto in = [&](const char* name) { return folder + "/" + name; };
  return {
      {"groff",
       in("page.ms"),
       repeated(".TL\nRex\n", ".LP\nLine {} of what the groomer reads.\n", ".TS\nl n.\n",
                "region {}\t{} mm\n", ".TE\n"),
       {"groff", "-t", "-ms", "-Tpdf", in("page.ms")}},
      {"pdflatex",
       in("page.tex"),
       repeated("\\documentclass{article}\\begin{document}\\section*{Rex}\n",
                "Line {} of what the groomer reads.\\par\n", "\\begin{tabular}{ll}\n",
                "region {} & {} mm\\\\\n", "\\end{tabular}\\end{document}\n"),
       {"pdflatex", "-interaction=batchmode", "-output-directory=" + folder, in("page.tex")}},
      {"weasyprint",
       in("page.html"),
       repeated("<html><title>Rex</title><h1>Rex</h1>", "<p>Line {} of what the groomer reads.</p>",
                "<table>", "<tr><td>region {}<td>{} mm</tr>", "</table></html>"),
       {"weasyprint", in("page.html"), in("weasyprint.pdf")}},
      {"typst",
       in("page.typ"),
       repeated("= Rex\n", "Line {} of what the groomer reads.\n\n", "#table(columns: 2,\n",
                "[region {}], [{} mm],\n", ")\n"),
       {"typst", "compile", in("page.typ"), in("typst.pdf")}}};
}
}  // namespace

void cold_sheets(const std::vector<std::string>& bare, int runs, const std::string& folder) {
  fmt::print("Cold, a process for each sheet (median of {} in turn), cpu\n", runs);
  std::array<std::vector<Cost>, kinds.size()> costs;
  std::vector<Cost> least, version;
  for (int i = 0; i < runs; ++i) {
    least.push_back(run(bare));
    version.push_back(run({FURNISH_PROGRAM, "--version"}));
    for (std::size_t k = 0; k < kinds.size(); ++k) {
      costs[k].push_back(run(command(kinds[k], folder)));
    }
  }
  const double one = median(least).cpu_ms;
  fmt::print("  bare program         {:7.1f} ms\n", one);
  const auto show = [&](const char* name, double cpu, double goal_ms) {
    fmt::print("  {:<20} {:7.1f} ms  {:6.2f} times the bare program   goal <= {:.2f}\n", name, cpu,
               cpu / one, goal_ms / bare_ms);
  };
  show("--version", median(version).cpu_ms, 2);
  for (std::size_t k = 0; k < kinds.size(); ++k) {
    show(kinds[k].name, median(costs[k]).cpu_ms, kinds[k].cold_ms);
  }
}

void warm_sheets(const std::vector<std::string>& bare, int runs) {
  const double one = median_of(runs, bare).cpu_ms;
  fmt::print("Warm, each kind again and again in one workshop, file to PDF, cpu\n");
  for (const Kind& kind : kinds) {
    Options options;
    options.salon = sample;
    options.data = source;
    options.on = day;
    options.sheet = kind.maker;
    const DiskFiles files;
    Workshop shop(options, files);
    std::vector<double> took;
    for (int i = 0; i <= runs; ++i) {
      const double begun = cpu_now();
      const auto pet = shop.open({sample + "/pets/" + kind.pet + ".toml", sample}, shop.sink());
      const auto made = pet ? shop.sheet(*pet, shop.sink()) : std::nullopt;
      const auto pdf =
          made ? to_pdf(sides(made->sheet.page), made->sheet.info, {{}, made->files}, shop.sink())
               : std::nullopt;
      if (!pdf) std::exit(1);
      if (i > 0) took.push_back(cpu_now() - begun);  // the first opens fonts and words
    }
    const double cpu = median(std::move(took));
    fmt::print("  {:<20} {:7.1f} ms  {:6.2f} times the bare program\n", kind.name, cpu, cpu / one);
  }
}

void rivals(const std::vector<std::string>& card, const std::vector<std::string>& bare, int runs,
            const std::string& folder) {
  fmt::print("Beside other typesetters, a page with as much text, cpu\n");
  const double one = median_of(runs, bare).cpu_ms, ours = median_of(runs, card).cpu_ms;
  const auto show = [&](std::string_view name, double cpu) {
    fmt::print("  {:<20} {:7.1f} ms  {:6.2f} times the bare program  {:6.2f} times a card\n", name,
               cpu, cpu / one, cpu / ours);
  };
  show("furnish card", ours);
  for (const Rival& rival : all_rivals(folder)) {
    if (!installed(rival.program)) {
      fmt::print("  {:<20} is not installed\n", rival.program);
      continue;
    }
    std::ofstream(rival.file, std::ios::binary) << rival.text;
    run(rival.command);  // the first may make what the others find
    show(rival.program, median_of(std::max(3, runs / 4), rival.command).cpu_ms);
  }
}
}  // namespace furnish::bench
