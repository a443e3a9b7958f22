#include <catch2/catch.hpp>

#include <algorithm>
#include <map>

#include "app/generated.h"
#include "app/program.h"
#include "app/promised.h"
#include "app/workshop.h"
#include "base/paper.h"
#include "output/pdf.h"
#include "output/pdf_rules.h"
#include "plan/places.h"
#include "share.h"

namespace furnish::test {
namespace {
// In a long run more than two thousand in all, in batches that run beside each other.
const std::size_t a_batch = share_of(400);

std::string key_of(std::size_t i) {
  return "pet-" + std::to_string(1000 + i);
}

struct Counts {
  std::size_t set = 0, short_cards = 0, refused_file = 0, refused_page = 0;
};

/// Reads, plans and sets every pet of a batch. Each is one page that says all it should, or is
/// refused with an error.
Counts run_batch(std::uint32_t seed, const std::string& paper,
                 const SheetMaker& sheet = sheets::card) {
  Dice dice(seed);
  std::map<std::string, std::string> files;
  for (std::size_t i = 0; i < a_batch; ++i) {
    files["pets/" + key_of(i) + ".toml"] = generated_pet(dice);
  }
  const WithShippedStyles disk(files);
  Options options;
  options.on = demo_day;
  options.paper = paper;
  options.sheet = &sheet;
  options.data = FURNISH_SOURCE_DIR;
  Workshop shop(options, disk);
  const Size size = parse_paper(paper).value().size;
  Counts counts;
  for (std::size_t i = 0; i < a_batch; ++i) {
    const std::string path = "pets/" + key_of(i) + ".toml";
    INFO("seed " << seed << ", " << path << " on " << paper << ":\n" << files[path]);
    const std::size_t errors = shop.sink().error_count();
    auto one = shop.open({path, "."}, shop.sink());
    if (!one) {
      CHECK(shop.sink().error_count() > errors);
      ++counts.refused_file;
      continue;
    }
    const auto made = shop.sheet(*one, shop.sink());
    CHECK((shop.sink().error_count() > errors) == !made.has_value());
    if (!made) {
      ++counts.refused_page;
      continue;
    }
    const Frame& frame = made->sheet.page.frame;
    CHECK(frame.size == size);
    const bool at_the_door = made->sheet.page.layout == "at the door";
    if (&sheet == &sheets::card) {
      CHECK(first_missing(text_of(frame), promised(*one, at_the_door)) == "");
    } else {
      for (const Alert& alert : one->pet.alerts) {
        INFO(alert.text.value);
        CHECK(first_missing(text_of(frame), {alert.text.value, alert.action.value}) == "");
      }
      for (const TrimPart& part : one->pet.trim) {
        // What no tool may touch is said to be so, and how it would be cut is not.
        if (!workable(part.place, one->pet.alerts)) continue;
        INFO(part.entry.note);
        CHECK(first_missing(text_of(frame), {part.entry.note}) == "");
      }
    }
    ++counts.set;
    counts.short_cards += at_the_door;
    if (i % 50 != 0) continue;
    const auto pdf = to_pdf(std::span(&frame, 1), made->sheet.info, {}, shop.sink());
    REQUIRE(pdf);
    CHECK(PdfFile(*pdf).pages().size() == 1);
    CHECK(pdf_faults(*pdf) == std::vector<std::string>{});
  }
  CHECK(counts.set + counts.refused_file + counts.refused_page == a_batch);
  return counts;
}
}  // namespace

TEST_CASE("generated pets on A5", "[generated]") {
  const Counts counts = run_batch(20261124, "A5");
  // So that the batch tries what it should: most are set, some files and some pages are refused.
  CHECK(counts.set > a_batch / 2);
  CHECK(counts.refused_file > 0);
  CHECK(counts.refused_page > 0);
}

TEST_CASE("generated pets on A4", "[generated]") {
  CHECK(run_batch(1, "A4").set > a_batch * 3 / 4);
}

TEST_CASE("generated pets on A6", "[generated]") {
  const Counts counts = run_batch(2, "A6");
  CHECK(counts.set > a_batch / 8);
  CHECK(counts.short_cards > 0);
  CHECK(counts.refused_page > 0);
}

TEST_CASE("generated pets on half letter", "[generated]") {
  CHECK(run_batch(3, "half letter").set > a_batch / 2);
}

TEST_CASE("generated pets on 5x8 in", "[generated]") {
  CHECK(run_batch(4, "5x8 in").set > a_batch / 2);
}
TEST_CASE("generated pets' style sheets on A4", "[generated]") {
  const Counts counts = run_batch(5, "A4", sheets::style);
  CHECK(counts.set > a_batch / 2);
}
}  // namespace furnish::test
