#include <catch2/catch.hpp>

#include "spec/edit_help.h"
#include "spec/edit_merge.h"
#include "spec/pet_format.h"

// Two people change one file: what each asked for is in it afterwards, or both are told.

namespace furnish::test {
namespace {
const std::string base =
    "[pet]\nname = \"Ida\" # hers\ncoat = \"drop\"\n\n[owner]\ncollects = [\"A\", \"B\"]\n\n"
    "[[alert]]\ntext = \"one\"\n\n[[alert]]\ntext = \"two\"\n\n[trim]\n\"left hock\" = { comb = "
    "\"1/2 in\", over = \"30\" }\n";

Edit set(std::string_view at, EditValue value) {
  return {Edit::Op::set, path(at), std::move(value)};
}
Edit taken_out(std::string_view at) {
  return {Edit::Op::remove, path(at)};
}
Edit added(std::string_view at, EditValue value) {
  return {Edit::Op::append, path(at), std::move(value)};
}

std::string shown(const std::optional<EditValue>& value) {
  return value ? toml_text::value(*value) : "nothing";
}

/// What comes of it, or the conflicts: "pet.name: base, theirs, yours".
std::string both(const std::vector<Edit>& theirs, const std::vector<Edit>& yours) {
  EditedText start(base, &keys::pet_file::file), now = start;
  REQUIRE_FALSE(now.apply(theirs).has_value());
  const MergedEdits out = merged(start, yours, now);
  if (!out.fault.empty()) return "fault: " + out.fault;
  if (out.conflicts.empty()) return out.text.text();
  CHECK(out.text.text() == now.text());
  std::string told;
  for (const EditConflict& one : out.conflicts) {
    told += to_text(one.path) + ": " + shown(one.base) + ", " + shown(one.theirs) + ", " +
            shown(one.yours) + "\n";
  }
  return told;
}
/// All of them made by one person.
std::string made(const std::vector<Edit>& edits) {
  EditedText out(base, &keys::pet_file::file);
  REQUIRE_FALSE(out.apply(edits).has_value());
  return out.text();
}
}  // namespace

TEST_CASE("edits of different places are both in the file", "[edit][merge]") {
  const std::vector<std::vector<Edit>> sets{
      {set("pet/name", words("Ada"))},
      {set("pet/coat", words("wire")), set("pet/sex", words("f"))},
      {taken_out("alert/1"), set("owner/phone", words("1"))},
      {set("trim/left-hock/comb", words("1 in"))},
      {set("trim/ears/blade", words("10"))},
      {set("finish/ears", words("round"))},
  };
  for (std::size_t i = 0; i < sets.size(); ++i) {
    for (std::size_t j = 0; j < sets.size(); ++j) {
      if (i == j) continue;
      std::vector<Edit> all = sets[i];
      all.insert(all.end(), sets[j].begin(), sets[j].end());
      CHECK(both(sets[i], sets[j]) == made(all));
    }
  }
}

TEST_CASE("what both changed in their own way is told, and nothing is written", "[edit][merge]") {
  CHECK(both({set("pet/name", words("Ada"))},
             {set("pet/name", words("Eda")), set("pet/coat", words("wire"))}) ==
        "pet.name: \"Ida\", \"Ada\", \"Eda\"\n");
  // Changed twice is one conflict, with the last.
  CHECK(both({set("pet/name", words("Ada"))},
             {set("pet/name", words("E")), set("pet/name", words("Eda"))}) ==
        "pet.name: \"Ida\", \"Ada\", \"Eda\"\n");
  CHECK(both({taken_out("pet/name")}, {set("pet/name", words("Eda"))}) ==
        "pet.name: \"Ida\", nothing, \"Eda\"\n");
  CHECK(both({set("pet/name", words("Ada"))}, {taken_out("pet/name")}) ==
        "pet.name: \"Ida\", \"Ada\", nothing\n");
  CHECK(both({set("pet/sex", words("f"))}, {set("pet/sex", words("m"))}) ==
        "pet.sex: nothing, \"f\", \"m\"\n");
  CHECK(both({set("trim/left-hock/comb", words("1 in"))},
             {set("trim/left_hock/comb", words("2 in"))}) ==
        "trim.\"left hock\".comb: \"1/2 in\", \"1 in\", \"2 in\"\n");
  CHECK(both({set("trim/left-hock/comb", words("1 in"))}, {taken_out("trim/left hock")}) ==
        "trim.\"left hock\": { comb = \"1/2 in\", over = \"30\" }, { comb = \"1 in\", over = "
        "\"30\" }, nothing\n");
}

TEST_CASE("what both did alike is no conflict", "[edit][merge]") {
  CHECK(both({set("pet/name", words("Ada"))}, {set("pet/name", words("Ada"))}) ==
        made({set("pet/name", words("Ada"))}));
  CHECK(both({taken_out("trim/left hock")}, {taken_out("trim/left-hock")}) ==
        made({taken_out("trim/left hock")}));
  CHECK(both({taken_out("alert/1")}, {taken_out("alert/1")}) == made({taken_out("alert/1")}));
}

TEST_CASE("elements of lists are found where they went", "[edit][merge]") {
  CHECK(both({taken_out("alert/0")}, {set("alert/1/text", words("three"))}) ==
        made({set("alert/1/text", words("three")), taken_out("alert/0")}));
  CHECK(both({added("alert", table_of({{"text", words("x")}}))},
             {added("alert", table_of({{"text", words("y")}})),
              set("alert/2/level", words("danger"))}) ==
        made({added("alert", table_of({{"text", words("x")}})),
              added("alert", table_of({{"text", words("y")}})),
              set("alert/3/level", words("danger"))}));
  CHECK(both({added("owner/collects", words("C"))}, {added("owner/collects", words("D"))}) ==
        made({set("owner/collects", all_of({"A", "B", "C", "D"}))}));
  CHECK(both({taken_out("alert/0"), set("alert/0/text", words("2"))},
             {set("alert/0/level", words("danger"))}) ==
        "alert[1].level: nothing, nothing, \"danger\"\n");
}

TEST_CASE("a table as a whole means its keys that differ", "[edit][merge]") {
  CHECK(both({set("trim/left-hock/over", words("10"))},
             {set("trim/left-hock", table_of({{"comb", words("1 in")}, {"over", words("30")}}))}) ==
        made({set("trim/left-hock/over", words("10")), set("trim/left-hock/comb", words("1 in"))}));
  CHECK(both({}, {taken_out("pet/sex")}) == "fault: there is no pet.sex to take out");
}
}  // namespace furnish::test
