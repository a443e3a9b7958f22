#include <fmt/format.h>

#include <array>
#include <catch2/catch.hpp>
#include <filesystem>
#include <map>

#include "app/program.h"
#include "app/table_file.h"
#include "app/told.h"
#include "app/workshop.h"
#include "model/for_everyone.h"
#include "share.h"
#include "sheet/desk.h"
#include "spec/pet_format.h"
#include "spec/visit_format.h"
#include "spec/visit_writer.h"
#include "spec/writer.h"

// What an owner's page says is the same whether or not there is anything for staff, so that nobody
// can tell from it that there is.

namespace furnish::test {
namespace {
/// A pet and a visit of the tables by chance, and their twins that have nothing for staff.
struct Pair {
  TableFile pet, visit;
};

/// A salon of such pairs: "one-0" and "two-0", and so on.
std::map<std::string, std::string> files_of(const std::vector<Pair>& pairs) {
  std::map<std::string, std::string> out{{"salon.toml", "[salon]\nname = \"Demo\"\n"}};
  for (std::size_t i = 0; i < pairs.size(); ++i) {
    const std::string n = std::to_string(i);
    out["pets/one-" + n + ".toml"] = pairs[i].pet.text();
    out["pets/two-" + n + ".toml"] = pairs[i].pet.twin();
    out["visits/one-" + n + "/2026-11-24.toml"] = pairs[i].visit.text();
    out["visits/two-" + n + "/2026-11-24.toml"] = pairs[i].visit.twin();
  }
  return out;
}

/// With the pet's own name in the place of the twin's.
std::string as_one(std::string text, const std::string& name) {
  for (std::size_t at = 0; (at = text.find(name, at)) != std::string::npos;) {
    text.replace(at, name.size(), "pet");
  }
  return text;
}

/// What an owner's page says, holds and travels with, in a language.
std::string owners(Workshop& shop, Options& options, const Case& one, const SheetMaker& sheet,
                   const std::string& language) {
  options.sheet = &sheet;
  options.language = language;
  DiagnosticSink unheard;
  const auto made = shop.sheet(one, unheard);
  REQUIRE(made);
  return as_one(all_of(*made), one.pet.key);
}
}  // namespace

TEST_CASE("what is for staff changes nothing of what an owner is told", "[audience]") {
  // Of each pair the data that owners' pages are made of, of one in `paged` also the pages.
  const std::size_t batches = long_run() ? 1000 : 1, a_batch = 100, paged = long_run() ? 200 : 25;
  const std::array<const char*, 7> languages{"en", "es", "fr", "de", "pt", "vi", "ar"};
  Dice dice(16);
  std::size_t compared = 0, unread = 0, pages = 0, markers = 0;
  for (std::size_t batch = 0; batch < batches; ++batch) {
    std::vector<Pair> pairs;
    for (std::size_t i = 0; i < a_batch; ++i) {
      pairs.push_back({{keys::pet_file::file, 100, &dice}, {keys::visit_file::file, 500, &dice}});
    }
    const WithShippedStyles files(files_of(pairs));
    Options options;
    options.on = demo_day;
    options.data = FURNISH_SOURCE_DIR;
    Workshop shop(options, files);
    for (std::size_t i = 0; i < a_batch; ++i) {
      const std::string n = std::to_string(i);
      DiagnosticSink said;
      const auto one = shop.work_out({"pets/one-" + n + ".toml", "."}, demo_day, said);
      const auto two = shop.work_out({"pets/two-" + n + ".toml", "."}, demo_day, said);
      if (!one || !two || !one->all_visits || !two->all_visits) {
        ++unread;  // keys that chance left out were wanted by others
        continue;
      }
      INFO(pairs[i].pet.text() << "\n-- visit\n" << pairs[i].visit.text());
      const auto open = [](const Case& of) {
        return as_one(pet_toml(for_everyone(of.pet)), of.pet.key) +
               visit_toml(for_everyone(of.visits.back()));
      };
      const std::string told = open(*one);
      if (told != open(*two)) CHECK(told == open(*two));
      if (told.find("STAFF") != std::string::npos) CHECK(told == "");
      markers += pairs[i].pet.staff().size() + pairs[i].visit.staff().size();
      if (compared++ % paged != 0) continue;
      for (const SheetMaker* const sheet : {&sheets::owner_note, &sheets::care}) {
        const char* const language = languages[pages % languages.size()];
        INFO(sheet->kind.name << " in " << language);
        std::string page = owners(shop, options, *one, *sheet, language);
        CHECK(page == owners(shop, options, *two, *sheet, language));
        for (const KeyInfo* const vet : {&keys::vet::name, &keys::vet::phone}) {
          for (const std::string& word : pairs[i].pet.of(*vet)) page = as_one(page, word);
        }
        CHECK(page.find("STAFF") == std::string::npos);
        ++pages;
      }
    }
  }
  CHECK(unread < compared / 4);
  CHECK(markers > compared * 5);
  fmt::print("{} pets with {} words for staff, {} owners' pages beside their twins'\n", compared,
             markers, pages);
}

TEST_CASE("no file that an owner gets holds a word for staff, in any format and language",
          "[audience]") {
  const TableFile pet(keys::pet_file::file, 100), visit(keys::visit_file::file, 500);
  const TemporaryFolder folder;
  put(folder, "salon.toml", "[salon]\nname = \"Demo\"\n");
  put(folder, "pets/rex.toml", pet.text());
  put(folder, "visits/rex/2026-11-24.toml", visit.text());
  std::set<std::string> vet = pet.of(keys::vet::name);
  vet.merge(pet.of(keys::vet::phone));
  const auto word_in = [&](const std::string& text, const std::set<std::string>& words) {
    for (const std::string& word : words) {
      if (!vet.contains(word) && text.find(word) != std::string::npos) return word;
    }
    return std::string();
  };
  const std::array<std::string, 7> languages{"en", "es", "fr", "de", "pt", "vi", "ar"};
  const std::array<std::string, 4> formats{"pdf", "png", "svg", "text"};
  for (std::size_t i = 0; i < languages.size(); ++i) {
    for (std::size_t j = 0; j < formats.size(); ++j) {
      if (!long_run() && (i + j) % 7 != 0 && i != j) continue;
      const std::string out = folder.path("out");
      std::filesystem::remove_all(out);
      for (const std::string sheet : {"note rex --for owner", "care rex"}) {
        const auto ran = furnish(sheet + " --on 2026-11-24 --dpi 72 --language " + languages[i] +
                                     " --format " + formats[j] + " -o out/",
                                 "cd " + folder.path("") + " &&");
        INFO(ran.err);
        REQUIRE(ran.status == 0);
      }
      for (const std::string& name : files_below(out)) {
        INFO(languages[i] << ' ' << name);
        std::string text = name + bytes_of(out + "/" + name);
        if (name.ends_with(".pdf")) {
          // All its streams, and what a reader gets of its glyphs.
          const std::string file = out + "/" + name;
          text += test::run("qpdf --stream-data=uncompress --object-streams=disable " + file + " -")
                      .out +
                  test::run("pdftotext -raw " + file + " -").out;
          CHECK(has(text, *pet.everyone().begin()));
        }
        CHECK(word_in(text, pet.staff()) == "");
        CHECK(word_in(text, visit.staff()) == "");
      }
    }
  }
}
}  // namespace furnish::test
