#include <fmt/format.h>

#include <algorithm>
#include <atomic>
#include <catch2/catch.hpp>
#include <filesystem>
#include <functional>
#include <map>
#include <memory>
#include <stdexcept>
#include <thread>

#include "app/generated.h"
#include "app/hushed.h"
#include "app/run.h"
#include "app/workers.h"
#include "app/workshop.h"
#include "output/attachments.h"
#include "output/pdf.h"
#include "output/pdf_rules.h"
#include "output/tool.h"
#include "share.h"

// Nothing is shared between two workshops but what never changes: each thread has its own, and what
// they make is byte for byte what one alone makes. `tests/threads` runs this under ThreadSanitizer.

namespace furnish::test {
namespace {
const std::string source = FURNISH_SOURCE_DIR;

Options asked(const SheetMaker& sheet) {
  Options options;
  options.sheet = &sheet;
  options.salon = source + "/samples/lantern-street";
  options.data = source;
  options.on = parse_date("2026-11-24");
  return options;
}

/// A run's sheets as PDFs, with what each of them carries.
struct Rendered {
  std::unique_ptr<Options> options;
  std::unique_ptr<Workshop> shop;  ///< keeps its fonts
  std::vector<std::string> bytes;
};

/// Catch's checks are for one thread, so what goes wrong is an empty sheet.
Rendered render(const SheetMaker& sheet, const Files& files,
                const std::vector<std::string>& pets = {}) {
  Rendered out{std::make_unique<Options>(asked(sheet)), nullptr, {}};
  out.options->pets = pets;
  out.shop = std::make_unique<Workshop>(*out.options, files);
  bool complete = true;
  for (const PetPath& path : out.shop->pets(complete)) {
    std::string& bytes = out.bytes.emplace_back();
    DiagnosticSink sink;
    const auto one = out.shop->open(path, sink);
    const auto made = one ? out.shop->sheet(*one, sink) : std::nullopt;
    if (!made) continue;
    const std::vector<Frame> pages{made->sheet.page.frame};
    const auto pdf = to_pdf(pages, made->sheet.info, {{}, made->files}, sink);
    if (!pdf) continue;
    bytes = *pdf;
    for (const Attachment& one_file : attachments_of(*pdf, sink)) bytes += one_file.bytes;
    if (sink.has_errors()) bytes.clear();
  }
  return out;
}

void in_two_threads(const std::function<void(std::size_t)>& work) {
  std::thread first([&] { work(0); }), second([&] { work(1); });
  first.join();
  second.join();
}

/// A whole run: its status, what it said, and every file that it wrote.
using Whole = std::map<std::string, std::string>;
Whole whole_run(const TemporaryFolder& salon, Options options, int jobs) {
  const TemporaryFolder out;
  options.salon = salon.path("");
  options.output = out.path("sheets") + "/";
  options.jobs = jobs;
  Whole whole;
  {
    const Hushed hushed(out.path("out"), out.path("err"));
    whole["status"] = std::to_string(static_cast<int>(run(options, DiskFiles(), system_disk())));
  }
  for (const auto& file : std::filesystem::recursive_directory_iterator(out.path(""))) {
    if (!file.is_regular_file()) continue;
    std::string bytes = bytes_of(file.path().string());
    // The files are named as they lie.
    for (auto at = bytes.find(out.path("")); at != bytes.npos; at = bytes.find(out.path(""))) {
      bytes.erase(at, out.path("").size());
    }
    whole[file.path().filename().string()] = std::move(bytes);
  }
  return whole;
}

/// A salon that has something to say of itself too: faults of pets, warnings of a style that some
/// share, a day on which they get in each other's way, and letters that no font has.
void put_salon(const TemporaryFolder& folder, std::size_t pets) {
  namespace fs = std::filesystem;
  for (const char* const name : {"pets", "styles", "days"})
    fs::create_directories(folder.path(name));
  folder.file("salon.toml", "[salon]\nname = \"Lantern Street\"\n");
  folder.file("styles/own.toml", "[style]\nname = \"Own\"\nextends = \"natural-tidy\"\n");
  folder.file("styles/bad.toml", "[style]\nname = \"Bad\"\nextends = \"natural-tdy\"\n");
  Dice dice(20261124);
  std::string day = "date = 2026-11-24\n";
  for (std::size_t i = 0; i < pets; ++i) {
    std::string text = generated_pet(dice);
    if (i % 7 == 3) text.insert(text.find('"') + 1, "\U0010FFFD");
    if (i % 5 == 1) {
      const std::string style = i % 2 == 0 ? "own" : "bad";
      if (const auto at = text.find("style = \""); at != text.npos) {
        text.replace(at + 9, text.find('"', at + 9) - at - 9, style);
      }
    }
    folder.file(fmt::format("pets/pet-{:04}.toml", i), text);
    if (i % 9 < 2 && i < 180) {  // of more than fifty bookings none is read
      day += fmt::format("[[booking]]\nat = 09:{:02}:00\npet = \"pet-{:04}\"\ngroomer = \"Ines\"\n",
                         i % 60, i);
    }
  }
  day += "[[booking]]\nat = 10:00:00\npet = \"nobody\"\n";
  folder.file("days/2026-11-24.toml", day);
}
/// The disk, but for one file: reading it is what nobody foresaw.
class OddFile final : public Files {
 public:
  explicit OddFile(std::string path) : path_(std::move(path)) {}
  FileContent read_up_to(const std::string& path, std::size_t most) const override {
    if (path.ends_with(path_)) throw std::runtime_error("out of ink");
    return disk_.read_up_to(path, most);
  }
  bool exists(const std::string& path) const override { return disk_.exists(path); }
  FolderContent list(const std::string& folder) const override { return disk_.list(folder); }

 private:
  DiskFiles disk_;
  std::string path_;
};
}  // namespace

TEST_CASE("two workshops in two threads make what one alone makes", "[threads]") {
  const DiskFiles files;
  DiagnosticSink sink;
  const auto fonts = FontSet::open(source + "/fonts", sink);
  REQUIRE(fonts);
  fonts->hold_faces();
  // What is made alone keeps the faces of this machine that some names need.
  const std::vector<std::string> styled{"juniper", "komugi", "marlow"};
  const Rendered card = render(sheets::card, files), style = render(sheets::style, files, styled);
  REQUIRE(card.bytes.size() > 10);
  for (const std::string& bytes : card.bytes) CHECK_FALSE(bytes.empty());
  REQUIRE(style.bytes.size() == styled.size());
  for (const std::string& bytes : style.bytes) CHECK_FALSE(bytes.empty());
  std::vector<std::string> cards[2], styles[2];
  in_two_threads([&](std::size_t number) {
    cards[number] = render(sheets::card, files).bytes;
    styles[number] = render(sheets::style, files, styled).bytes;
  });
  for (const std::size_t number : {0U, 1U}) {
    CHECK(cards[number] == card.bytes);
    CHECK(styles[number] == style.bytes);
  }
}

TEST_CASE("held faces are all that two threads need that begin at one time", "[threads]") {
  const DiskFiles files;
  DiagnosticSink sink;
  const auto fonts = FontSet::open(source + "/fonts", sink);
  REQUIRE(fonts);
  fonts->hold_faces();
  // Their names need the bundled families only, one of them the Arabic one.
  const std::vector<std::string> pets{"marlow", "qamar"};
  std::vector<std::string> cards[2];
  in_two_threads(
      [&](std::size_t number) { cards[number] = render(sheets::card, files, pets).bytes; });
  const Rendered alone = render(sheets::card, files, pets);
  for (const std::string& bytes : alone.bytes) CHECK_FALSE(bytes.empty());
  CHECK(cards[0] == alone.bytes);
  CHECK(cards[1] == alone.bytes);
}

TEST_CASE("a run in many threads writes and says what one in a single thread does, in its order",
          "[threads]") {
  const TemporaryFolder salon;
  const std::size_t pets = long_run() ? 2000 : 40;
  put_salon(salon, pets);
  const Whole alone = whole_run(salon, asked(sheets::card), 1);
  CHECK(alone.at("status") == "1");
  CHECK(alone.size() > pets / 2);
  const std::string& said = alone.at("err");
  INFO(said.substr(0, 4000));
  // What the test is about is there to be said.
  for (const char* const what :
       {"error: ", "no style 'natural-tdy'", "nobody", "U+10FFFD", "at once"}) {
    CHECK(said.find(what) != said.npos);
  }
  for (const int threads : {2, 8}) {
    const Whole many = whole_run(salon, asked(sheets::card), threads);
    CHECK(many.at("out") == alone.at("out"));
    CHECK(many.at("err") == said);
    CHECK(many == alone);
  }
}

TEST_CASE("a file of many sheets is the same from many threads as from one", "[threads]") {
  const TemporaryFolder salon;
  // Two threads have something to do from 41 sheets on.
  put_salon(salon, long_run() ? 500 : 44);
  Options options = asked(sheets::card);
  options.together = true;
  for (const int each : long_run() ? std::vector{0, 2} : std::vector{0}) {
    options.copies_per_sheet = each;
    const Whole alone = whole_run(salon, options, 1);
    CHECK(pdf_faults(alone.at("all-card.pdf")) == std::vector<std::string>{});
    for (const int threads : long_run() ? std::vector{2, 8} : std::vector{8}) {
      CHECK(whole_run(salon, options, threads) == alone);
    }
  }
}

TEST_CASE("results are taken in order, no more are begun than may be, and what is thrown arrives") {
  std::vector<int> slots(6, -1);
  std::atomic<std::size_t> begun{0};
  const auto make = [&](std::size_t, std::size_t i) {
    ++begun;
    slots[i % 6] = static_cast<int>(i);
  };
  {
    Workers workers({100, 6, 3, 2, make, [](std::size_t) {}});
    for (std::size_t i = 0; i < 50; ++i) {
      workers.wait_for(i);
      CHECK(slots[i % 6] == static_cast<int>(i));
      CHECK(begun <= i + 6);
    }
  }
  // Who goes leaves the rest undone.
  CHECK(begun <= 56);
  Workers failing({3, 3, 1, 1,
                   [](std::size_t, std::size_t i) {
                     if (i == 1) throw std::runtime_error("out of paper");
                   },
                   [](std::size_t) {}});
  CHECK_THROWS_WITH(
      [&] {
        for (std::size_t i = 0; i < 3; ++i) failing.wait_for(i);
      }(),
      "out of paper");
}

TEST_CASE("what is thrown of one keeps none before it from being taken", "[threads]") {
  std::atomic<bool> thrown = false;
  const auto make = [&](std::size_t, std::size_t i) {
    if (i == 1) {
      thrown = true;
      throw std::runtime_error("out of paper");
    }
    while (i == 0 && !thrown) std::this_thread::yield();
  };
  Workers workers({3, 3, 2, 1, make, [](std::size_t) {}});
  workers.wait_for(0);
  CHECK_THROWS_WITH(workers.wait_for(1), "out of paper");
  workers.wait_for(2);
}

TEST_CASE("what nobody foresaw of one pet keeps no other from its sheet", "[threads]") {
  const TemporaryFolder salon, out;
  std::filesystem::create_directories(salon.path("pets"));
  for (const char* const name : {"ada", "bo", "cy"}) {
    salon.file(fmt::format("pets/{}.toml", name), fmt::format("[pet]\nname = \"{}\"\n", name));
  }
  Options options = asked(sheets::card);
  options.salon = salon.path("");
  options.output = out.path("sheets") + "/";
  options.jobs = 1;
  Exit exit{};
  {
    const Hushed hushed(out.path("out"), out.path("err"));
    exit = run(options, OddFile("pets/bo.toml"), system_disk());
  }
  INFO(bytes_of(out.path("err")));
  CHECK(exit == Exit::faults);
  CHECK(bytes_of(out.path("err")).find("its card could not be made: out of ink") !=
        std::string::npos);
  CHECK(std::filesystem::exists(out.path("sheets/ada-card.pdf")));
  CHECK_FALSE(std::filesystem::exists(out.path("sheets/bo-card.pdf")));
  CHECK(std::filesystem::exists(out.path("sheets/cy-card.pdf")));
}

TEST_CASE("threads are as many as were asked for, and none for a handful") {
  CHECK(threads_for(100, 1) == 1);
  CHECK(threads_for(100, 8) == 8);
  CHECK(threads_for(2, 8) == 1);
  CHECK(threads_for(9, 8) == 2);
  CHECK(threads_for(100, 0) == std::max(1U, std::thread::hardware_concurrency()));
}
}  // namespace furnish::test
