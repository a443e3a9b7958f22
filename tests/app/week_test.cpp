#include <fmt/format.h>
#include <catch2/catch.hpp>

#include <fstream>
#include <map>
#include <nlohmann/json.hpp>

#include "app/program.h"
#include "app/words_on_page.h"
#include "output/pdf_rules.h"
#include "sheet/desk.h"
#include "sheet/full_day.h"

// Seven days on one page, as a file.

namespace furnish::test {
namespace {
std::string week(const std::string& salon, const std::string& more) {
  return "day --week 2026-11-24 --salon " + test::quoted(salon) + " " + more;
}

std::string text_of(const std::string& salon, const std::string& more = {}) {
  const TemporaryFolder folder;
  const std::string pdf = folder.path("week.pdf");
  furnish(week(salon, more + " -o " + pdf));
  return without_space(run("pdftotext -raw " + pdf + " -").out);
}

std::size_t check_pages(const std::string& pdf) {
  const std::string bytes = bytes_of(pdf);
  CHECK(pdf_faults(bytes) == std::vector<std::string>{});
  CHECK(run("qpdf --check " + pdf).status == 0);
  for (const PlacedPage& page : placed_pages(run("pdftotext -bbox-layout " + pdf + " -").out)) {
    CHECK(misplaced(page, 0) == std::vector<std::string>{});
  }
  return PdfFile(bytes).pages().size();
}

struct Sum {
  int expected = 0, booked = 0;
};
/// "780of1,260", without spaces.
std::string said_of(const Sum& sum) {
  const auto grouped = [](int n) {
    return n < 1000 ? std::to_string(n) : fmt::format("{},{:03}", n / 1000, n % 1000);
  };
  return grouped(sum.expected) + "of" + grouped(sum.booked);
}

/// A salon of one full day, and on two days after it the same bookings again.
struct ThreeDays {
  explicit ThreeDays(int bookings, int groomers) {
    for (const auto& [path, bytes] : full_day(bookings, groomers)) put(folder, path, bytes);
    const std::string first = bytes_of(folder.path("days/2026-11-24.toml"));
    for (const std::string day : {"2026-11-26", "2026-11-27"}) {
      std::string other = first;
      other.replace(other.find("2026-11-24"), day.size(), day);
      put(folder, "days/" + day + ".toml", other);
    }
  }

  /// The sums of a day's groomers, of the lines of its file and of what `plan` says of each pet.
  std::map<std::string, Sum> sums(const std::string& day) const {
    std::map<std::string, Sum> out;
    std::ifstream in(folder.path("days/" + day + ".toml"));
    std::string pet, groomer;
    int at = 0, collect = 0;
    const auto minutes = [](const std::string& line) {
      const std::string time = line.substr(line.find('=') + 2);
      return 60 * std::stoi(time.substr(0, 2)) + std::stoi(time.substr(3, 2));
    };
    const auto word = [](const std::string& line) {
      const std::size_t from = line.find('"') + 1;
      return line.substr(from, line.find('"', from) - from);
    };
    const auto take = [&] {
      if (pet.empty()) return;
      const auto ran = furnish("plan " + pet + " --json --on " + day + " --salon " +
                               test::quoted(folder.path("")));
      const auto plan = nlohmann::json::parse(ran.out);
      out[groomer].expected += plan["minutes"]["expected"].get<int>();
      out[groomer].booked += collect - at;
    };
    for (std::string line; std::getline(in, line);) {
      if (line.starts_with("[[booking]]")) take();
      if (line.starts_with("pet")) pet = word(line);
      if (line.starts_with("groomer")) groomer = word(line);
      if (line.starts_with("at")) at = minutes(line);
      if (line.starts_with("collect")) collect = minutes(line);
    }
    take();
    return out;
  }
  TemporaryFolder folder;
};
}  // namespace

TEST_CASE("the week's minutes are those of the plans of its bookings, added up apart", "[week]") {
  const ThreeDays salon(8, 2);
  const std::string text = text_of(salon.folder.path(""));
  INFO(text);
  std::map<std::string, Sum> all;
  Sum whole;
  std::map<std::string, std::string> rows;
  for (const char* day : {"2026-11-24", "2026-11-26", "2026-11-27"}) {
    for (const auto& [groomer, sum] : salon.sums(day)) {
      const std::string said = said_of(sum);
      // In the table, and beside the day's pets.
      CHECK(has(text, groomer + said));
      rows[groomer] += said;
      if (std::string_view(day) == "2026-11-24") rows[groomer] += "\u2013";
      all[groomer].expected += sum.expected;
      all[groomer].booked += sum.booked;
      whole.expected += sum.expected;
      whole.booked += sum.booked;
    }
  }
  CHECK(all.size() == 2);
  for (const auto& [groomer, sum] : all) {
    const std::string row = groomer + rows[groomer] + "\u2013\u2013\u2013" + said_of(sum);
    INFO(row);
    CHECK(has(text, row));
  }
  CHECK(has(text, said_of(whole)));
}

TEST_CASE("a week of a usual salon is one page, in every language and on every paper", "[week]") {
  const ThreeDays salon(12, 3);
  const std::string pdf = salon.folder.path("week.pdf");
  for (const char* language : {"en-GB", "en-US", "es", "fr", "de", "pt", "vi", "ar"}) {
    INFO(language);
    const auto ran =
        furnish(week(salon.folder.path(""), "--language " + std::string(language) + " -o " + pdf));
    INFO(ran.err);
    CHECK(ran.status == 0);
    CHECK(check_pages(pdf) == 1);
  }
  for (const char* paper : {"A3", "letter"}) {
    INFO(paper);
    REQUIRE(furnish(week(salon.folder.path(""), "--paper " + std::string(paper) + " -o " + pdf))
                .status == 0);
    CHECK(check_pages(pdf) == 1);
  }
}

TEST_CASE("the week says who comes when, what can hurt, and what cannot go", "[week]") {
  const TemporaryFolder folder;
  put(folder, "salon.toml", "[salon]\nlanguage = \"en-GB\"\nclosed = [\"sunday\"]\n");
  put(folder, "pets/rex.toml",
      "[pet]\nname = \"Rex\"\n[[alert]]\nlevel = \"warning\"\ntext = \"Bites\"\n"
      "[health]\nconditions = [\"seizures\"]\n");
  put(folder, "visits/rex/2026-10-01.toml", "date = 2026-10-01\nminutes = 90\n");
  put(folder, "pets/bad.toml", "[pet]\n");
  put(folder, "days/2026-11-25.toml",
      "date = 2026-11-25\n"
      "[[booking]]\npet = \"rex\"\nat = 09:00:00\ncollect = 10:15:00\ngroomer = \"Ines\"\n"
      "[[booking]]\npet = \"bad\"\nat = 10:00:00\ncollect = 12:00:00\ngroomer = \"Ines\"\n");
  put(folder, "days/2026-11-26.toml", "date = 2026-11-26\nbooking = 3\n");
  const auto ran = furnish(week(folder.path(""), "-o " + folder.path("w.pdf")));
  CHECK(ran.status == 1);
  CHECK(has(ran.err, "days/2026-11-26.toml"));
  const std::string text = text_of(folder.path(""));
  INFO(text);
  CHECK(has(text, "09:00RexWARNING,seizures;CLASH10:00;OVERRUN+15min"));
  CHECK(has(text, "10:00bad,nofilethatcanberead"));
  CHECK(has(text, "Sunday,29Novemberclosed"));
  CHECK(has(text, "Monday,30Novembernothingbooked"));
  CHECK(has(text, "1bookingofthisdaycannotberead:line2.Askthedesk."));
  CHECK(has(text, "90of195?"));
}

TEST_CASE("a line of the week ends between bookings, and nouns keep their capitals", "[week]") {
  const TemporaryFolder folder;
  const std::string pdf = folder.path("week.pdf");
  for (const char* language : {"en-GB", "de", "vi"}) {
    const auto ran = furnish(
        week(sample("lantern-street"), "--language " + std::string(language) + " -o " + pdf));
    REQUIRE(ran.status == 0);
    const std::string text = run("pdftotext -layout " + pdf + " -").out;
    INFO(text);
    // Who can be hurt, and what by, on one line.
    const char* const danger = std::string_view(language) == "en-GB"
                                   ? "Pip DANGER, collapsing trachea"
                               : std::string_view(language) == "de" ? "Pip GEFAHR, Trachealkollaps"
                                                                    : "Pip NGUY HIỂM, ";
    CHECK(has(text, danger));
    if (std::string_view(language) == "de") CHECK(has(text, ", Arthrose"));
  }
}

TEST_CASE("a week that is too long for a page goes on, and nobody is lost", "[week]") {
  const ThreeDays salon(40, 8);
  const std::string pdf = salon.folder.path("week.pdf");
  const auto ran = furnish(week(salon.folder.path(""), "-o " + pdf));
  INFO(ran.err);
  REQUIRE(ran.status == 0);
  CHECK(check_pages(pdf) <= 2);
}

TEST_CASE("a pet with a fault that comes twice in a week is told once", "[week]") {
  const TemporaryFolder folder;
  put(folder, "salon.toml", "[salon]\nname = \"S\"\n");
  put(folder, "pets/rex.toml", "[pet]\nname = \"Rex\"\nbred = \"spitz\"\n");
  for (const std::string day : {"2026-11-24", "2026-11-26"}) {
    put(folder, "days/" + day + ".toml",
        "date = " + day + "\n[[booking]]\nat = 10:00:00\npet = \"rex\"\n");
  }
  const auto ran = furnish(week(folder.path(""), "-o " + folder.path("week.pdf")));
  CHECK(ran.status == 1);
  const std::size_t first = ran.err.find("no key 'bred'");
  REQUIRE(first != std::string::npos);
  CHECK(ran.err.find("no key 'bred'", first + 1) == std::string::npos);
}
}  // namespace furnish::test
