#include <catch2/catch.hpp>

#include "sheet/desk.h"

// What a care sheet says of baths, of coats that are not brushed and of what was found, in words.

namespace furnish {
namespace {
using test::Desk;

/// A visit with a bath.
const std::string bathed = "[[product]]\nname = \"Oat wash\"\nkind = \"shampoo\"\n";

/// The text of Rex's care sheet, without its spaces.
class Care {
 public:
  explicit Care(const std::string& pet, const std::string& visit = {}) : table_(files(pet, visit)) {
    const auto sheet = table_.care(table_.kennel());
    INFO(table_.said());
    REQUIRE(sheet);
    text_ = test::without_space(test::text_of(sheet->page.frame));
  }
  bool says(std::string_view words) const {
    return text_.find(test::without_space(words)) != std::string::npos;
  }
  const std::string& text() const { return text_; }

 private:
  static std::map<std::string, std::string> files(const std::string& pet,
                                                  const std::string& visit) {
    std::map<std::string, std::string> out{{"pets/rex.toml", "[pet]\nname = \"Rex\"\n" + pet}};
    if (!visit.empty())
      out["visits/rex/2026-11-24.toml"] = "date = 2026-11-24\nunfinished = false\n" + visit;
    // What is planned of a day is what is booked.
    out["days/2026-11-24.toml"] = "date = 2026-11-24\n[[booking]]\nat = 09:00:00\npet = \"rex\"\n";
    return out;
  }
  Desk table_;
  std::string text_;
};
}  // namespace

TEST_CASE("a bath at home says how often, with what, and how it is mixed for the bottle",
          "[care]") {
  const std::string every = "[home]\nbath_every = \"4 weeks\"\n";
  const Care plain(every);
  INFO(plain.text());
  CHECK(plain.says("Every 4 weeks. Brush first, rinse well, dry to the skin."));
  CHECK_FALSE(plain.says("Use "));

  // Without a bottle there is nothing to mix it in, without a dilution nothing to mix.
  const std::string oat = "product = { name = \"Oat wash\", kind = \"shampoo\"";
  for (const std::string& with :
       {oat + " }\nbottle = \"275 ml\"\n", oat + ", dilution = \"10:1\" }\n"}) {
    const Care care(every + with);
    INFO(care.text());
    CHECK(care.says("Every 4 weeks. Use Oat wash. Brush first"));
    CHECK_FALSE(care.says("Mix "));
  }
  // Ten parts of water to one: an eleventh of the bottle.
  const Care mixed(every + oat + ", dilution = \"10:1\" }\nbottle = \"275 ml\"\n");
  INFO(mixed.text());
  CHECK(mixed.says("Mix 25 ml of Oat wash with 250 ml of water. Brush first"));

  CHECK(Care("[home]\nbath_every = \"1 week\"\n").says("Once a week. Brush first"));
  CHECK_FALSE(Care("").says("Brush first"));
}

TEST_CASE("a bath at home between whole weeks is told in days", "[care]") {
  for (const auto& [every, says] :
       std::map<std::string, std::string>{{"3 days", "Every 3 days. Brush first"},
                                          {"1 day", "Every day. Brush first"},
                                          {"10 days", "Every 10 days. Brush first"},
                                          {"14 days", "Every 2 weeks. Brush first"}}) {
    const Care care("[home]\nbath_every = \"" + every + "\"\n");
    INFO(care.text());
    CHECK(care.says(says));
    CHECK_FALSE(care.says("Every 0"));
  }
}

TEST_CASE("before a visit is on file nothing is said to be done", "[care]") {
  const std::string pet =
      "coat = \"curly\"\n[trim]\nback = { comb = \"1/2 in\", over = \"30\" }\n"
      "[finish]\nnails = \"clip\"\n";
  const Care planned(pet), done(pet, bathed);
  INFO(planned.text() << "\n" << done.text());
  CHECK(planned.says("Planned today"));
  CHECK(
      planned.says("We plan to wash Rex, dry the coat and brush it out.We plan to do the nails."));
  CHECK_FALSE(planned.says("We washed"));
  CHECK_FALSE(planned.says("and did the nails"));
  // That a visit did the nails is nowhere on its record unless it says so.
  CHECK(done.says("We washed Rex, dried the coat and brushed it out."));
  CHECK_FALSE(done.says("did the nails"));
  CHECK_FALSE(done.says("plan"));
}

TEST_CASE("a dog that is not bathed is brushed, and has no signs of a bath to watch for",
          "[care]") {
  const Care washed("coat = \"curly\"\n", bathed), planned("coat = \"curly\"\n"),
      brushed("coat = \"curly\"\n[bath]\nnone = true\n");
  INFO(washed.text() << "\n" << brushed.text());
  CHECK(washed.says("We washed Rex, dried the coat and brushed it out."));
  for (const Care* one : {&washed, &planned}) {
    CHECK(one->says("within a week of the bath: Call your vet and mention the bath."));
  }
  CHECK(brushed.says("We plan to brush Rex."));
  CHECK_FALSE(brushed.says("mention the bath"));
  // A visit on file goes by what was used, on the whole page.
  for (const char* visit :
       {"minutes = 60\n", "[[product]]\nname = \"Shine\"\nkind = \"spray\"\n"}) {
    const Care visited("coat = \"curly\"\n", visit);
    INFO(visited.text());
    CHECK(visited.says("We brushed Rex."));
    CHECK_FALSE(visited.says("mention the bath"));
  }
}

TEST_CASE("a coat without hair is cared for as skin", "[care]") {
  const Care bare("coat = \"hairless\"\n", bathed), curly("coat = \"curly\"\n", bathed);
  INFO(bare.text());
  CHECK(bare.says("We washed Rex and dried the skin."));
  CHECK(Care("coat = \"hairless\"\n").says("We plan to wash Rex and dry the skin."));
  CHECK(bare.says("Wash with mild soap and use a skin cream. Keep out of strong sun."));
  for (const char* brushing : {"brushed it out", "comb down to the skin", "Never use scissors"}) {
    INFO(brushing << "\n" << curly.text());
    CHECK_FALSE(bare.says(brushing));
    CHECK(curly.says(brushing));
  }
}

TEST_CASE("brushed, clipped, scissored and stripped are told apart", "[care]") {
  struct Row {
    std::string trim, says;
  };
  for (const auto& [trim, says] : std::vector<Row>{
           {"{ brush = true }", "Back: brushed, not cut."},
           {"{ comb = \"1/2 in\", over = \"30\" }", "Back: clipped to about"},
           {"{ shears = \"curved\", leave = \"40 mm\" }", "Back: scissored to about 40 mm."},
           {"{ strip = \"hand\" }", "Back: hand-stripped."}}) {
    const Care care("coat = \"wire\"\n[trim]\nback = " + trim + "\n", bathed);
    INFO(care.text());
    CHECK(care.says(says));
    CHECK_FALSE(care.says("trimmed"));
    CHECK(care.says("clipped") == (says.find("clipped") != std::string::npos));
  }
}

TEST_CASE("what is clipped of a double coat is named to the last place", "[care]") {
  std::string trim = "[trim]\n";
  for (const char* place : {"shoulders", "back", "sides", "loin", "rump", "chest"}) {
    trim += std::string(place) + " = { comb = \"1/2 in\", over = \"30\" }\n";
  }
  const Care one("coat = \"double\"\n" + trim, bathed), other("coat = \"curly\"\n" + trim, bathed);
  INFO(one.text() << "\n" << other.text());
  CHECK(one.says("Shoulders, back, sides, lower back, rump and chest: clipped to about"));
  CHECK(other.says("Most of the coat: clipped to about"));
}

TEST_CASE("what the visit has counts before the file", "[care]") {
  const std::string pet =
      "coat = \"curly\"\n[trim]\nears = { shears = \"curved\", leave = \"30 mm\" }\n"
      "back = { shears = \"curved\", leave = \"20 mm\" }\n"
      "[finish]\nears = \"rounded\"\nnails = \"clip\"\n";
  const Care file(pet, bathed),
      visit(pet, bathed +
                     "[done]\nears = { blade = \"10\", why = { text = \"matted\", for = "
                     "\"everyone\" } }\n[went_out]\nnails = \"he would not let us\"\n"
                     "back = { length = \"26 mm\" }\n");
  INFO(file.text() << "\n" << visit.text());
  CHECK(file.says("Ears: rounded."));
  CHECK_FALSE(file.says("did the nails"));
  CHECK_FALSE(visit.says("rounded"));
  CHECK(visit.says("Ears: clipped to about"));
  CHECK(visit.says("this time. Matted."));
  CHECK_FALSE(visit.says("did the nails"));
  CHECK(visit.says("Nails: he would not let us."));
  CHECK(visit.says("Back: scissored to about 26 mm."));
  // Nails that the file leaves were not done.
  const Care left("coat = \"curly\"\n[finish]\nnails = \"leave\"\n", bathed);
  CHECK_FALSE(left.says("did the nails"));
}

TEST_CASE("a place that no tool may touch was not cut", "[care]") {
  const Care care(
      "coat = \"curly\"\n[[alert]]\nlevel = \"caution\"\ntext = \"Sore.\"\nfor = "
      "\"everyone\"\navoid = [\"left "
      "hock\"]\n[trim]\nhocks = { shears = \"curved\", leave = \"20 mm\" }\n",
      bathed);
  INFO(care.text());
  CHECK(care.says("Ankle of the right back leg: scissored"));
  CHECK_FALSE(care.says("Ankles of the back legs: scissored"));
}

TEST_CASE("a place that no tool may touch is not to be brushed", "[care]") {
  const auto alert = [](const std::string& place) {
    return "coat = \"curly\"\n[[alert]]\nlevel = \"caution\"\ntext = \"Wart.\"\nfor = "
           "\"everyone\"\navoid = [\"" +
           place + "\"]\n";
  };
  const std::string trim =
      "[trim]\ncheeks = { shears = \"curved\", leave = \"40 mm\" }\n"
      "back = { blade = \"10\" }\n";
  const Care care(alert("left cheek") + trim, bathed), all("coat = \"curly\"\n" + trim, bathed),
      no_trim(alert("left cheek"), bathed);
  INFO(care.text() << "\n" << no_trim.text());
  CHECK(all.says("Every day: cheeks."));
  CHECK(care.says("Every day: right cheek."));
  CHECK_FALSE(care.says("Every day: cheeks."));
  CHECK_FALSE(care.says("Every day: left cheek."));
  // Nor is it part of "all over".
  CHECK(no_trim.says("Three times a week: all over (except: left cheek)."));
  // Where a brush may go nowhere, the page has no row of it, and does not call the dog bare.
  const Care none(alert("cheeks") + "[trim]\ncheeks = { blade = \"10\" }\n", bathed);
  CHECK_FALSE(none.says("Wash with mild soap"));
}

TEST_CASE("what an earlier visit left open is watched for, also before a visit is on file",
          "[care]") {
  const auto text = [](const std::string& today, const std::string& closing) {
    std::map<std::string, std::string> files{
        {"pets/rex.toml", "[pet]\nname = \"Rex\"\ncoat = \"curly\"\n"},
        {"visits/rex/2026-10-01.toml",
         "date = 2026-10-01\nunfinished = false\n[[finding]]\nregion = \"belly\"\nwhat = \"lump, "
         "pea-sized\"\n"
         "advised = \"vet this week\"\nfor = \"everyone\"\n[[finding]]\nregion = \"rump\"\n"
         "what = \"bare patch\"\n"},
        {"visits/rex/2026-11-01.toml", "date = 2026-11-01\nunfinished = false\n" + closing},
        {"days/2026-11-24.toml", "date = 2026-11-24\n[[booking]]\nat = 09:00:00\npet = \"rex\"\n"}};
    if (!today.empty())
      files["visits/rex/2026-11-24.toml"] = "date = 2026-11-24\nunfinished = false\n" + today;
    Desk table(std::move(files));
    const auto sheet = table.care(table.kennel());
    REQUIRE(sheet);
    return test::without_space(test::text_of(sheet->page.frame));
  };
  const std::string lump =
      test::without_space("Belly: lump, pea-sized. Vet this week (said on 1 October 2026).");
  for (const std::string& today : {std::string(), bathed}) {
    const std::string open = text(today, "");
    INFO(open);
    CHECK(open.find(lump) != std::string::npos);
    CHECK(open.find("barepatch") == std::string::npos);  // for staff
    // Closed by a line that only staff read.
    const std::string closed =
        text(today, "[[finding]]\nregion = \"belly\"\nwhat = \"lump\"\nclosed = true\n");
    CHECK(closed.find("pea-sized") == std::string::npos);
  }
}

TEST_CASE("only a booking makes a plan of today, and no day is made up", "[care]") {
  const auto text = [](const std::map<std::string, std::string>& more) {
    std::map<std::string, std::string> files{
        {"salon.toml", "[salon]\nphone = \"555 0100\"\n"},
        {"pets/rex.toml",
         "[pet]\nname = \"Rex\"\ncoat = \"curly\"\n[trim]\nvisit_every = \"4 weeks\"\n"
         "back = { shears = \"curved\", leave = \"20 mm\" }\n"}};
    files.insert(more.begin(), more.end());
    Desk table(std::move(files));
    const auto sheet = table.care(table.kennel());
    REQUIRE(sheet);
    return test::without_space(test::text_of(sheet->page.frame));
  };
  const auto has = [](const std::string& page, std::string_view what) {
    return page.find(test::without_space(what)) != std::string::npos;
  };
  const auto visited = [](const std::string& day, const std::string& next) {
    return std::map<std::string, std::string>{
        {"visits/rex/" + day + ".toml",
         "date = " + day + "\nunfinished = false\nnext = " + next + "\n" + bathed}};
  };
  const std::string never = text({}), overdue = text(visited("2026-10-20", "2026-11-17")),
                    due = text(visited("2026-10-20", "2026-11-24")),
                    waits = text(visited("2026-11-03", "2026-12-01"));
  INFO(never << "\n" << overdue << "\n" << due << "\n" << waits);
  for (const std::string& page : {never, overdue, due, waits}) CHECK_FALSE(has(page, "plan"));
  CHECK(has(never, "No date is set yet. Please call us."));
  CHECK_FALSE(has(never, "Today"));
  CHECK_FALSE(has(never, "mention the bath"));
  CHECK_FALSE(has(never, "December"));
  CHECK(has(never, "Three times a week: all over."));
  CHECK(has(overdue, "Visit of 20 October 2026"));
  CHECK(has(overdue, "We washed Rex"));
  CHECK(has(overdue, "The visit was due on Tuesday, 17 November. Please call us."));
  CHECK(has(overdue, "555 0100"));
  CHECK_FALSE(has(overdue, "mention the bath"));  // that week is over
  CHECK(has(due, "The visit is due today. Please call us."));
  // Between visits the page is of the last one, and its calendar begins on the day of print.
  CHECK(has(waits, "24 November 2026"));
  CHECK(has(waits, "Visit of 3 November 2026"));
  CHECK(has(waits, "At home until Tuesday, 1 December"));
  CHECK(has(waits, "242526272829301"));
  CHECK_FALSE(has(waits, "161718192021"));
}

TEST_CASE("mats on skin that tears are a vet's", "[care]") {
  const std::string coat = "coat = \"curly\"\n";
  const Care thin(coat + "[health]\nconditions = [\"thin skin\"]\n"), usual(coat);
  INFO(thin.text() << "\n" << usual.text());
  CHECK(thin.says("If the comb stops, call your vet: this skin tears."));
  CHECK_FALSE(thin.says("call us and do not wash"));
  CHECK(usual.says("If the comb stops, call us and do not wash the coat."));
  CHECK_FALSE(usual.says("this skin tears"));
}

TEST_CASE("a smooth coat is not combed to the skin", "[care]") {
  const Care smooth("coat = \"smooth\"\n[bath]\nnone = true\n", "minutes = 30\n");
  INFO(smooth.text());
  CHECK(smooth.says("We brushed Rex."));
  CHECK_FALSE(smooth.says("to the skin"));
}

TEST_CASE("the vet's number has a line, and the salon's stands where it is to be called",
          "[care]") {
  Desk table =
      test::desk("[pet]\nname = \"Rex\"\ncoat = \"curly\"\n", "[salon]\nphone = \"555 0100\"\n");
  const auto sheet = table.care(table.kennel());
  REQUIRE(sheet);
  CHECK(test::says(sheet->page.frame, "Your vet: name and phone"));
  CHECK(test::says(sheet->page.frame, "the skin lies in the mat. Our number: 555 0100."));
}

TEST_CASE("a length that is passed before the next visit is advice with its day", "[care]") {
  const std::string coat =
      "coat = \"curly\"\n[trim]\nvisit_every = \"6 weeks\"\nback = { shears = \"curved\", leave = "
      "\"20 mm\" }\n";
  const Care mats(coat, bathed),
      keep(coat + "[preferences]\nkeep_under = { back = \"22 mm\" }\n", bathed),
      none("coat = \"curly\"\n", bathed);
  INFO(mats.text() << "\n" << keep.text());
  // That it will mat is said once, in the routine.
  CHECK(mats.says(
      "From Sunday, 6 December: every day, all over. Some of the coat is then over 25 mm and "
      "mats fast."));
  CHECK_FALSE(mats.says("come by"));
  CHECK(keep.says("the coat may be over your limit of 22 mm here: back."));
  // It moves no date.
  CHECK(mats.says("Tuesday, 5 January 2027. You asked for a visit every 6 weeks."));
  CHECK(keep.says("Tuesday, 5 January 2027. You asked for a visit every 6 weeks."));
  CHECK_FALSE(none.says("come by"));
}

TEST_CASE("an interval that is no number of weeks is told in days", "[care]") {
  const Care care("coat = \"curly\"\n[trim]\nvisit_every = \"10 days\"\n", bathed);
  INFO(care.text());
  CHECK(care.says("You asked for a visit every 10 days."));
}

TEST_CASE("a mat that went all the way round is what an owner watches for first", "[care]") {
  const std::string coat = "coat = \"curly\"\n";
  const Care round(coat, "[came_in]\ntail = { mats = 4, encircling = true }\n"),
      flat(coat, "[came_in]\ntail = { mats = 4 }\n");
  INFO(round.text());
  CHECK(round.says("A mat goes all the way round: tail."));
  CHECK(round.says("It can cut off the blood. See a vet today."));
  CHECK(round.text().find("Amatgoesalltheway") < round.text().find("Callyourvet"));
  CHECK_FALSE(flat.says("all the way round"));
}
}  // namespace furnish
