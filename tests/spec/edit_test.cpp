#include <catch2/catch.hpp>

#include "spec/edit_help.h"
#include "spec/pet_format.h"
#include "spec/visit_format.h"

// Each case is a file as people write them, one change, and the file afterwards byte for byte.

namespace furnish::test {
namespace {
const TableInfo* const pet = &keys::pet_file::file;

EditedText good(std::string text, const TableInfo* file = pet) {
  EditedText out(std::move(text), file);
  INFO(out.fault());
  REQUIRE(out.good());
  return out;
}

std::string set(const std::string& text, std::string_view at, const EditValue& value,
                const TableInfo* file = pet) {
  EditedText file_text = good(text, file);
  INFO(text << "\n" << at);
  if (!file_text.set(path(at), value)) return "refused: " + file_text.fault();
  CHECK(file_text.lost().empty());
  return file_text.text();
}
std::string append(const std::string& text, std::string_view at, const EditValue& value,
                   const TableInfo* file = pet) {
  EditedText file_text = good(text, file);
  INFO(text << "\n" << at);
  if (!file_text.append(path(at), value)) return "refused: " + file_text.fault();
  CHECK(file_text.lost().empty());
  return file_text.text();
}
/// What is lost stands behind it.
std::string removed(const std::string& text, std::string_view at) {
  EditedText file_text = good(text);
  INFO(text << "\n" << at);
  if (!file_text.remove(path(at))) return "refused: " + file_text.fault();
  std::string out = file_text.text();
  for (const std::string& remark : file_text.lost()) out += "lost: " + remark + "\n";
  return out;
}
}  // namespace

TEST_CASE("a value is changed where it stands, in the manner in which it stands", "[edit]") {
  CHECK(set("[pet]   # who\nname    = \"Zoë 🐶\"      # dots!\n", "pet/name", words("Ida")) ==
        "[pet]   # who\nname    = \"Ida\"      # dots!\n");
  CHECK(set("[pet]\nbreed = 'spitz \\ cross'\n", "pet/breed", words("a \\ b")) ==
        "[pet]\nbreed = 'a \\ b'\n");
  CHECK(set("[pet]\nbreed = 'spitz'\n", "pet/breed", words("it's")) == "[pet]\nbreed = \"it's\"\n");
  CHECK(set("[health]\nnotes = \"\"\"\none\ntwo\"\"\" # kept\n", "health/notes",
            words("two\nthree")) == "[health]\nnotes = \"\"\"\ntwo\nthree\"\"\" # kept\n");
  CHECK(set("[health]\nnotes = \"\"\"\none\ntwo\"\"\"\n", "health/notes", words("one")) ==
        "[health]\nnotes = \"one\"\n");
  CHECK(set("born=2021-04-09", "born", {EditDate{"2021-04-10"}}, nullptr) == "born=2021-04-10");
  CHECK(set("at = 9:30 # early\n", "at", {EditTime{"10:15"}}, nullptr) == "at = 10:15 # early\n");
  CHECK(set("at = 09:30:00\n", "at", {EditTime{"9:45"}}, nullptr) == "at = 09:45:00\n");
  CHECK(set("r = nan\nx = 1.5\n", "x", {2.0}, nullptr) == "r = nan\nx = 2.0\n");
  CHECK(set("\"key # with = signs\" = \"v\" # k\n", "key # with = signs", words("w"), nullptr) ==
        "\"key # with = signs\" = \"w\" # k\n");
}

TEST_CASE("what is equal already changes no byte", "[edit]") {
  for (const auto& [text, at, value] :
       {std::tuple{"[pet]\nname=\"\\u0041\"", "pet/name", words("A")},
        std::tuple{"[trim]\nears = {leave=\"1 in\" , shears='x'}\n", "trim/ears",
                   table_of({{"shears", words("x")}, {"leave", words("1 in")}})},
        std::tuple{"at = 9:30\n", "at", EditValue{EditTime{"09:30:00"}}}}) {
    CHECK(set(text, at, value) == text);
  }
}

TEST_CASE("a new key goes where the format has it", "[edit]") {
  const std::string text = "[pet]\nname   = \"Ida\"\ncoat   = \"drop\"\nweight = \"4 kg\"\n";
  CHECK(set(text, "pet/breed", words("x")) ==
        "[pet]\nname   = \"Ida\"\nbreed  = \"x\"\ncoat   = \"drop\"\nweight = \"4 kg\"\n");
  CHECK(set(text, "pet/photo", words("x")) == text + "photo  = \"x\"\n");
  CHECK(set("[pet]\n# hers\ncoat = \"drop\"", "pet/name", words("x")) ==
        "[pet]\nname = \"x\"\n# hers\ncoat = \"drop\"");
  CHECK(set("[pet]\nname = \"Ida\"", "pet/coat", words("drop")) ==
        "[pet]\nname = \"Ida\"\ncoat = \"drop\"");
  // Files that `new` made show what may stand there.
  CHECK(set("[owner]  # whose it is\n# name = \"R.\"  # who\n# phone = \"5\"  # a\n# email = "
            "\"x\"\n\n[trim]\n",
            "owner/phone", words("1")) ==
        "[owner]  # whose it is\n# name = \"R.\"  # who\n# phone = \"5\"  # a\nphone = \"1\"\n# "
        "email = \"x\"\n\n[trim]\n");
  // Braces.
  CHECK(set("[trim]\nears = { blade = \"10\", note = \"n\" } # e\n", "trim/ears/lay",
            words("with")) ==
        "[trim]\nears = { blade = \"10\", lay = \"with\", note = \"n\" } # e\n");
  CHECK(set("[trim]\nears = {lay=\"with\"}\n", "trim/ears/blade", words("10")) ==
        "[trim]\nears = {blade=\"10\",lay=\"with\"}\n");
  CHECK(set("[trim]\nears = {}\n", "trim/ears/blade", words("10")) ==
        "[trim]\nears = { blade = \"10\" }\n");
  // A key of the file itself, above all sections and under what it begins with.
  CHECK(set("# A visit.\n\n[came_in]\nmood = 1\n", "date", {EditDate{"2026-11-24"}},
            &keys::visit_file::file) == "# A visit.\n\ndate = 2026-11-24\n\n[came_in]\nmood = 1\n");
  CHECK(set("", "date", {EditDate{"2026-11-24"}}, &keys::visit_file::file) ==
        "date = 2026-11-24\n");
}

TEST_CASE("a new section goes where the format has it", "[edit]") {
  const std::string text =
      "[pet]\nname = \"Ida\"\n# her coat\n\n# --- trim ---\n[trim]\nstyle = \"x\"\n";
  CHECK(set(text, "bath/dry", words("towel")) ==
        "[pet]\nname = \"Ida\"\n# her coat\n\n[bath]\ndry = \"towel\"\n\n# --- trim ---\n[trim]\n"
        "style = \"x\"\n");
  CHECK(set(text, "finish/ears", words("round")) == text + "\n[finish]\nears = \"round\"\n");
  CHECK(set("[trim]\nstyle = \"x\"\n", "pet/name", words("Ida")) ==
        "[pet]\nname = \"Ida\"\n\n[trim]\nstyle = \"x\"\n");
  CHECK(set("", "pet/name", words("Ida")) == "[pet]\nname = \"Ida\"\n");
  CHECK(set("[pet]\nname = \"a\"\n[trim]\nstyle = \"x\"\n[finish]\n", "bath/dry", words("t")) ==
        "[pet]\nname = \"a\"\n[bath]\ndry = \"t\"\n[trim]\nstyle = \"x\"\n[finish]\n");
  CHECK(append("[pet]\nname = \"a\"\n\n[trim]\nstyle = \"x\"", "alert",
               table_of({{"text", words("Bites")}, {"level", words("danger")}})) ==
        "[pet]\nname = \"a\"\n\n[[alert]]\nlevel = \"danger\"\ntext  = \"Bites\"\n\n[trim]\n"
        "style = \"x\"");
  // Braces below, or as the file does it.
  CHECK(set("[trim]\nstyle = \"x\"\n", "trim/ears/leave", words("25 mm")) ==
        "[trim]\nstyle = \"x\"\nears = { leave = \"25 mm\" }\n");
  CHECK(set("[trim]\nstyle = \"x\"\n\n[trim.tail]\nblade = \"10\"\n", "trim/ears/leave",
            words("25 mm")) ==
        "[trim]\nstyle = \"x\"\n\n[trim.tail]\nblade = \"10\"\n\n[trim.ears]\nleave = \"25 mm\"\n");
  CHECK(
      set("pet.name = \"Otto\"\ntrim.chest.strip = \"hand\"\n", "trim/chest/lay", words("with")) ==
      "pet.name = \"Otto\"\ntrim.chest.strip = \"hand\"\ntrim.chest.lay = \"with\"\n");
  CHECK(set("pet.name = \"Otto\"\ntrim.style = \"x\"\n", "bath/dry", words("t")) ==
        "pet.name = \"Otto\"\nbath.dry = \"t\"\ntrim.style = \"x\"\n");
  CHECK(set("[owner.vet]\nname = \"Dr\"\n", "owner/name", words("R.")) ==
        "[owner]\nname = \"R.\"\n\n[owner.vet]\nname = \"Dr\"\n");
}

TEST_CASE("elements of lists", "[edit]") {
  const std::string lines =
      "[owner]\ncollects = [\n  \"Priya\",   # mother\n  \"Tom\"      # on Fridays\n]\n";
  CHECK(append(lines, "owner/collects", words("Ana")) ==
        "[owner]\ncollects = [\n  \"Priya\",   # mother\n  \"Tom\",      # on Fridays\n  "
        "\"Ana\"\n]\n");
  CHECK(set(lines, "owner/collects", all_of({"Priya", "Ana", "Tom"})) ==
        "[owner]\ncollects = [\n  \"Priya\",   # mother\n  \"Ana\",\n  \"Tom\"      # on "
        "Fridays\n]\n");
  CHECK(removed(lines, "owner/collects/1") ==
        "[owner]\ncollects = [\n  \"Priya\",   # mother\n]\nlost: # on Fridays\n");
  CHECK(set("a = [1, 2, 3]\n", "a", {EditList{whole(1), whole(3)}}) == "a = [1, 3]\n");
  CHECK(set("a = [ 1, 3, ]\n", "a", {EditList{whole(1), whole(2), whole(3)}}) ==
        "a = [ 1, 2, 3, ]\n");
  CHECK(set("a = [1]\n", "a", {EditList{whole(0), whole(1)}}) == "a = [0, 1]\n");
  CHECK(set("a = [\n  1 # one\n  , 2\n]\n", "a", {EditList{whole(2)}}) ==
        "a = [\n   # one\n   2\n]\n");
  CHECK(append("[owner]\n", "owner/collects", words("A")) == "[owner]\ncollects = [\"A\"]\n");
  CHECK(append("[owner]\ncollects = \"Priya\" # m\n", "owner/collects", words("A")) ==
        "[owner]\ncollects = [\"Priya\", \"A\"] # m\n");
  CHECK(removed("[bath]\nothers = [ { product = \"a\" }, { product = \"b\", kind = \"c\" }, ]\n",
                "bath/others/1/kind") ==
        "[bath]\nothers = [ { product = \"a\" }, { product = \"b\" }, ]\n");
  CHECK(append("[[alert]]\nlevel = \"notice\"\ntext = \"a\"\n\n[pet]\nname = \"b\"\n", "alert",
               table_of({{"level", words("danger")}, {"text", words("c")}})) ==
        "[[alert]]\nlevel = \"notice\"\ntext = \"a\"\n\n[[alert]]\nlevel = \"danger\"\ntext  = "
        "\"c\"\n\n[pet]\nname = \"b\"\n");
}

TEST_CASE("what is taken out takes its own remarks with it, and tells them", "[edit]") {
  const std::string text =
      "# Zoë's file.\n[pet]   # who\nname = \"Zoë\"  # hers\ncoat = \"drop\"\n\n# legs "
      "up\n[[alert]] # "
      "first\ntext = \"a\"\n\n[[alert]]\ntext = \"b\"\n\n[trim]\nstyle = \"x\"\n";
  CHECK(removed(text, "pet/name") ==
        "# Zoë's file.\n[pet]   # who\ncoat = \"drop\"\n\n# legs up\n[[alert]] # first\ntext = "
        "\"a\"\n\n[[alert]]\ntext = \"b\"\n\n[trim]\nstyle = \"x\"\nlost: # hers\n");
  CHECK(removed(text, "alert/0") ==
        "# Zoë's file.\n[pet]   # who\nname = \"Zoë\"  # hers\ncoat = \"drop\"\n\n[[alert]]\n"
        "text = \"b\"\n\n[trim]\nstyle = \"x\"\nlost: # first\nlost: # legs up\n");
  CHECK(removed(text, "pet") ==
        "# Zoë's file.\n\n# legs up\n[[alert]] # first\ntext = \"a\"\n\n[[alert]]\ntext = \"b\"\n\n"
        "[trim]\nstyle = \"x\"\nlost: # hers\nlost: # who\n");
  CHECK(removed(text, "trim/style") == text.substr(0, text.size() - 12));
  CHECK(removed("x = { a.b = 1, c = 2, a.d = 3 }\n", "x/a") == "x = { c = 2 }\n");
  CHECK(removed("x = { a.b = 1 }\n", "x/a/b") == "x = {}\n");
  CHECK(removed("pet.name = 1\n[trim]\nears.blade = 2\nears.lay = 3\nx = 1\n", "trim/ears") ==
        "pet.name = 1\n[trim]\nx = 1\n");
  CHECK(removed(text, "pet/breed") == "refused: there is no pet.breed to take out");
}

TEST_CASE("line ends, byte order marks, indentation", "[edit]") {
  const std::string text =
      "\xEF\xBB\xBF# made elsewhere\r\n\r\n[pet]\r\nname = \"Ana\"\r\n\r\n[owner]\r\ncollects = "
      "[\r\n\t\"A\",\r\n]";
  CHECK(set(text, "pet/coat", words("drop")) ==
        "\xEF\xBB\xBF# made elsewhere\r\n\r\n[pet]\r\nname = \"Ana\"\r\ncoat = \"drop\"\r\n\r\n"
        "[owner]\r\ncollects = [\r\n\t\"A\",\r\n]");
  CHECK(append(text, "owner/collects", words("B")) ==
        "\xEF\xBB\xBF# made elsewhere\r\n\r\n[pet]\r\nname = \"Ana\"\r\n\r\n[owner]\r\ncollects = "
        "[\r\n\t\"A\",\r\n\t\"B\",\r\n]");
  CHECK(set(text, "finish/ears", words("round")) == text + "\r\n\r\n[finish]\r\nears = \"round\"");
  CHECK(set("\xEF\xBB\xBF", "pet/name", words("A")) == "\xEF\xBB\xBF[pet]\nname = \"A\"\n");
  CHECK(set("  [pet]\n    name = \"A\"\n", "pet/coat", words("x")) ==
        "  [pet]\n    name = \"A\"\n    coat = \"x\"\n");
  CHECK(set("[health]\r\nnotes = \"\"\"\r\na\r\nb\"\"\"\r\n", "health/notes", words("b\nc")) ==
        "[health]\r\nnotes = \"\"\"\r\nb\r\nc\"\"\"\r\n");
}

TEST_CASE("two spellings of one place are one path", "[edit]") {
  const std::string text =
      "[trim]\n\"left hock\" = { comb = \"1/2 in\" }\npaws = { blade = \"10\" }\n";
  CHECK(set(text, "trim/left-hock/comb", words("1 in")) ==
        "[trim]\n\"left hock\" = { comb = \"1 in\" }\npaws = { blade = \"10\" }\n");
  CHECK(set(text, "trim/feet/blade", words("7")) ==
        "[trim]\n\"left hock\" = { comb = \"1/2 in\" }\npaws = { blade = \"7\" }\n");
  CHECK(removed(text, "trim/left_hock") == "[trim]\npaws = { blade = \"10\" }\n");
  CHECK(good(text).as_written(path("trim/left-hock/comb")) == path("trim/left hock/comb"));
  CHECK(set("[preferences]\nkeep_under = { \"left hock\" = \"12 mm\" }\n", "preferences/keep_under",
            table_of({{"left-hock", words("9 mm")}})) ==
        "[preferences]\nkeep_under = { \"left hock\" = \"9 mm\" }\n");
}

TEST_CASE("a word that may be a table becomes one where its path goes on", "[edit]") {
  CHECK(set("[bath]\nshampoo = 'oat' # mild\n", "bath/shampoo/dwell", words("4 min")) ==
        "[bath]\nshampoo = { product = 'oat', dwell = \"4 min\" } # mild\n");
  CHECK(set("[vaccinations]\nrabies = 2025-05-02\n", "vaccinations/rabies/booster", {true}) ==
        "[vaccinations]\nrabies = { on = 2025-05-02, booster = true }\n");
  CHECK(set("[finish]\nears = \"round\"\n", "finish/ears/es", words("redondas")) ==
        "[finish]\nears = { text = \"round\", es = \"redondas\" }\n");
  CHECK(set("[pet]\nname = \"x\"\n", "pet/name/first", words("y")) ==
        "refused: pet.name is no table");
}

TEST_CASE("tables and sections as a whole", "[edit]") {
  const std::string text = "[trim]\nstyle = \"x\" # hers\nears = { blade = \"10\" }\n\n[finish]\n";
  CHECK(set(text, "trim",
            table_of({{"ears", table_of({{"blade", words("7")}})},
                      {"style", words("x")},
                      {"visit_every", words("8 weeks")}})) ==
        "[trim]\nstyle = \"x\" # hers\nvisit_every = \"8 weeks\"\nears = { blade = \"7\" }\n\n"
        "[finish]\n");
  CHECK(set("[[alert]]\ntext = \"a\"\n\n[[alert]]\ntext = \"c\"\n", "alert",
            {EditList{table_of({{"text", words("a")}}), table_of({{"text", words("b")}}),
                      table_of({{"text", words("c")}})}}) ==
        "[[alert]]\ntext = \"a\"\n\n[[alert]]\ntext = \"b\"\n\n[[alert]]\ntext = \"c\"\n");
  CHECK(set("trim.ears.blade = \"10\"\nx = 1\n", "trim", words("none")) ==
        "trim = \"none\"\nx = 1\n");
}

TEST_CASE("a value that would be more than a value is refused", "[edit]") {
  const std::string text = "a = 2026-01-01\nb = 1\n";
  EditedText file = good(text, nullptr);
  for (const char* written :
       {"2026-01-02\nc = 2", "2026-01-02 # remark", "2026-02-30", "\"x\"", ""}) {
    INFO(written);
    CHECK_FALSE(file.set(path("a"), {EditDate{written}}));
    CHECK(file.text() == text);
    CHECK_FALSE(file.fault().empty());
  }
  CHECK_FALSE(file.set(path("a"), words("\xFF")));
  CHECK_FALSE(file.set(path("b/c"), whole(1)));
  CHECK_FALSE(file.set(path("d/0"), whole(1)));
  CHECK_FALSE(file.append(path("b"), whole(1)));
  CHECK(file.text() == text);
  const EditedText broken("a = \n");
  CHECK_FALSE(broken.good());
  CHECK_FALSE(broken.fault().empty());
}

TEST_CASE("several edits are made or none", "[edit]") {
  EditedText file = good("[pet]\nname = \"a\"\n");
  const std::vector<Edit> edits{{Edit::Op::set, path("pet/name"), words("b")},
                                {Edit::Op::remove, path("pet/coat")},
                                {Edit::Op::set, path("pet/breed"), words("c")}};
  CHECK(file.apply(edits) == 1U);
  CHECK(file.text() == "[pet]\nname = \"a\"\n");
  CHECK(file.fault() == "there is no pet.coat to take out");
  CHECK_FALSE(file.apply(std::vector{edits[0], edits[2]}).has_value());
  CHECK(file.text() == "[pet]\nname = \"b\"\nbreed = \"c\"\n");
}

TEST_CASE("from a place in the text to its path, and back", "[edit]") {
  const EditedText file = good(
      "\xEF\xBB\xBFx.y = 1\n[pet] # p\nname = \"🐶\" # n\n\n[[alert]]\nlevel = \"a\"\n[[alert]]\n"
      "avoid = [\n  \"ears\",\n  \"tail\",\n]\n[trim]\nears = { leave = \"1 in\", a.b = [1, 2] "
      "}\n");
  const auto at = [&](std::uint32_t line, std::uint32_t column) {
    return to_text(file.path_at({line, column}));
  };
  CHECK(at(1, 1) == "x");
  CHECK(at(1, 3) == "x.y");
  CHECK(at(2, 2) == "pet");
  CHECK(at(3, 9) == "pet.name");
  CHECK(at(3, 14) == "pet.name");
  CHECK(at(4, 1) == "pet");
  CHECK(at(7, 3) == "alert[2]");
  CHECK(at(10, 4) == "alert[2].avoid[2]");
  CHECK(at(13, 12) == "trim.ears.leave");
  CHECK(at(13, 36) == "trim.ears.a.b[2]");
  const auto place = file.where(path("alert/1/avoid/1"));
  REQUIRE(place);
  CHECK(place->begin == Position{10, 3});
  CHECK(place->end == Position{10, 9});
  const auto name = file.where(path("pet/name"));
  REQUIRE(name);
  CHECK(name->begin == Position{3, 1});
  CHECK(name->value_begin == Position{3, 8});
  CHECK(name->value_end == Position{3, 11});
  CHECK(file.where(path("trim/ears/a"))->begin == Position{13, 26});
  CHECK(file.where(path("alert/1"))->begin == Position{7, 1});
  CHECK_FALSE(file.where(path("alert/2")));
}
}  // namespace furnish::test
