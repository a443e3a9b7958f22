#include <catch2/catch.hpp>

#include <fmt/format.h>
#include <libical/ical.h>

#include <algorithm>

#include "app/program.h"
#include "app/promised.h"
#include "app/words_on_page.h"
#include "output/pdf_rules.h"
#include "sheet/desk.h"

// Notes and care sheets of the samples, as files that other programs read.

namespace furnish::test {
namespace {
constexpr const char* salons[] = {"lantern-street", "us-corner"};

std::string on_paper(const std::string& salon, const std::string& paper = "A4") {
  return " --salon " + sample(salon) + " --on " + std::string(demo_date) + " --paper '" + paper +
         "' ";
}

/// `most`: where some may turn over, so that each begins on paper of its own; 0: none does.
void check_pages(const std::string& pdf, std::size_t count, std::size_t most = 0) {
  const std::string bytes = bytes_of(pdf);
  const std::size_t found = PdfFile(bytes).pages().size();
  CHECK(found >= count);
  CHECK(found <= std::max(count, most));
  CHECK(pdf_faults(bytes) == std::vector<std::string>{});
  const ToolOutput check = run("qpdf --check " + pdf);
  CHECK(check.status == 0);
  CHECK(check.err == "");
  const auto pages = placed_pages(run("pdftotext -bbox-layout " + pdf + " -").out);
  CHECK(pages.size() == found);
  for (const PlacedPage& page : pages) CHECK(misplaced(page, 0) == std::vector<std::string>{});
}

std::string text_of(const std::string& pdf) {
  return run("pdftotext -raw " + pdf + " -").out;
}

/// Pets of the demo with visits up to its day.
std::vector<std::string> visited() {
  return {"bjarne", "clementine", "gao", "juniper", "marlow", "otter", "pickle"};
}
std::string joined_by_space(const std::vector<std::string>& words) {
  std::string out;
  for (const std::string& word : words) out += " " + word;
  return out;
}
}  // namespace

/// The day that a care sheet of the demo's day says to come back on: of the last visit, where the
/// next is neither due nor booked, else of one that goes as planned on that day.
static std::optional<Date> comes_back(Desk& table, const Kennel& kennel) {
  const auto& next = kennel.plan.next_visit;
  const bool recorded = next && next->last == demo_day;
  if (recorded || !kennel.booking()) {
    return next && next->date > demo_day ? std::optional(next->date) : std::nullopt;
  }
  DiagnosticSink sink;
  bool complete = true;
  const PetBookings bookings = kennel.folder->bookings(kennel.pet, demo_day, complete);
  const auto after =
      plan_after_today(table.salon(), kennel.pet, kennel.visits, bookings, demo_day, sink)
          .next_visit;
  if (!after || after->date <= demo_day) return std::nullopt;
  return after->date;
}

TEST_CASE("every sample's notes are good pages on both papers", "[note]") {
  for (const char* paper : {"A4", "letter"}) {
    for (const char* whose : {"file", "owner"}) {
      const TemporaryFolder folder;
      const std::string pdf = folder.path("all.pdf");
      const auto ran = furnish("note" + joined_by_space(visited()) + " --together --for " + whose +
                               on_paper("lantern-street", paper) + "-o " + pdf);
      INFO(paper << " for " << whose << "\n" << ran.err);
      REQUIRE(ran.status == 0);
      CHECK(ran.err.find("photo") == std::string::npos);
      check_pages(pdf, visited().size());
    }
  }
}

TEST_CASE("every visit of the samples becomes a note", "[note]") {
  Desk table(sample("lantern-street"));
  std::size_t notes = 0;
  for (const std::string& key : visited()) {
    for (const std::string& name :
         DiskFiles().toml_files(sample("lantern-street") + "/visits/" + key)) {
      const std::string day = name.substr(0, 10);
      const TemporaryFolder folder;
      const auto ran = furnish("note " + key + " --visit " + day + on_paper("lantern-street") +
                               "-o " + folder.path("") + "/");
      INFO(key << " " << day << "\n" << ran.err);
      CHECK(ran.status == 0);
      CHECK(files_below(folder.path("")) ==
            std::vector<std::string>{key + "-" + day + "-note.pdf"});
      ++notes;
    }
  }
  CHECK(notes > 20);
}

TEST_CASE("the owner's copy says what is for the owner, the file's says all", "[note]") {
  const TemporaryFolder folder;
  for (const char* whose : {"file", "owner"}) {
    // His owner reads Spanish; the words of this test are English.
    REQUIRE(furnish("note marlow --language en-GB --for " + std::string(whose) +
                    on_paper("lantern-street") + "-o " + folder.path(std::string(whose) + ".pdf"))
                .status == 0);
  }
  const std::string owner = text_of(folder.path("owner.pdf")),
                    file = text_of(folder.path("file.pdf"));
  INFO(owner << "\n----\n" << file);
  CHECK(first_missing(file, {"Marlow", "Came in", "worried at the dryer", "towel over the ears",
                             "Done", "thinning shears were being sharpened", "lump, pea-sized",
                             "still sore, no longer warm", "Next visit", "19 January"}) == "");
  CHECK(first_missing(owner, {"Marlow", "Came in", "Done", "thinning shears were being sharpened",
                              "lump, pea-sized", "Next visit", "19 January"}) == "");
  for (const char* staff : {"worried at the dryer", "towel over the ears", "no longer warm"}) {
    CHECK(first_missing(owner, {staff}) != "");
  }
  // The files inside, as another reader gets them out.
  for (const char* whose : {"file", "owner"}) {
    const TemporaryFolder out;
    REQUIRE(run("pdfdetach -saveall -o " + out.path("") + " " +
                folder.path(std::string(whose) + ".pdf"))
                .status == 0);
    CHECK(files_below(out.path("")) ==
          std::vector<std::string>{"marlow-2026-11-24.toml", "marlow.toml"});
    const bool has =
        bytes_of(out.path("marlow-2026-11-24.toml")).find("worried") != std::string::npos;
    CHECK(has == (std::string(whose) == "file"));
  }
}

TEST_CASE("a visit that is not there is told with those that are", "[note]") {
  const auto ran = furnish("note marlow --visit 2026-11-23" + on_paper("lantern-street"));
  CHECK(ran.status == 1);
  CHECK(ran.err.find("Marlow has no visit of 2026-11-23") != std::string::npos);
  CHECK(ran.err.find("2026-09-29 and 2026-11-24") != std::string::npos);
  const auto none = furnish("note dot" + on_paper("lantern-street"));
  CHECK(none.status == 1);
  CHECK(none.err.find("furnish new visit dot") != std::string::npos);
  CHECK(furnish("note marlow --for owner --with-spec staff" + on_paper("lantern-street")).status ==
        2);
  CHECK(furnish("care marlow --with-spec staff" + on_paper("lantern-street")).status == 2);
}

TEST_CASE("check opens photos, and says which visits show the same one", "[note]") {
  const TemporaryFolder folder;
  copy_sample("lantern-street", folder.path("salon"));
  const std::string root = folder.path("salon");
  const auto good = furnish("check " + root + " --on 2026-11-24");
  CHECK(good.err.find("photo") == std::string::npos);
  const std::string visits = "salon/visits/marlow/2026-11-2";
  put(folder, visits + "2.toml",
      "date = 2026-11-22\n[[photo]]\nfile = \"photos/marlow-after.jpg\"\nwhen = \"after\"\n");
  put(folder, visits + "3.toml",
      "date = 2026-11-23\n[[photo]]\nfile = \"photos/none.jpg\"\nwhen = \"after\"\n");
  const auto ran = furnish("check " + root + " --on 2026-11-24 -v");
  INFO(ran.err);
  CHECK(ran.status == 0);
  CHECK(ran.err.find("the same photo is shown twice: photos/marlow-after.jpg") !=
        std::string::npos);
  CHECK(ran.err.find("2026-11-22.toml:3:8: note: shown here first") != std::string::npos);
  CHECK(ran.err.find("2026-11-23.toml:3:8: warning:") != std::string::npos);
}

TEST_CASE("every sample's care sheet is one good page on both papers", "[care]") {
  for (const char* salon : salons) {
    const std::size_t pets = Desk(sample(salon)).pets().size();
    for (const char* paper : {"A4", "letter"}) {
      const TemporaryFolder folder;
      const std::string pdf = folder.path("all.pdf");
      const auto ran = furnish("care --together" + on_paper(salon, paper) + "-o " + pdf);
      INFO(salon << " on " << paper << "\n" << ran.err);
      REQUIRE(ran.status == 0);
      // Letter is 18 mm lower than A4: there some go on over the other side.
      check_pages(pdf, pets, std::string_view(paper) == "letter" ? 2 * pets : 0);
      // A calendar entry for each that has a day to come back on.
      const auto files = files_below(folder.path(""));
      const auto entries = std::ranges::count_if(
          files, [](const std::string& file) { return file.ends_with(".ics"); });
      Desk table(sample(salon));
      CHECK(entries == std::ranges::count_if(table.pets(), [&](const std::string& key) {
              return comes_back(table, table.kennel(key)).has_value();
            }));
    }
  }
}

TEST_CASE("a care sheet reads from today to the next visit", "[care]") {
  const TemporaryFolder folder;
  REQUIRE(furnish("care marlow --language en-GB" + on_paper("lantern-street") + "-o " +
                  folder.path("care.pdf"))
              .status == 0);
  CHECK(files_below(folder.path("")) == std::vector<std::string>{"care.ics", "care.pdf"});
  const std::string text = text_of(folder.path("care.pdf"));
  INFO(text);
  CHECK(first_missing(text, {"Marlow", "Today", "We washed Marlow", "At home until",
                             "three times a week", "Watch for", "lump, pea-sized", "within a week",
                             "Come back", "19 January", "555 0170", "not a vet"}) == "");
  CHECK(text.find("#30") == std::string::npos);  // no blade numbers
}

// Another program's reading of the calendar entries: libical.
TEST_CASE("the calendar entry of every sample has its day, its words and its alarm", "[care]") {
  std::size_t entries = 0;
  for (const char* salon : salons) {
    Desk table(sample(salon));
    const TemporaryFolder folder;
    REQUIRE(furnish("care" + on_paper(salon) + "-o " + folder.path("") + "/").status == 0);
    for (const std::string& key : table.pets()) {
      const Kennel kennel = table.kennel(key);
      const auto next = comes_back(table, kennel);
      if (!next) continue;
      INFO(salon << ": " << key);
      const std::string text = bytes_of(folder.path(key + "-care.ics"));
      icalcomponent* const calendar = icalparser_parse_string(text.c_str());
      REQUIRE(calendar != nullptr);
      CHECK(icalcomponent_count_errors(calendar) == 0);
      icalcomponent* const event =
          icalcomponent_get_first_component(calendar, ICAL_VEVENT_COMPONENT);
      REQUIRE(event != nullptr);
      const icaltimetype start = icalcomponent_get_dtstart(event);
      CHECK(to_iso(*next) == fmt::format("{}-{:02}-{:02}", start.year, start.month, start.day));
      CHECK(std::string(icalcomponent_get_summary(event)).starts_with(kennel.pet.name.value));
      CHECK(icalcomponent_get_first_component(event, ICAL_VALARM_COMPONENT) != nullptr);
      icalcomponent_free(calendar);
      ++entries;
    }
  }
  CHECK(entries >= 8);  // those of the day that have an interval, and one that waits
}

TEST_CASE("a care sheet that is printed later names the day and the hour that are booked now",
          "[care]") {
  const TemporaryFolder folder;
  const std::string root = folder.path("salon"), at = " --salon " + root + " --language en-GB ";
  put(folder, "salon/salon.toml", "[salon]\nname = \"Harbour Lane\"\n");
  put(folder, "salon/pets/rex.toml",
      "[pet]\nname = \"Rex\"\ncoat = \"curly\"\n[trim]\nvisit_every = \"6 weeks\"\n");
  put(folder, "salon/visits/rex/2026-11-24.toml",
      "date = 2026-11-24\nunfinished = false\nnext = 2027-01-05\n");
  for (const char* day : {"2026-11-30", "2027-01-12"}) {
    put(folder, std::string("salon/days/") + day + ".toml",
        std::string("date = ") + day + "\n[[booking]]\nat = 14:45:00\npet = \"rex\"\n");
  }
  // One booking has passed without a visit; the card of that day says the other.
  const auto made = [&](const std::string& on) {
    const std::string name = folder.path(on + ".pdf");
    const auto ran = furnish("care rex" + at + "--on " + on + " -o " + name);
    INFO(ran.err);
    REQUIRE(ran.status == 0);
    return std::pair(text_of(name), bytes_of(folder.path(on + ".ics")));
  };
  const auto [first, first_entry] = made("2026-11-24");
  const auto [later, later_entry] = made("2026-12-03");
  INFO(first << first_entry << later << later_entry);
  CHECK(first_entry.find("DTSTART:20261130T144500") != std::string::npos);
  CHECK(first.find("30 November") != std::string::npos);
  CHECK(later.find("12 January") != std::string::npos);
  CHECK(later.find("Booked for 14:45.") != std::string::npos);
  CHECK(later_entry.find("DTSTART:20270112T144500") != std::string::npos);
  // The same appointment, in a later version.
  const auto line = [](const std::string& text, const std::string& name) {
    const auto from = text.find(name);
    REQUIRE(from != std::string::npos);
    return text.substr(from, text.find('\r', from) - from);
  };
  CHECK(line(first_entry, "UID:") == line(later_entry, "UID:"));
  CHECK(line(first_entry, "UID:").starts_with("UID:rex-after-2026-11-24-"));
  CHECK(line(first_entry, "DTSTAMP:") < line(later_entry, "DTSTAMP:"));
  CHECK(first_entry.find("SEQUENCE:") == std::string::npos);
  CHECK(line(later_entry, "SEQUENCE:") == "SEQUENCE:9");
  const auto card = furnish("card rex" + at + "--on 2026-12-03 -o " + folder.path("card.pdf"));
  REQUIRE(card.status == 0);
  CHECK(text_of(folder.path("card.pdf")).find("12 January") != std::string::npos);
}

TEST_CASE(
    "an entry keeps its name when the visit before it is recorded, and each salon has its own",
    "[care]") {
  const auto uid = [](const std::string& salon, bool recorded) {
    const TemporaryFolder folder;
    put(folder, "salon/salon.toml", "[salon]\nname = \"" + salon + "\"\n");
    put(folder, "salon/pets/rex.toml",
        "[pet]\nname = \"Rex\"\ncoat = \"curly\"\n[trim]\nvisit_every = \"6 weeks\"\n");
    put(folder, "salon/days/2026-11-24.toml",
        "date = 2026-11-24\n[[booking]]\nat = 09:00:00\npet = \"rex\"\n");
    if (recorded)
      put(folder, "salon/visits/rex/2026-11-24.toml", "date = 2026-11-24\nunfinished = false\n");
    const auto ran = furnish("care rex --on 2026-11-24 --salon " + folder.path("salon") + " -o " +
                             folder.path("care.pdf"));
    INFO(ran.err);
    REQUIRE(ran.status == 0);
    const std::string text = bytes_of(folder.path("care.ics"));
    const auto from = text.find("UID:");
    return text.substr(from, text.find('\r', from) - from);
  };
  CHECK(uid("Harbour Lane", false) == uid("Harbour Lane", true));
  CHECK(uid("Harbour Lane", true) != uid("Mill Street", true));
}

TEST_CASE("a phone reads the next visit off a grey print of the care sheet", "[care]") {
  std::size_t codes = 0, coarse = 0, blurred = 0;
  for (const char* salon : salons) {
    Desk table(sample(salon));
    const TemporaryFolder folder;
    const auto ran = furnish("care" + on_paper(salon) + "-o " + folder.path("") + "/");
    INFO(ran.err);
    REQUIRE(ran.status == 0);
    for (const std::string& key : table.pets()) {
      const std::string file = folder.path(key + "-care");
      const test::Kennel kennel = table.kennel(key);
      const auto next = comes_back(table, kennel);
      if (!next) continue;
      INFO(salon << ": " << key);
      REQUIRE(run("pdftoppm -r 150 -gray -singlefile " + file + ".pdf " + file).status == 0);
      const auto read = run("zbarimg -q --raw " + file + ".pgm");
      CHECK(read.status == 0);
      std::string day = to_iso(*next);
      std::erase(day, '-');
      CHECK(read.out.find("DTSTART;VALUE=DATE:" + day) != std::string::npos);
      ++codes;
      const auto reads = [&](const std::string& picture) {
        return run("zbarimg -q --raw " + picture).out == read.out;
      };
      REQUIRE(
          run("pdftoppm -r 100 -gray -singlefile " + file + ".pdf " + file + "-coarse").status ==
          0);
      coarse += reads(file + "-coarse.pgm") ? 1 : 0;
      REQUIRE(run("convert " + file + ".pgm -blur 0x1 " + file + "-blurred.png").status == 0);
      blurred += reads(file + "-blurred.png") ? 1 : 0;
    }
  }
  CHECK(codes >= 8);
  // Where the page has room for a large code, a poor print and a shaken hand do as well.
  CHECK(coarse * 4 >= codes * 3);
  CHECK(blurred * 2 >= codes);
}
}  // namespace furnish::test
