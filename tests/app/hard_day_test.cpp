#include <fmt/format.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <filesystem>
#include <regex>
#include <string>
#include <vector>

#include "app/program.h"
#include "app/words_on_page.h"
#include "output/tool.h"
#include "sheet/desk.h"

// Days that ask more of the wall than a usual one.

namespace furnish::test {
namespace {
namespace fs = std::filesystem;

/// The demo salon without its days.
void put_salon(const TemporaryFolder& folder) {
  fs::copy(sample("lantern-street"), folder.path(""),
           fs::copy_options::recursive | fs::copy_options::overwrite_existing);
  fs::remove_all(folder.path("days"));
  fs::create_directories(folder.path("days"));
}

/// So many bookings, of the demo's pets in turn under names of their own, four to a groomer.
void put_crowd(const TemporaryFolder& folder, std::size_t count) {
  put_salon(folder);
  fs::remove_all(folder.path("visits"));
  std::vector<fs::path> pets;
  for (const auto& one : fs::directory_iterator(folder.path("pets"))) pets.push_back(one.path());
  std::ranges::sort(pets);
  std::vector<std::string> texts;
  for (const fs::path& one : pets) {
    texts.push_back(bytes_of(one.string()));
    fs::remove(one);
  }
  std::string day = "date = 2026-11-24\n";
  for (std::size_t i = 0; i < count; ++i) {
    const std::string key = fmt::format("dog-{:02}", i);
    static const std::regex name("(^|\n)name *= *\"([^\"]*)\"");
    const std::string text =
        std::regex_replace(texts[i % texts.size()], name, fmt::format("$1name = \"$2 N{:02}\"", i),
                           std::regex_constants::format_first_only);
    put(folder, "pets/" + key + ".toml", text);
    day += fmt::format(
        "[[booking]]\nat = {:02}:00:00\ncollect = {:02}:55:00\npet = \"{}\"\n"
        "groomer = \"Groomer{}\"\n",
        8 + 2 * (i % 4), 9 + 2 * (i % 4), key, i / 4);
  }
  put(folder, "days/2026-11-24.toml", day);
}

std::vector<PlacedPage> pages_of(const std::string& pdf) {
  return placed_pages(run("pdftotext -bbox-layout " + pdf + " -").out);
}
}  // namespace

TEST_CASE("a day on which every pet is a hard one stays in columns under its groomers' names",
          "[day]") {
  for (const std::size_t count : {30, 40}) {
    INFO(count);
    const TemporaryFolder folder;
    put_crowd(folder, count);
    const std::string pdf = folder.path("day.pdf");
    const auto ran = furnish("day 2026-11-24 --on 2026-11-24 --salon " +
                             test::quoted(folder.path("")) + " -o " + pdf);
    INFO(ran.err);
    REQUIRE(ran.status == 0);
    const std::vector<PlacedPage> pages = pages_of(pdf);
    CHECK(pages.size() <= (count == 30 ? 3U : 4U));
    for (const PlacedPage& page : pages) {
      CHECK(misplaced(page, 0) == std::vector<std::string>{});
      // What hour comes first in a column stands under a groomer's name.
      const auto first = [&](std::string_view begins) {
        double top = page.height;
        for (const PlacedWord& word : page.words) {
          const bool left = word.left < page.width / 3;
          if (left && word.text.starts_with(begins)) top = std::min(top, word.top);
        }
        return top;
      };
      CHECK(first("Groomer") <
            std::min({first("08:00"), first("10:00"), first("12:00"), first("14:00")}));
    }
    const std::string text = run("pdftotext -raw " + pdf + " -").out;
    for (std::size_t i = 0; i < count; ++i) CHECK(has(text, fmt::format("N{:02}", i)));
  }
}

TEST_CASE("what to do about a danger stands as long as two pages can hold it", "[day]") {
  const TemporaryFolder folder;
  put_crowd(folder, 22);
  const std::string pdf = folder.path("day.pdf");
  const auto ran = furnish("day 2026-11-24 --on 2026-11-24 --salon " +
                           test::quoted(folder.path("")) + " -o " + pdf);
  INFO(ran.err);
  REQUIRE(ran.status == 0);
  CHECK(pages_of(pdf).size() == 2);
  const std::string text = run("pdftotext -raw " + pdf + " - | tr '\n' ' '").out;
  INFO(text);
  CHECK(has(text, "Hand under the chest."));
  CHECK(has(text, "vet at once."));
}

TEST_CASE("a name from right to left leaves its hour where hours are", "[day]") {
  const TemporaryFolder folder;
  put_salon(folder);
  put(folder, "days/2026-12-01.toml",
      "date = 2026-12-01\n[[booking]]\nat = 09:00:00\ncollect = 12:00:00\npet = \"qamar\"\n"
      "groomer = \"Ines\"\n[[booking]]\nat = 10:00:00\ncollect = 12:00:00\npet = \"pip\"\n"
      "groomer = \"Ines\"\n[[booking]]\nat = 14:00:00\npet = \"gao\"\ngroomer = \"Bo\"\n");
  const std::string salon = " --on 2026-11-26 --salon " + test::quoted(folder.path("")),
                    pdf = folder.path("day.pdf");
  REQUIRE(furnish("day 2026-12-01" + salon + " -o " + pdf).status == 0);
  // As large as names are; hours begin where the column does.
  std::vector<double> hours;
  const std::vector<PlacedPage> pages = pages_of(pdf);
  for (const PlacedWord& word : pages.at(0).words) {
    static const std::regex hour("[0-9]{2}:00");
    if (word.bottom - word.top > 30 && std::regex_match(word.text, hour)) {
      hours.push_back(word.left);
    }
  }
  REQUIRE(hours.size() == 3);
  CHECK(std::ranges::max(hours) - std::ranges::min(hours) < 1);

  // What is booked without an end is in no sum of what is booked.
  const std::string text = without_space(run("pdftotext -raw " + pdf + " -").out);
  INFO(text);
  CHECK(has(text, "3pets,expected5h39min,booked5h,1open"));
  CHECK(has(text, "2pets,expected4h6min,booked5h"));

  const std::string week = folder.path("week.pdf");
  REQUIRE(furnish("day --week" + salon + " -o " + week).status == 0);
  const std::string said = run("pdftotext -layout " + week + " -").out;
  INFO(said);
  CHECK(has(said, "CLASH"));
  CHECK_FALSE(std::regex_search(said, std::regex("(^|\n) *:[0-9][0-9]")));
  CHECK_FALSE(has(said, "of 0"));
}
}  // namespace furnish::test
