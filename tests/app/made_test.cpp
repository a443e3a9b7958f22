#include <fmt/format.h>
#include <sys/stat.h>

#include <catch2/catch.hpp>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <map>

#include "app/generated.h"
#include "app/made_record.h"
#include "app/program.h"
#include "app/this_machine.h"
#include "output/seal.h"
#include "share.h"

// Runs of the program of which some sheets are left as they were made.

namespace furnish::test {
namespace {
struct Ran {
  int status;
  std::string out, err;
  std::map<std::string, ino_t>
      numbers;  ///< of the sheets' files: one that is made anew has another
};
Ran card(const std::string& salon, const std::string& more = "") {
  const ToolOutput ran =
      furnish("card --salon " + test::quoted(salon) + " --on 2026-11-24 " + more);
  Ran out{ran.status, ran.out, ran.err, {}};
  for (const std::string& name : files_below(salon + "/sheets")) {
    struct stat status {};
    REQUIRE(::stat((salon + "/sheets/" + name).c_str(), &status) == 0);
    out.numbers[name] = status.st_ino;
  }
  return out;
}
}  // namespace

TEST_CASE("a run after which nothing changed makes nothing, and says the same", "[made]") {
  const TemporaryFolder folder;
  const std::string salon = folder.path("salon");
  copy_sample("us-corner", salon);
  // With something to be told: a letter that no font has, and two dogs at once.
  put(folder, "salon/pets/rex.toml",
      "[pet]\nname = \"Rex\"\n[home]\nnotes = \"a\"\n[handling]\nhold = \"\U0010FFFD\"\n");
  put(folder, "salon/days/2026-11-24.toml",
      "date = 2026-11-24\n[[booking]]\nat = 09:00:00\npet = \"rex\"\ngroomer = \"Ines\"\n"
      "[[booking]]\nat = 09:00:00\npet = \"duke\"\ngroomer = \"Ines\"\n");
  const Ran first = card(salon), again = card(salon);
  CHECK(first.status == 0);
  CHECK(has(first.err, "U+10FFFD"));
  CHECK(first.err.find("warning: ") != first.err.rfind("warning: "));
  CHECK(again.status == 0);
  CHECK(again.out == first.out);
  CHECK(again.err == first.err);
  CHECK(again.numbers == first.numbers);
  const Ran strict = card(salon, "--strict"), strict_fresh = card(salon, "--strict --fresh");
  CHECK(strict.status == 1);
  CHECK(strict.err == strict_fresh.err);
  CHECK(strict.numbers == first.numbers);
  // --fresh makes all.
  for (const auto& [name, number] : strict_fresh.numbers) CHECK(number != first.numbers.at(name));
  // Of one pet, one sheet.
  put(folder, "salon/pets/waffles.toml", bytes_of(salon + "/pets/waffles.toml") + "# more\n");
  const Ran one = card(salon);
  CHECK(one.out == first.out);
  for (const auto& [name, number] : one.numbers) {
    INFO(name);
    CHECK((number != strict_fresh.numbers.at(name)) == (name == "waffles-card.pdf"));
  }
}

TEST_CASE("what happens to today's bookings or to the list of pets makes anew whom it is about",
          "[made]") {
  const TemporaryFolder folder;
  const std::string salon = folder.path("salon");
  copy_sample("us-corner", salon);
  const auto book = [&](const std::string& pets) {
    std::string text = "date = 2026-11-24\n";
    int hour = 8;
    for (const char pet : pets) {
      text += fmt::format("[[booking]]\nat = {:02}:00:00\npet = \"{}\"\ngroomer = \"Ines\"\n", hour,
                          pet == 'd'   ? "duke"
                          : pet == 'w' ? "waffles"
                                       : "rex");
      hour += 5;
    }
    put(folder, "salon/days/2026-11-24.toml", text);
  };
  book("d");
  Ran before = card(salon);
  REQUIRE(before.status == 0);
  const auto made_anew = [&] {
    Ran now = card(salon);
    std::string out;
    for (const auto& [name, number] : now.numbers) {
      const auto old = before.numbers.find(name);
      if (old == before.numbers.end() || old->second != number) out += name + " ";
    }
    before = std::move(now);
    return out;
  };
  CHECK(made_anew() == "");
  book("dw");
  CHECK(made_anew() == "duke-card.pdf waffles-card.pdf ");
  // Of a pet whose file has a fault the sheet from before stays, and that is told.
  const std::string waffles = bytes_of(salon + "/pets/waffles.toml");
  put(folder, "salon/pets/waffles.toml", "[pet]\nname = \n");
  CHECK(made_anew() == "");
  CHECK(has(before.err, "waffles-card.pdf is from before"));
  put(folder, "salon/pets/waffles.toml", waffles);
  CHECK_FALSE(has(made_anew(), "duke-card.pdf"));
  CHECK_FALSE(has(before.err, "from before"));
  // However it is written: space around a key is no part of it.
  const std::string day = salon + "/days/2026-11-24.toml";
  for (const char* const written : {"\" waffles \"", "'waffles '", "'''\nwaffles'''"}) {
    for (const char* const hour : {"13:00:00", "13:30:00"}) {
      std::string text = bytes_of(day);
      text.resize(text.rfind("[[booking]]"));
      put(folder, "salon/days/2026-11-24.toml",
          text + "[[booking]]\nat = " + hour + "\npet = " + written + "\ngroomer = \"Ines\"\n");
      INFO(written << " at " << hour);
      CHECK(has(made_anew(), "waffles-card.pdf"));
    }
  }
  book("dw");
  made_anew();
  put(folder, "salon/pets/bo.toml", "[pet]\nname = \"Bo\"\n");
  CHECK(made_anew() == "bo-card.pdf ");
  std::filesystem::remove(salon + "/pets/bo.toml");
  CHECK(made_anew() == "");
  // Of a pet that is not there every sheet of the day tells.
  book("dr");
  const std::string all = made_anew();
  CHECK(has(all, "waffles-card.pdf"));
  CHECK(has(before.err, "rex"));
  put(folder, "salon/pets/rex.toml", "[pet]\nname = \"Rex\"\n");
  CHECK(has(made_anew(), "waffles-card.pdf"));
  CHECK(before.err == "");
}

TEST_CASE("a sheet that a person wrote on is told, and left, though its pet did not change",
          "[made]") {
  const TemporaryFolder folder;
  const std::string salon = folder.path("salon"), sheet = salon + "/sheets/duke-card.pdf";
  copy_sample("us-corner", salon);
  REQUIRE(card(salon).status == 0);
  std::ofstream(sheet, std::ios::app) << "% ring the owner\n";
  const std::string written = bytes_of(sheet);
  const Ran ran = card(salon);
  CHECK(ran.status == 1);
  CHECK(has(ran.err, "is left as it is"));
  CHECK(bytes_of(sheet) == written);
  // A record that is a person's is left too, and harms nothing.
  std::ofstream(salon + "/sheets/.made") << "my notes\n";
  CHECK(card(salon, "--force").status == 0);
  CHECK(bytes_of(salon + "/sheets/.made") == "my notes\n");
  CHECK(bytes_of(sheet) != written);
}

TEST_CASE("what is left as it was made is what a fresh run makes, byte for byte", "[made]") {
  const TemporaryFolder folder;
  const std::string salon = folder.path("salon");
  copy_sample("us-corner", salon);
  Dice dice(5);
  const auto all = [&] {
    std::map<std::string, std::string> out;
    for (const std::string& name : files_below(salon + "/sheets")) {
      out[name] = bytes_of(salon + "/sheets/" + name);
    }
    return out;
  };
  for (std::size_t i = 0, trials = long_run() ? 100 : 2; i < trials; ++i) {
    const std::string options = dice.one_in(2) ? "--paper A5" : "";
    const Ran ran = card(salon, options);
    const auto left = all();
    CHECK(card(salon, options + " --fresh").out == ran.out);
    CHECK(all() == left);
    const std::string pet = dice.one_in(2) ? "duke" : "waffles";
    std::string text = bytes_of(salon + "/pets/" + pet + ".toml");
    text.insert(text.find('"') + 1, dice.one_in(2) ? "A" : "B");
    put(folder, "salon/pets/" + pet + ".toml", text);
  }
}

TEST_CASE("a record gives back what was put in it, and nothing if a byte of it is another",
          "[made]") {
  MadeRecord record;
  const MadeSheet one{
      "pets/a\tb\\n.toml",
      "card 0",
      "2026-11-24",
      "s",
      "d",
      {{Input::Kind::all, "visits/a b", "12"}, {Input::Kind::photo, "p\n.jpg", "x"}},
      {{"sheets/a.pdf", "m"}},
      {{"", "one\nline\t\\"}, {"once", ""}}};
  record.put(one);
  record.put_day("days/x.toml", "12", true);
  const std::string text = record.text("2026-11-24");
  const MadeRecord read(text);
  const auto found = read.find(one.pet, one.what);
  REQUIRE(found);
  CHECK(found->pet == one.pet);
  CHECK(found->days == "d");
  REQUIRE(found->inputs.size() == 2);
  CHECK(found->inputs[0].path == "visits/a b");
  CHECK(found->inputs[1].path == "p\n.jpg");
  CHECK(found->inputs[1].kind == Input::Kind::photo);
  CHECK(found->files.at(0).mark == "m");
  REQUIRE(found->said.size() == 2);
  CHECK(found->said[0].text == "one\nline\t\\");
  CHECK(found->said[1].once == "once");
  CHECK(read.day_was_good("days/x.toml", "12") == true);
  CHECK_FALSE(read.day_was_good("days/x.toml", "13"));
  CHECK_FALSE(read.find(one.pet, "style 0"));
  // Of another day's nothing is kept.
  CHECK_FALSE(MadeRecord(read.text("2026-11-25")).find(one.pet, one.what));
  for (std::size_t i = 0; i < text.size(); ++i) {
    std::string other = text;
    other[i] = other[i] == '7' ? '8' : '7';
    CHECK_FALSE(MadeRecord(other).find(one.pet, one.what));
    CHECK_FALSE(MadeRecord(text.substr(0, i)).find(one.pet, one.what));
  }
}
TEST_CASE(
    "who watches a salon has a sheet anew when its file is saved, however, and ends by Ctrl-C",
    "[made]") {
  const TemporaryFolder folder;
  const std::string salon = folder.path("salon"), sheets = salon + "/sheets/";
  copy_sample("us-corner", salon);
  const std::string pet = salon + "/pets/duke.toml", told = folder.path("told");
  // It waits for what is to happen, at most ten seconds; a sheet that is made anew is another file.
  const std::string script = fmt::format(
      "until_() {{ for i in $(seq 1000); do if eval \"$1\"; then return; fi; sleep 0.01; done; "
      "exit 9; }}\n"
      "{0} watch {1} --on 2026-11-24 >{2} 2>{2}.err & pid=$!\n"
      "until_ 'grep -q watching {2}'\n"
      "of() {{ stat -c %i {3}duke-card.pdf; }}; other=$(stat -c %i {3}waffles-card.pdf)\n"
      "was=$(of); echo '# in place' >>{4}; until_ '[ $(of) != $was ]'\n"
      "was=$(of); cp {4} {4}.new; echo '# beside' >>{4}.new; mv {4}.new {4}; until_ '[ $(of) != "
      "$was ]'\n"
      "cp {4} {2}.good; echo 'nonsense = ' >>{4}; until_ 'grep -q error {2}.err'\n"
      "was=$(of); cp {2}.good {4}; echo '# mended' >>{4}; until_ '[ $(of) != $was ]'\n"
      "[ $other = $(stat -c %i {3}waffles-card.pdf) ] || exit 8\n"
      "kill -INT $pid; wait $pid",
      FURNISH_PROGRAM, salon, told, sheets, pet);
  // A shell lets what it starts in the background ignore Ctrl-C, unless it has jobs.
  put(folder, "script", "set -m\n" + script);
  const ToolOutput ran = run("bash " + folder.path("script"));
  INFO(bytes_of(told) << bytes_of(told + ".err") << ran.err);
  CHECK(ran.status == 130);
  // The others are told once, at the beginning.
  CHECK(matches(bytes_of(told), "(duke-card.pdf)").size() >= 4);
  CHECK(matches(bytes_of(told), "(waffles-card.pdf)").size() == 1);
  for (const std::string& name : files_below(salon + "/sheets")) {
    CHECK(seal_holds(bytes_of(sheets + name)));
  }
}

TEST_CASE("one letter of a catalogue, and all that is said with it is made anew", "[made]") {
  const TemporaryFolder folder;
  const std::string salon = folder.path("salon"), data = folder.path("data");
  copy_sample("us-corner", salon);
  const std::string source = FURNISH_SOURCE_DIR, name = "styles/words/en.toml";
  namespace fs = std::filesystem;
  fs::create_directory(data);
  fs::create_directory_symlink(source + "/fonts", data + "/fonts");
  fs::copy(source + "/styles", data + "/styles", fs::copy_options::recursive);
  const std::string whose = GENERATE("data/", "salon/");
  CAPTURE(whose);
  std::string words = bytes_of(source + "/" + name);
  REQUIRE(words.size() > Files::largest);
  put(folder, whose + name, words);
  const Ran first = card(salon, "--data " + data);
  CHECK(first.status == 0);
  CHECK(card(salon, "--data " + data).numbers == first.numbers);
  // In place, and as long as it was.
  const auto at = words.find("= \"") + 3;
  words[at] = words[at] == 'X' ? 'Y' : 'X';
  std::ofstream(folder.path(whose + name), std::ios::in | std::ios::out) << words;
  const Ran other = card(salon, "--data " + data);
  for (const auto& [sheet, number] : other.numbers) CHECK(number != first.numbers.at(sheet));
}

TEST_CASE("what this machine says of its fonts is a part of what sheets are made from", "[made]") {
  const TemporaryFolder folder;
  const std::string file = folder.file("fonts.conf", "<fontconfig/>");
  const char* const before = std::getenv("FONTCONFIG_FILE");
  const std::string kept = before == nullptr ? "" : before;
  ::setenv("FONTCONFIG_FILE", file.c_str(), 1);
  const std::string first = mark_of_this_machine();
  CHECK(mark_of_this_machine() == first);
  std::ofstream(file) << "<fontconfig></fontconfig>";
  CHECK(mark_of_this_machine() != first);
  ::unsetenv("FONTCONFIG_FILE");
  if (before != nullptr) ::setenv("FONTCONFIG_FILE", kept.c_str(), 1);
}

namespace {
/// A salon that is watched while a script goes on: `until_ TEST` waits at most ten seconds, `of
/// PET` is the number of its sheet's file.
ToolOutput watched(const TemporaryFolder& folder, const std::string& script,
                   const std::string& options = "") {
  const std::string whole = fmt::format(
      "set -m; cd {0}/salon\n"
      "until_() {{ for i in $(seq 1000); do if eval \"$1\"; then return; fi; sleep 0.01; done; "
      "exit 9; }}\n"
      "of() {{ stat -c %i sheets/$1.pdf 2>/dev/null || echo none; }}\n"
      "{1} watch --on 2026-11-24 {2} >../told 2>../err & pid=$!\n"
      "trap 'kill $pid 2>/dev/null' EXIT; until_ 'grep -q watching ../told'\n"
      "{3}\nkill -INT $pid; wait $pid",
      folder.path(""), FURNISH_PROGRAM, options, script);
  put(folder, "script", whole);
  return run("bash " + folder.path("script"));
}
}  // namespace

TEST_CASE("who mends what pets share has all that hangs on it, whatever was wrong before",
          "[made]") {
  const TemporaryFolder folder;
  put(folder, "salon/pets/ada.toml",
      "[pet]\nname = \"Ada\"\ncoat = \"curly\"\n[trim]\nstyle = \"own\"\n");
  put(folder, "salon/pets/bo.toml", "[pet]\nname = \"Bo\"\n");
  const std::string style = "[style]\nname = \"Own\"\nextends = \"natural-tidy\"\n";
  ToolOutput ran;
  SECTION("a style with a fault") {
    put(folder, "salon/salon.toml", "[salon]\nname = \"S\"\n");
    put(folder, "salon/styles/own.toml", "[style]\nname = \"Own\"\nextends = \"natural-tdy\"\n");
    put(folder, "good", style);
    ran = watched(folder,
                  "[ $(of ada-card) = none ] || exit 8\n"
                  "cat ../good >styles/own.toml; until_ '[ $(of ada-card) != none ]'");
  }
  SECTION("a salon of which something is said, so that no run is on record") {
    put(folder, "salon/salon.toml", "[salon]\nname = \"S\"\n");
    put(folder, "salon/styles/own.toml", style);
    put(folder, "salon/days/2026-11-24.toml",
        "date = 2026-11-24\n[[booking]]\nat = 10:00:00\npet = \"nobody\"\n");
    ran = watched(folder,
                  "was=$(of ada-card); other=$(of bo-card)\n"
                  "echo '# more' >>salon.toml\n"
                  "until_ '[ $(of ada-card) != $was ]'; until_ '[ $(of bo-card) != $other ]'");
    CHECK(has(bytes_of(folder.path("err")), "nobody"));
  }
  INFO(bytes_of(folder.path("told")) << bytes_of(folder.path("err")) << ran.err);
  CHECK(ran.status == 130);
}

TEST_CASE("a note is made anew when its photo is there, is another, or is gone", "[made]") {
  const TemporaryFolder folder;
  put(folder, "salon/salon.toml", "[salon]\nname = \"S\"\n");
  put(folder, "salon/pets/ada.toml", "[pet]\nname = \"Ada\"\n");
  put(folder, "salon/visits/ada/2026-11-24.toml",
      "date = 2026-11-24\nunfinished = false\n[[photo]]\nfile = \"photos/ada.jpg\"\n"
      "when = \"after\"\n");
  put(folder, "one", "no photo");
  put(folder, "two", "no photo either");
  const std::string sheet = "$(of ada-2026-11-24-note)";
  const std::string anew = "until_ '[ " + sheet + " != $was ]'; was=" + sheet + "\n";
  const std::string script = "was=" + sheet +
                             "\nmkdir photos; sleep 0.05; cp ../one photos/ada.jpg\n" + anew +
                             "cp ../two photos/.new; mv photos/.new photos/ada.jpg\n" + anew +
                             "rm photos/ada.jpg\n" + anew;
  const ToolOutput ran = watched(folder, script, "--sheet note");
  INFO(bytes_of(folder.path("told")) << bytes_of(folder.path("err")) << ran.err);
  CHECK(ran.status == 130);
  // Also where the sheet was made before the watching began.
  put(folder, "salon/photos/ada.jpg", "no photo");
  REQUIRE(furnish("note --on 2026-11-24", "cd " + folder.path("salon") + " &&").status == 0);
  const ToolOutput again =
      watched(folder, "was=" + sheet + "\ncp ../two photos/ada.jpg\n" + anew, "--sheet note");
  INFO(bytes_of(folder.path("told")) << bytes_of(folder.path("err")) << again.err);
  CHECK(again.status == 130);
}

TEST_CASE("who watches without being heard fails", "[made]") {
  const TemporaryFolder folder;
  put(folder, "pets/ada.toml", "[pet]\nname = \"Ada\"\n");
  const ToolOutput ran = furnish("watch >/dev/full", "cd " + folder.path("") + " &&");
  CHECK(ran.status == 1);
  CHECK(matches(ran.err, "(cannot write to the standard output)").size() == 1);
}
}  // namespace furnish::test
