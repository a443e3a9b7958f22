#include <catch2/catch.hpp>

#include <algorithm>
#include <map>

#include "app/generated.h"
#include "app/program.h"
#include "app/promised.h"
#include "app/sheet_files.h"
#include "app/workshop.h"
#include "base/paper.h"
#include "base/text.h"
#include "output/pdf.h"
#include "output/pdf_rules.h"
#include "plan/places.h"
#include "share.h"
#include "sheet/alerts.h"

namespace furnish::test {
namespace {
// In a long run more than two thousand in all, in batches that run beside each other.
const std::size_t a_batch = share_of(400);

std::string key_of(std::size_t i) {
  return "pet-" + std::to_string(1000 + i);
}

struct Counts {
  std::size_t set = 0, turned = 0, work_in_front = 0, refused_file = 0;
  std::size_t usual = 0, usual_in_front = 0;  ///< of those with up to four usual alerts
};

/// All that the sides say, one after the other.
std::string said_by(const ComposedPage& page) {
  std::string out;
  for (const Frame& side : sides(page)) out += text_of(side);
  return out;
}

/// Trim, bath and finish of a card on its front.
bool work_in_front(const Case& one, const ComposedPage& page) {
  return first_lost(text_of(page.frame), promised_work(one, page.layout.ends_with("brief")))
      .empty();
}

/// Up to four alerts on the card, of which none says more than one usually does, and a name that
/// people call.
bool is_usual(const Case& one, const SheetVoice& voice) {
  constexpr std::size_t most = 60;  // letters: "Bites without warning when his hind feet are held"
  const SheetInput input = sheet_input(one, kinds::card, *parse_paper("A5"));
  const auto alerts = alert_entries({input, voice}, CautionScope::card);
  const auto is_long = [](const AlertEntry& alert) {
    return code_points(alert.statement) > most || code_points(alert.action) > most;
  };
  constexpr std::size_t most_in_name = 24;  // "Bartholomew Montgomery"
  return code_points(one.pet.name.value) <= most_in_name && alerts.size() <= 4 &&
         std::ranges::none_of(alerts, is_long);
}

/// Reads, plans and sets every pet of a batch. Each file that can be read has a sheet that says all
/// it should; none is refused for its length.
Counts run_batch(std::uint32_t seed, const std::string& paper,
                 const SheetMaker& sheet = sheets::card, std::size_t pets = a_batch) {
  Dice dice(seed);
  std::map<std::string, std::string> files;
  for (std::size_t i = 0; i < pets; ++i) {
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
  for (std::size_t i = 0; i < pets; ++i) {
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
    CHECK(shop.sink().error_count() == errors);
    CHECK(made);
    if (!made) continue;
    const ComposedPage& page = made->sheet.page;
    const std::vector<Frame> frames = sides(page);
    for (const Frame& side : frames) CHECK(side.size == size);
    const std::string text = said_by(page);
    if (&sheet == &sheets::card) {
      const std::vector<std::string> all = promised(*one, page.layout.ends_with("brief"));
      // In pieces, what is needed at the door comes first.
      // An alert against which the plan cuts is as grave as that, and may pass others.
      const bool may_rise = std::ranges::any_of(
          one->pet.alerts, [](const Alert& alert) { return !alert.avoid.empty(); });
      const bool in_order = page.more.empty() && page.layout != "flowing" && !may_rise;
      CHECK((in_order ? first_missing(text, all) : first_lost(text, all)) == "");
      for (const Alert& alert : one->pet.alerts) {
        if (alert.level > Signal::warning || page.layout == "flowing") continue;
        CHECK(first_missing(text_of(page.frame), {alert.text.value}) == "");
      }
    } else {
      for (const Alert& alert : one->pet.alerts) {
        INFO(alert.text.value);
        // In pieces a text may go on over the next side, below what stands at its head.
        for (const std::string& all : {alert.text.value, alert.action.value}) {
          if (page.layout != "flowing") {
            CHECK(first_missing(text, {all}) == "");
          } else {
            for (const std::string& word : words_of(all)) CHECK(first_missing(text, {word}) == "");
          }
        }
      }
      for (const TrimPart& part : one->pet.trim) {
        // What no tool may touch is said to be so, and how it would be cut is not.
        if (!workable(part.place, one->pet.alerts)) continue;
        INFO(part.entry.note);
        CHECK(first_missing(text, {part.entry.note}) == "");
      }
    }
    ++counts.set;
    counts.turned += !page.more.empty();
    if (&sheet == &sheets::card) {
      const bool in_front = work_in_front(*one, page),
                 usual = is_usual(*one, *shop.voice(*one->folder, one->pet, shop.sink()));
      counts.work_in_front += in_front;
      counts.usual += usual;
      counts.usual_in_front += usual && in_front;
    }
    if (i % 50 != 0 && (page.more.empty() || counts.turned % 10 != 0)) continue;
    const auto pdf = to_pdf(frames, made->sheet.info, {}, shop.sink());
    REQUIRE(pdf);
    CHECK(PdfFile(*pdf).pages().size() == frames.size());
    CHECK(pdf_faults(*pdf) == std::vector<std::string>{});
  }
  CHECK(counts.set + counts.refused_file == pets);
  std::string said = std::to_string(counts.turned) + " of " + std::to_string(counts.set) +
                     " go on over another side";
  if (&sheet == &sheets::card) {
    said += "; " + std::to_string(100 * counts.work_in_front / counts.set) +
            " % keep trim, bath and finish on the front; of " + std::to_string(counts.usual) +
            " with up to four usual alerts " + std::to_string(counts.usual_in_front);
  }
  WARN(sheet.kind.name << " on " << paper << ": " << said);
  return counts;
}
}  // namespace

TEST_CASE("generated pets on A5", "[generated]") {
  const Counts counts = run_batch(20261124, "A5");
  // So that the batch tries what it should: some turn over, and some files are refused.
  CHECK(counts.refused_file > 0);
  CHECK(counts.turned > 0);
  CHECK(counts.work_in_front > counts.set * 3 / 4);
}

TEST_CASE("cards of a run are arranged alike where that costs no growth step", "[generated]") {
  // Four pets with so many alerts that their words run in, and a regular with one: a new client's
  // card would keep its rows to write on, however the others look.
  const auto pet = [](int alerts) {
    std::string out = "[pet]\nname = \"Rex\"\n[trim]\nstyle = \"smooth-tidy\"\n";
    for (int i = 0; i < alerts; ++i) {
      out += "[[alert]]\nlevel = \"warning\"\ntext = \"Snaps at a hand\"\ndo = \"Go slowly.\"\n";
    }
    return out;
  };
  const auto run = [&](int alerts) {
    std::map<std::string, std::string> files;
    for (int i = 0; i < 4; ++i)
      files["pets/" + key_of(static_cast<std::size_t>(i)) + ".toml"] = pet(alerts);
    files["pets/light.toml"] = pet(1);
    files["visits/light/2026-09-29.toml"] = "date = 2026-09-29\nunfinished = false\n";
    const WithShippedStyles disk(files);
    Options options;
    options.on = demo_day;
    options.paper = "A5";
    options.data = FURNISH_SOURCE_DIR;
    Workshop shop(options, disk);
    std::vector<Done> all;
    for (const auto& [path, text] : files) {
      if (!path.starts_with("pets/")) continue;
      const auto one = shop.open({path, "."}, shop.sink());
      REQUIRE(one);
      auto made = shop.sheet(*one, shop.sink());
      REQUIRE(made);
      all.push_back({{path, "."}, one->pet.name.value, *std::move(made)});
    }
    std::vector<ComposedPage> before;
    for (const Done& done : all) before.push_back(done.made.sheet.page);
    std::vector<const Done*> set;
    for (const Done& done : all) set.push_back(&done);
    const std::string usual = usual_look(set);
    for (Done& done : all) arrange_alike(done, usual, shop);
    int changed = 0;
    for (std::size_t i = 0; i < all.size(); ++i) {
      const ComposedPage& page = all[i].made.sheet.page;
      CHECK(page.step == before[i].step);
      changed += page.layout != before[i].layout;
    }
    return changed;
  };
  int changed = 0;
  for (int alerts = 1; alerts < 9; ++alerts) changed += run(alerts);
  CHECK(changed > 0);
}

TEST_CASE("no row to write on is given up to look like the others", "[generated]") {
  const DiskFiles disk;
  Options options;
  options.on = demo_day;
  options.data = FURNISH_SOURCE_DIR;
  Workshop shop(options, disk);
  const std::string root = sample("lantern-street");
  const PetPath path{root + "/pets/tuesday.toml", root};
  const auto one = shop.open(path, shop.sink());
  REQUIRE(one);
  auto made = shop.sheet(*one, shop.sink());
  REQUIRE(made);
  const std::string before = made->sheet.page.layout;
  REQUIRE(before.starts_with("asking"));
  Done done{path, one->pet.name.value, *std::move(made)};
  for (const char* usual : {"run-in", "columns"}) {
    arrange_alike(done, usual, shop);
    CHECK(done.made.sheet.page.layout == before);
  }
}

TEST_CASE("trim, bath and finish of generated pets stand on the front of the usual papers",
          "[generated]") {
  for (const char* paper : {"A5", "half letter", "5x8 in"}) {
    const Counts counts = run_batch(7, paper);
    INFO(paper);
    CHECK(counts.usual > a_batch / 3);
    // At least 99 %; of a short run's few, all but one.
    CHECK(counts.usual - counts.usual_in_front <= (counts.usual + 99) / 100);
  }
}

TEST_CASE("generated pets on every other paper", "[generated]") {
  std::uint32_t seed = 1;
  for (const Paper& paper : papers) {
    if (paper.name != "A5") CHECK(run_batch(seed++, std::string(paper.name)).set > a_batch / 2);
  }
}

TEST_CASE("generated pets' style sheets on every paper", "[generated]") {
  std::uint32_t seed = 20;
  for (const Paper& paper : papers) {
    // On small paper a style sheet has many sides, and takes its time.
    const bool usual = paper.name == "A4" || paper.name == "letter";
    const std::size_t pets = usual || long_run() ? a_batch : a_batch / 10;
    CHECK(run_batch(seed++, std::string(paper.name), sheets::style, pets).set > pets / 2);
  }
}
}  // namespace furnish::test
