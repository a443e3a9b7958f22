#include <catch2/catch.hpp>

#include <functional>
#include <memory>
#include <thread>

#include "app/workshop.h"
#include "output/attachments.h"
#include "output/pdf.h"

// Nothing is shared between two workshops but what never changes: each thread has its own, and what
// they make is byte for byte what one alone makes. `tests/threads` runs this under ThreadSanitizer.

namespace furnish::test {
namespace {
const std::string source = FURNISH_SOURCE_DIR;

Options asked(Command command) {
  Options options;
  options.command = command;
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
Rendered render(Command command, const Files& files, const std::vector<std::string>& pets = {}) {
  Rendered out{std::make_unique<Options>(asked(command)), nullptr, {}};
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
}  // namespace

TEST_CASE("two workshops in two threads make what one alone makes", "[threads]") {
  const DiskFiles files;
  DiagnosticSink sink;
  const auto fonts = FontSet::open(source + "/fonts", sink);
  REQUIRE(fonts);
  fonts->hold_faces();
  // What is made alone keeps the faces of this machine that some names need.
  const std::vector<std::string> styled{"juniper", "komugi", "marlow"};
  const Rendered card = render(Command::card, files), style = render(Command::style, files, styled);
  REQUIRE(card.bytes.size() > 10);
  for (const std::string& bytes : card.bytes) CHECK_FALSE(bytes.empty());
  REQUIRE(style.bytes.size() == styled.size());
  for (const std::string& bytes : style.bytes) CHECK_FALSE(bytes.empty());
  std::vector<std::string> cards[2], styles[2];
  in_two_threads([&](std::size_t number) {
    cards[number] = render(Command::card, files).bytes;
    styles[number] = render(Command::style, files, styled).bytes;
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
      [&](std::size_t number) { cards[number] = render(Command::card, files, pets).bytes; });
  const Rendered alone = render(Command::card, files, pets);
  for (const std::string& bytes : alone.bytes) CHECK_FALSE(bytes.empty());
  CHECK(cards[0] == alone.bytes);
  CHECK(cards[1] == alone.bytes);
}
}  // namespace furnish::test
