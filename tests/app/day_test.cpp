#include <fmt/format.h>
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <fstream>
#include <map>
#include <nlohmann/json.hpp>
#include <regex>
#include <sstream>
#include <vector>

#include "app/program.h"
#include "app/words_on_page.h"
#include "output/pdf_rules.h"
#include "share.h"
#include "sheet/desk.h"
#include "sheet/full_day.h"

// The sheet of a day, as a file.

namespace furnish::test {
namespace {
using Json = nlohmann::json;

std::string day(const std::string& salon, const std::string& more) {
  return "day 2026-11-24 --salon " + test::quoted(salon) + " " + more;
}

void put_all(const TemporaryFolder& folder, const std::map<std::string, std::string>& files) {
  for (const auto& [path, bytes] : files) put(folder, path, bytes);
}

/// What the sheet's PDF says, without spaces.
std::string text_of_day(const std::string& salon, const std::string& more = {}) {
  const TemporaryFolder folder;
  const std::string pdf = folder.path("day.pdf");
  furnish(day(salon, more + " -o " + pdf));
  return without_space(run("pdftotext -raw " + pdf + " -").out);
}

/// A day's bookings, as a person reads their file.
struct Booked {
  std::string pet, groomer;
  int at = 0;
  std::optional<int> collect;
};
std::vector<Booked> bookings_in(const std::string& file) {
  std::vector<Booked> out;
  std::ifstream in(file);
  const auto minutes = [](const std::string& time) {
    return 60 * std::stoi(time.substr(0, 2)) + std::stoi(time.substr(3, 2));
  };
  for (std::string line; std::getline(in, line);) {
    static const std::regex pair(R"re(^(\w+)\s*=\s*"?([^"]*)"?$)re");
    std::smatch match;
    if (line.starts_with("[[booking]]")) out.emplace_back();
    if (!std::regex_match(line, match, pair) || out.empty()) continue;
    if (match[1] == "pet") out.back().pet = match[2];
    if (match[1] == "groomer") out.back().groomer = match[2];
    if (match[1] == "at") out.back().at = minutes(match[2]);
    if (match[1] == "collect") out.back().collect = minutes(match[2]);
  }
  return out;
}

/// A sheet of sums, made of what `furnish plan --json` says of each pet.
struct Reckoning {
  struct Sum {
    int pets = 0, expected = 0, booked = 0, unknown = 0;
  };
  struct Product {
    double ml = 0;
    int pets = 0;
  };
  std::map<std::string, Sum> groomers;
  std::map<std::string, Product> products;
};
Reckoning reckon(const std::string& salon) {
  Reckoning out;
  for (const Booked& one : bookings_in(salon + "/days/2026-11-24.toml")) {
    const auto ran =
        furnish("plan " + one.pet + " --json --on 2026-11-24 --salon " + test::quoted(salon));
    INFO(one.pet << ran.err);
    REQUIRE(ran.status == 0);
    const Json plan = Json::parse(ran.out);
    Reckoning::Sum& sum = out.groomers[one.groomer];
    ++sum.pets;
    if (one.collect) sum.booked += *one.collect - one.at;
    if (plan["minutes"].is_null()) {
      ++sum.unknown;
    } else {
      sum.expected += plan["minutes"]["expected"].get<int>();
    }
    for (const Json& mix : plan["bath"]["mixes"]) {
      if (mix["needed"].is_null()) continue;
      out.products[mix["product"]].ml += mix["needed"].get<double>();
      ++out.products[mix["product"]].pets;
    }
  }
  return out;
}

/// "45min", "7h", "7h32min": as a watch has it, without spaces.
std::string hours(int minutes) {
  const int rest = minutes % 60;
  if (minutes < 60) return fmt::format("{}min", minutes);
  return rest == 0 ? fmt::format("{}h", minutes / 60) : fmt::format("{}h{}min", minutes / 60, rest);
}

/// Both sums of each groomer, and each product, stand on the sheet.
void check_sums(const std::string& salon, bool in_columns) {
  const Reckoning reckoned = reckon(salon);
  CHECK(reckoned.groomers.size() >= 2);
  CHECK(reckoned.products.size() >= 4);
  const std::string text = text_of_day(salon);
  INFO(text);
  for (const auto& [groomer, sum] : reckoned.groomers) {
    const std::string said =
        in_columns && sum.unknown == 0
            ? fmt::format("{}{}of{}", groomer, hours(sum.expected), hours(sum.booked))
            : fmt::format("{}{}pets,expected{},booked{}", groomer, sum.pets, hours(sum.expected),
                          hours(sum.booked));
    INFO(said);
    CHECK(has(text, said));
    if (sum.unknown > 0) CHECK(has(text, fmt::format("{},{}notknown", said, sum.unknown)));
  }
  for (const auto& [product, sum] : reckoned.products) {
    std::string name = product;
    name[0] = static_cast<char>(std::toupper(name[0]));
    const int bottles = static_cast<int>(std::ceil(sum.ml / 500));
    const std::string begins = without_space(fmt::format("{}: {} bottle", name, bottles));
    const std::string amount = fmt::format("{}mlfor{}pet", std::lround(sum.ml), sum.pets);
    INFO(begins << " … " << amount);
    const std::size_t at = text.find(begins);
    REQUIRE(at != std::string::npos);
    CHECK(has(text.substr(at, 120), amount));
  }
}

/// All rules of a good PDF, and no word over another.
std::size_t check_pages(const std::string& pdf) {
  const std::string bytes = bytes_of(pdf);
  CHECK(pdf_faults(bytes) == std::vector<std::string>{});
  CHECK(run("qpdf --check " + pdf).status == 0);
  for (const PlacedPage& page : placed_pages(run("pdftotext -bbox-layout " + pdf + " -").out)) {
    CHECK(page.words.size() > 10);
    CHECK(misplaced(page, 0) == std::vector<std::string>{});
  }
  return PdfFile(bytes).pages().size();
}
}  // namespace

TEST_CASE("minutes and bottles of a day are those of its plans, added up apart", "[day]") {
  check_sums(sample("lantern-street"), true);  // in columns, so that its warnings stand whole
  const TemporaryFolder few, folder;
  put_all(few, full_day(6, 2));
  check_sums(few.path(""), false);
  put_all(folder, full_day(40, 8));
  check_sums(folder.path(""), true);
}

TEST_CASE("the demo salon's day is one good page on every paper of a wall", "[day]") {
  for (const char* paper : {"A3", "A4", "letter"}) {
    INFO(paper);
    const TemporaryFolder folder;
    const std::string pdf = folder.path("day.pdf");
    const auto ran =
        furnish(day(sample("lantern-street"), "--paper " + std::string(paper) + " -o " + pdf));
    INFO(ran.err);
    CHECK(ran.status == 0);
    CHECK(ran.out == pdf + "\n");
    CHECK(check_pages(pdf) == 1);
    // So that it can be cut by groomer.
    CHECK_FALSE(has(run("pdftotext -raw " + pdf + " -").out, "continued"));
  }
}

TEST_CASE("a day of forty bookings is two pages", "[day]") {
  const TemporaryFolder folder;
  put_all(folder, full_day(40, 8));
  for (const char* paper : {"A3", "A4"}) {
    INFO(paper);
    const std::string pdf = folder.path("day.pdf");
    const auto ran = furnish(day(folder.path(""), "--paper " + std::string(paper) + " -o " + pdf));
    INFO(ran.err);
    REQUIRE(ran.status == 0);
    CHECK(check_pages(pdf) <= 2);
    const std::string text = run("pdftotext -raw " + pdf + " -").out;
    for (const Booked& one : bookings_in(folder.path("days/2026-11-24.toml"))) {
      std::string name = one.pet;
      name[0] = static_cast<char>(std::toupper(name[0]));
      CHECK(has(text, name));
    }
  }
  std::size_t turn = 0;
  for (const char* language : {"en-US", "es", "es-US", "fr", "de", "pt", "vi", "ar"}) {
    if (!in_turn(turn++, 0)) continue;
    INFO(language);
    const std::string pdf = folder.path("day.pdf");
    REQUIRE(furnish(day(folder.path(""), std::string("--language ") + language + " -o " + pdf))
                .status == 0);
    CHECK(check_pages(pdf) <= 2);
  }
}

TEST_CASE("what can hurt has lines of its own, apart from looks and findings", "[day]") {
  const std::vector<std::string> hurts{"Snaps when", "Bites if", "Fears the dryer", "Sore left hip",
                                       "Lavender gives"},
      others{"Spitz cross",   "Water-dog cross", "Toy terrier",
             "Rough terrier", "Lap dog cross",   "Look again"};
  const auto any_in = [](const std::string& text, const std::vector<std::string>& all) {
    return std::ranges::any_of(all, [&](const std::string& one) { return has(text, one); });
  };
  for (const int count : {6, 20, 40}) {
    INFO(count);
    const TemporaryFolder folder;
    put_all(folder, full_day(count, 5));
    std::istringstream lines(furnish(day(folder.path(""), "--format text -o -")).out);
    std::string block;
    std::size_t with_hurts = 0, with_others = 0, mixed = 0;
    const auto take = [&] {
      const bool hurt = any_in(block, hurts), other = any_in(block, others);
      with_hurts += hurt ? 1 : 0;
      with_others += other ? 1 : 0;
      mixed += hurt && other ? 1 : 0;
      block.clear();
    };
    for (std::string line; std::getline(lines, line);) {
      if (line.ends_with(':')) take();  // a paragraph, an item, a list begins
      block += line + "\n";
    }
    take();
    CHECK(with_hurts >= 3);
    CHECK(with_others >= 6);
    CHECK(mixed == 0);
  }
}

TEST_CASE("days of any length are good pages, and nobody is lost", "[day]") {
  for (const int count : {1, 6, 12, 20, 30, 50}) {
    INFO(count);
    const TemporaryFolder folder;
    put_all(folder, full_day(count, 5));
    const std::string pdf = folder.path("day.pdf");
    const auto ran = furnish(day(folder.path(""), "-o " + pdf));
    INFO(ran.err);
    REQUIRE(ran.status == 0);
    check_pages(pdf);
    const std::string text = run("pdftotext -raw " + pdf + " -").out;
    for (const Booked& one : bookings_in(folder.path("days/2026-11-24.toml"))) {
      std::string name = one.pet;
      name[0] = static_cast<char>(std::toupper(name[0]));
      CHECK(has(text, name));
    }
  }
}

TEST_CASE("what to mix says for whom it is not", "[day]") {
  const TemporaryFolder folder;
  run("cp -r " + test::quoted(sample("lantern-street")) + "/. " + folder.path(""));
  const std::string bathed = folder.path("pets/marlow.toml");
  const std::string before = text_of_day(folder.path(""));
  CHECK(has(before, "NotforJuniper:lavender."));
  CHECK_FALSE(has(before, "NotforMarlow"));
  put(folder, "pets/marlow.toml",
      bytes_of(bathed) + "\n[[alert]]\nlevel = \"warning\"\ntext = \"Allergic to glycerin.\"\n");
  const std::string text = text_of_day(folder.path(""));
  INFO(text);
  CHECK(has(text, "NotforMarlow:glycerin."));
}

TEST_CASE("a danger's and a warning's own words stand whole, with what to do", "[day]") {
  const std::string text = text_of_day(sample("lantern-street"));
  INFO(text);
  CHECK(has(text, "Seizures:noisesetsthemoff.Clearthetable.Ringthevet."));
  CHECK(has(text, "Lavendergivesherhives.Readthelabel.Noscent."));
  const TemporaryFolder folder;
  put(folder, "salon.toml", "[salon]\nlanguage = \"en-GB\"\n");
  put(folder, "pets/rex.toml",
      "[pet]\nname = \"Rex\"\n[[alert]]\nlevel = \"warning\"\ntext = \"Bites\"\n"
      "do = \"Muzzle. Two people.\"\n[[alert]]\nlevel = \"danger\"\n"
      "text = \"Heart murmur. Stop if he coughs.\"\n");
  put(folder, "days/2026-11-24.toml",
      "date = 2026-11-24\n[[booking]]\npet = \"rex\"\nat = 09:00:00\n");
  const std::string own = text_of_day(folder.path(""));
  INFO(own);
  CHECK(has(own, "Heartmurmur.Stopifhecoughs."));
  CHECK(has(own, "Bites.Muzzle.Twopeople."));
  const std::size_t two = own.find("Twopeople.");
  CHECK(own.find("Twopeople.", two + 1) == std::string::npos);  // said once
}

TEST_CASE("a day in every language is a page", "[day]") {
  for (const char* language : {"en-US", "es", "fr", "de", "pt", "vi", "ar"}) {
    INFO(language);
    const TemporaryFolder folder;
    const std::string pdf = folder.path("day.pdf");
    const auto ran = furnish(
        day(sample("lantern-street"), "--language " + std::string(language) + " -o " + pdf));
    INFO(ran.err);
    CHECK(ran.status == 0);
    CHECK(check_pages(pdf) <= 2);
  }
}

namespace {
/// Two pets of ninety minutes each.
void put_two(const TemporaryFolder& folder, const std::string& bookings) {
  put(folder, "salon.toml", "[salon]\nname = \"S\"\nlanguage = \"en-GB\"\n");
  for (const std::string name : {"Rex", "Juno"}) {
    const std::string key = name == "Rex" ? "rex" : "juno";
    put(folder, "pets/" + key + ".toml",
        "[pet]\nname = \"" + name + "\"\n[owner]\nphone = \"555 0123\"\n");
    put(folder, "visits/" + key + "/2026-10-01.toml", "date = 2026-10-01\nminutes = 90\n");
  }
  put(folder, "days/2026-11-24.toml", "date = 2026-11-24\n" + bookings);
}
constexpr const char* at_once =
    "[[booking]]\npet = \"rex\"\nat = 09:00:00\ncollect = 10:15:00\ngroomer = \"Ines\"\n"
    "[[booking]]\npet = \"juno\"\nat = 10:00:00\ncollect = 12:00:00\ngroomer = \"Ines\"\n";
}  // namespace

TEST_CASE("what cannot go as it is booked is marked on the sheet and told", "[day]") {
  const TemporaryFolder folder;
  put_two(folder, at_once);
  const std::string text = text_of_day(folder.path(""));
  INFO(text);
  CHECK(has(text, "CLASH10:00Juno.OVERRUN:15minmorethanbooked."));
  CHECK(has(text, "CLASH09:00Rex."));
  CHECK(has(text, "90of75min"));
  const auto ran = furnish(day(folder.path(""), "-o -"));
  CHECK(ran.status == 0);
  CHECK(has(ran.err, "Ines has rex and juno at once"));
  CHECK(furnish(day(folder.path(""), "--strict -o -")).status == 1);
}

TEST_CASE("a pet that cannot be read has a row that says so, and the rest prints", "[day]") {
  const TemporaryFolder folder;
  put_two(folder, at_once);
  put(folder, "pets/rex.toml", "[pet]\nnam = \"Rex\"\n");
  const auto ran = furnish(day(folder.path(""), "-o " + folder.path("day.pdf")));
  CHECK(ran.status == 1);
  CHECK(has(ran.err, "pets/rex.toml:2:1: error"));
  const std::string text = text_of_day(folder.path(""));
  CHECK(has(text, "09:00rex"));
  CHECK(has(text, "Thefilehasfaults:askthedesk."));
  CHECK(has(text, "10:00Juno"));
  // One that is not there, and one whose visit cannot be read.
  put_two(folder, at_once + std::string("[[booking]]\npet = \"rexx\"\nat = 14:00:00\n"));
  put(folder, "visits/juno/2026-10-01.toml", "minutes = 90\n");
  const auto other = furnish(day(folder.path(""), "-o -"));
  CHECK(other.status == 1);
  CHECK(has(other.err, "no pet 'rexx'"));
  const std::string again = text_of_day(folder.path(""));
  CHECK(has(again, "14:00rexx"));
  CHECK(has(again, "Nobodynamed"));
  CHECK(has(again, "Avisit\u2019sfilecannotberead"));
}

TEST_CASE("the telephone is on the wall only where the salon shows it on cards", "[day]") {
  const TemporaryFolder folder;
  put_two(folder, at_once);
  const std::string salon =
      "[salon]\nlanguage = \"en-GB\"\ncontact_on_card = {}\n[vaccinations]\nrabies = {{ required = "
      "true }}\n";
  put(folder, "salon.toml", fmt::format(fmt::runtime(salon), "false"));
  const std::string hidden = text_of_day(folder.path(""));
  CHECK(has(hidden, "Rabiesvaccination:noneonfile."));
  CHECK_FALSE(has(hidden, "5550123"));
  put(folder, "salon.toml", fmt::format(fmt::runtime(salon), "true"));
  CHECK(has(text_of_day(folder.path("")), "5550123"));
}

TEST_CASE("a day goes where sheets go, is today's unless it is named, and keeps a person's file",
          "[day]") {
  const TemporaryFolder folder;
  put_two(folder, at_once);
  const std::string shop = " --salon " + folder.path("");
  CHECK(furnish("day --on 2026-11-24" + shop).status == 0);
  const std::string sheet = folder.path("sheets/day-2026-11-24.pdf");
  const std::string bytes = bytes_of(sheet);
  CHECK(!bytes.empty());
  CHECK(furnish("day 2026-11-24 --on 2026-01-01" + shop).status == 0);
  CHECK(bytes_of(sheet) == bytes);
  put(folder, "sheets/day-2026-11-24.pdf", "mine");
  CHECK(furnish("day 2026-11-24" + shop).status == 1);
  CHECK(bytes_of(sheet) == "mine");
  CHECK(furnish("day 2026-11-24 -o " + folder.path("salon.toml") + shop).status == 2);
  const auto none = furnish("day 2026-11-25 -o -" + shop);
  CHECK(none.status == 1);
  CHECK(none.out.empty());
  CHECK(has(none.err, "nothing is booked on 2026-11-25"));
  CHECK(furnish("day tomorrow" + shop).status == 2);
}
}  // namespace furnish::test
