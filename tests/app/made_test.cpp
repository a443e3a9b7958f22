#include <fmt/format.h>
#include <sys/stat.h>

#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <map>

#include "app/generated.h"
#include "app/made_record.h"
#include "app/program.h"
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
}  // namespace furnish::test
