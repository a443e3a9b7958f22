#include <fmt/format.h>

#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>

#include "app/program.h"
#include "share.h"

// A client list becomes pets' files: shown first, written when it is said so, each once.

namespace furnish::test {
namespace {
namespace fs = std::filesystem;

/// A new salon, and lists beside it.
class ImportDesk {
 public:
  ImportDesk() { REQUIRE(furnish("new salon " + salon()).status == 0); }
  std::string salon() const { return folder_.path("salon"); }
  std::string pet(const std::string& key) const {
    return bytes_of(salon() + "/pets/" + key + ".toml");
  }
  std::vector<std::string> pets() const { return files_below(salon() + "/pets"); }
  void put_pet(const std::string& key, const std::string& text) const {
    put(folder_, "salon/pets/" + key + ".toml", text);
  }
  ToolOutput import(const std::string& bytes, const std::string& options = {}) const {
    put(folder_, "clients.csv", bytes);
    return furnish(fmt::format("import {} --salon {} --on 2026-11-24 {}",
                               folder_.path("clients.csv"), salon(), options));
  }
  ToolOutput run(const std::string& arguments) const {
    return furnish(fmt::format("{} --salon {} --on 2026-11-24", arguments, salon()));
  }
  std::string list() const { return folder_.path("clients.csv"); }
  ToolOutput check() const { return furnish("check " + salon() + " --on 2026-11-24 --strict"); }

 private:
  TemporaryFolder folder_;
};

constexpr const char* three =
    "Dog,Owner,Phone,Weight,No\n"
    "Lady Jane,R. Adeyemi,0555 01,4.6 kg,1\n"
    "Rex,A. Bo,(0555) 02-03,,2\n"
    "Rex,C. Du,0555 04,12,3\n";
}  // namespace

TEST_CASE("import shows what a list would become, and writes when it is told to", "[import]") {
  const ImportDesk desk;
  const auto shown = desk.import(three);
  CHECK(shown.status == 0);
  CHECK(shown.err == "");
  CHECK(has(shown.out, "UTF-8, with commas, 3 lines under its headers\n"));
  CHECK(has(shown.out, "   4 Weight  its weight, in kg unless it says\n"));
  CHECK(has(shown.out, "   5 No      kept as a comment\n"));
  CHECK(has(shown.out, "/pets/lady-jane.toml\n    # Imported from clients.csv, line 2: "));
  CHECK(has(shown.out, "\n    weight = \"4.6 kg\"\n"));
  CHECK(has(shown.out, "\n3 new pets\nNothing is written yet."));
  CHECK(desk.pets().empty());

  const auto written = desk.import(three, "--write");
  CHECK(written.status == 0);
  CHECK(written.err == "");
  CHECK(written.out == "3 pets written\n");
  CHECK(desk.pets() == std::vector<std::string>{"lady-jane.toml", "rex-du.toml", "rex.toml"});
  const std::string rex = desk.pet("rex");
  CHECK(rex.starts_with("#:schema ../schemas/pet.json\n# Imported from clients.csv, line 3: "));
  CHECK(has(rex, "phone = \"(0555) 02-03\"\n"));  // as it was written
  CHECK(desk.check().status == 0);
  CHECK(desk.run("card rex -o - --format text").status == 0);
}

TEST_CASE("import says that last visits are only remarks, and how they are recorded", "[import]") {
  const ImportDesk desk;
  const auto said = desk.import("Dog,Last Visit\nRex,13/10/2026\n", "--write");
  CHECK(said.status == 0);
  CHECK(has(said.out,
            "1 pet written\nLast visits are only a remark in each file, which no sheet "
            "counts from: `furnish new visit NAME --on DAY` begins one; with "
            "`unfinished` taken out it counts.\n"));
  CHECK(has(desk.pet("rex"), "# Last Visit: 13/10/2026\n"));
  CHECK(furnish("new visit rex --salon " + desk.salon() + " --on 2026-10-13").status == 0);
  CHECK(desk.check().status == 1);  // begun weeks ago, and nobody said that it was done
  const std::string path = desk.salon() + "/visits/rex/2026-10-13.toml";
  std::string visit = bytes_of(path);
  const std::size_t line = visit.find("unfinished");
  REQUIRE(line != std::string::npos);
  visit.erase(line, visit.find('\n', line) + 1 - line);
  std::ofstream(path, std::ios::binary) << visit;
  CHECK(desk.check().status == 0);
}

TEST_CASE("what was made before is not made again, whatever a person made of it", "[import]") {
  const ImportDesk desk;
  REQUIRE(desk.import(three, "--write").status == 0);
  const std::string rex = desk.pet("rex");
  desk.put_pet("rex", rex.substr(0, rex.find("[pet]")) + "[pet]\nname = \"Rexford\"\n");
  // Without the line about its making, by name and owner; with another number, asked about.
  desk.put_pet("lady-jane", "[pet]\nname=\"LADY JANE\"\n[owner]\nname=\"R. Adeyemi\"\n");
  const auto before = desk.pets();
  const auto again = desk.import(three, "--write");
  CHECK(again.status == 0);
  CHECK(again.out == "0 pets written; 3 there already\n");
  CHECK(desk.pets() == before);
  CHECK(has(desk.pet("rex"), "Rexford"));

  const auto changed = desk.import(
      "Dog,Owner,Phone\nLady Jane,R. Adeyemi,0555 99\nRex,C. Du,0555 98\nRex,,\n"
      "Rex,E. Fu,0555 05\nRex,E. Fu,0555-05\n",
      "--write");
  CHECK(changed.status == 0);
  CHECK(changed.out ==
        "1 pet written; 1 there already; 2 perhaps there already, not made; 1 twice in the list, "
        "made once\n");
  CHECK(has(changed.err, "clients.csv:3:1: warning: this may be the pet of pets/rex-du.toml"));
  CHECK(has(changed.err, "clients.csv:6:1: warning: the same name, owner and number as another"));
  CHECK(has(desk.pet("rex-fu"), "0555 05"));
}

TEST_CASE("import never writes over a file, nor where it cannot see what is there", "[import]") {
  const ImportDesk desk;
  desk.put_pet("rex", "[pet]\nname = \"Another\"\n");
  CHECK(desk.import(three, "--write").status == 0);
  CHECK(desk.pet("rex") == "[pet]\nname = \"Another\"\n");
  CHECK(has(desk.pet("rex-bo"), "A. Bo"));
  fs::create_directory(desk.salon() + "/pets/folder.toml");
  const auto blind = desk.import(std::string(three) + "Flo,G. Hu,1,,\n", "--write");
  CHECK(blind.status == 1);
  CHECK(has(blind.err, "cannot be read"));
  CHECK_FALSE(fs::exists(desk.salon() + "/pets/flo.toml"));
  const auto nowhere = furnish("import " + desk.list() + " --salon " + desk.salon() + "/no");
  CHECK(nowhere.status == 1);
  CHECK(has(nowhere.err, "furnish new salon"));
  CHECK(desk.run("import nothing.csv").status == 1);
  CHECK(desk.run("import " + desk.list() + " --columns nmae=1").status == 2);
}

TEST_CASE("a list is read in each encoding and with each separator", "[import]") {
  // The outside reader's own way of writing them.
  const auto encoded = [](const std::string& name, char separator) {
    const auto made = run(fmt::format(
        "python3 -c \"import sys; sys.stdout.buffer.write('Dog;Owner\\r\\nZoë;José Ünal\\r\\n'"
        ".replace(';', chr({})).encode('{}'))\"",
        static_cast<int>(separator), name));
    REQUIRE(made.status == 0);
    return made.out;
  };
  const ImportDesk desk;
  for (const auto& [name, told] :
       {std::pair{"utf-8", "UTF-8"}, std::pair{"utf-8-sig", "UTF-8"}, std::pair{"utf-16", "UTF-16"},
        std::pair{"utf-16-le", "UTF-16"}, std::pair{"utf-16-be", "UTF-16, high byte first"},
        std::pair{"cp1252", "Windows-1252"}}) {
    for (const char separator : {',', ';', '\t'}) {
      INFO(name << " " << separator);
      const auto ran = desk.import(encoded(name, separator));
      CHECK(ran.status == 0);
      CHECK(has(ran.out, std::string("clients.csv: ") + told + ", with "));
      CHECK(has(ran.out, "name = \"Zoë\"\n"));
      CHECK(has(ran.out, "name = \"José Ünal\"\n"));
      if (!long_run() && separator == ';') break;
    }
  }
}

TEST_CASE("lines with faults make no file and status 1, the others are made", "[import]") {
  const ImportDesk desk;
  const auto ran = desk.import("Dog,Weight\nRex,big\nFlo,4\n", "--write");
  CHECK(ran.status == 1);
  CHECK(has(ran.err, "clients.csv:2:5: error: its weight: expected a weight"));
  CHECK(has(ran.out, "1 pet written; 1 line not used\n"));
  CHECK(desk.pets() == std::vector<std::string>{"flo.toml"});
  const auto kept = desk.import("Dog,Weight\nRex,big\nFlo,4\n", "--write --columns comment=2");
  CHECK(kept.status == 0);
  CHECK(has(desk.pet("rex"), "# Weight: big\n"));
}

TEST_CASE("a run that is killed leaves whole files, and the next makes the rest", "[import]") {
  const TemporaryFolder folder;
  const std::string salon = folder.path("salon"), list = folder.path("clients.csv");
  REQUIRE(furnish("new salon " + salon).status == 0);
  std::string text = "Dog,Owner,Ref\n";
  constexpr std::size_t pets = 1500;
  for (std::size_t i = 0; i < pets; ++i) text += fmt::format("Rex {0},Owner {0},{0}\n", i);
  put(folder, "clients.csv", text);
  run(
      fmt::format("sh -c '{} import {} --salon {} --write & pid=$!; "
                  "until ls {}/pets/* >/dev/null 2>&1; do :; done; kill -KILL $pid; wait $pid'",
                  FURNISH_PROGRAM, list, salon, salon));
  const auto made = files_below(salon + "/pets");
  CHECK_FALSE(made.empty());
  for (const std::string& name : made) {
    CHECK(bytes_of(salon + "/pets/" + name).find("[owner]\nname = \"Owner ") != std::string::npos);
  }
  const auto rest = furnish(fmt::format("import {} --salon {} --write", list, salon));
  CHECK(rest.status == 0);
  const std::string already =
      made.size() == pets ? "" : fmt::format("{} pets written; ", pets - made.size());
  CHECK(has(rest.out, already + fmt::format("{} there already\n", made.size())));
  CHECK(files_below(salon + "/pets").size() == pets);
}

TEST_CASE("new pet takes a line of a client list", "[import]") {
  const ImportDesk desk;
  REQUIRE(desk.import(three).status == 0);
  const auto one = desk.run("new pet --from " + desk.list() + " 'lady jane'");
  CHECK(one.status == 0);
  CHECK(one.err == "");
  const std::string jane = desk.pet("lady-jane");
  CHECK(has(jane, "\nweight = \"4.6 kg\""));
  CHECK(has(jane, "\n# breed = "));  // and every other key, as a comment
  CHECK(has(jane, "# No: 1\n"));
  const auto which = desk.run("new pet --from " + desk.list() + " Rex");
  CHECK(which.status == 1);
  CHECK(has(which.err, "the list has 2 pets \"Rex\""));
  CHECK(has(which.err, "hint: say whose: \"Rex A. Bo\""));
  CHECK(desk.run("new pet --from " + desk.list() + " 'Rex A. Bo'").status == 0);
  CHECK(has(desk.run("new pet --from " + desk.list() + " Lady").err, "the list has no pet"));
  CHECK(desk.check().status == 0);
  // They are not made again.
  CHECK(desk.import(three, "--write").out == "1 pet written; 2 there already\n");
}

TEST_CASE("python's csv and tomllib find in the files what they put into the list", "[import]") {
  // Random values with quotes, separators, ends of lines and letters of several bytes.
  const TemporaryFolder folder;
  fs::create_directory(folder.path("lists"));
  const std::string script = folder.file("agree.py", R"py(
import csv, glob, os, random, subprocess, sys, tomllib
program, folder, cases = sys.argv[1], sys.argv[2], int(sys.argv[3])
r = random.Random(7)
piece = lambda: r.choice(['shy', 'snaps', '"', '""', ',', ';', '\t', 'häß', '犬', "'", '\\', '#', '=', '\n', '\r\n', ' ', '5"'])
def words(n):
    while True:
        s = ''.join(piece() for _ in range(r.randint(1, n))).strip()
        if any(c.isalpha() for c in s): return s
flat = lambda s: ' / '.join(p.strip(' \t') for p in s.replace('\r\n', '\n').split('\n') if p.strip(' \t')).replace('\t', ' ')
for case in range(cases):
    salon, path = f'{folder}/salon{case}', f'{folder}/list{case}.csv'
    subprocess.run([program, 'new', 'salon', salon], check=True, stdout=subprocess.DEVNULL)
    rows = [[f'Dog {i}', words(8), words(4), f'{i:04}-{r.randint(0, 9)}'] for i in range(60)]
    with open(path, 'w', newline='', encoding=r.choice(['utf-8', 'utf-8-sig', 'utf-16'])) as f:
        w = csv.writer(f, delimiter=r.choice(',;\t'), lineterminator=r.choice(['\n', '\r\n']),
                       quoting=r.choice([csv.QUOTE_MINIMAL, csv.QUOTE_ALL, csv.QUOTE_NONNUMERIC]))
        w.writerows([['Dog', 'Notes', 'Owner', 'Phone']] + rows)
    ran = subprocess.run([program, 'import', path, '--salon', salon, '--write'], capture_output=True, text=True)
    assert ran.returncode == 0, ran.stderr + ran.stdout
    made = {}
    for file in glob.glob(f'{salon}/pets/*.toml'):
        with open(file, 'rb') as f: pet = tomllib.load(f)
        made[pet['pet']['name']] = pet
    assert len(made) == len(rows)
    for name, note, owner, phone in rows:
        pet = made[name]
        said = pet['alert'][0]['text']
        assert said in (flat(note), 'Notes: ' + flat(note)), (said, note)
        assert pet['owner'] == {'name': flat(owner), 'phone': phone}, (pet, owner)
print('agreed')
)py");
  const auto ran = run(fmt::format("python3 {} {} {} {}", script, test::quoted(FURNISH_PROGRAM),
                                   folder.path("lists"), long_run() ? 40 : 6));
  INFO(ran.err);
  CHECK(ran.out == "agreed\n");
}

TEST_CASE("a decimal comma is one weight, and of two pets nobody knows whose", "[import]") {
  const ImportDesk desk;
  for (const char* const weight : {"\"4,6\"", "\"12,5\"", "12.5"}) {
    const auto ran =
        desk.import(std::string("Dog;Owner;Weight (kg)\nTic & Tac;I J;") + weight + "\n");
    INFO(weight << ran.out);
    CHECK(ran.status == 1);
    CHECK(has(ran.err, "this line has 2 pets, and of this 1: whose is it?"));
  }
  const auto both = desk.import("Dog;Owner;Weight (kg)\nTic & Tac;I J;4.6 / 6\n", "--write");
  CHECK(both.status == 0);
  CHECK(has(desk.pet("tic"), "weight = \"4.6 kg\""));
  CHECK(has(desk.pet("tac"), "weight = \"6 kg\""));
  const auto one = desk.import("Dog;Owner;Weight (kg)\nRex;A. Bo;12,5\n", "--write");
  CHECK(one.status == 0);
  CHECK(has(desk.pet("rex"), "weight = \"12.5 kg\""));
}

TEST_CASE("a column under a vaccination's name is told why it is a remark", "[import]") {
  const ImportDesk desk;
  std::ofstream(desk.salon() + "/salon.toml")
      << "[vaccinations]\nrabies = { required = true }\nkennel-cough = {}\n";
  const std::string list = "Dog,Owner,Rabies,Kennel-cough\nRex,A. Bo,2026-01-02,2026-01-03\n";
  const auto ran = desk.import(list);
  CHECK(has(ran.out, "Column 3, \"Rabies\", is only a remark"));
  CHECK(has(ran.out, "--columns rabies=3"));
  CHECK(has(ran.out, "Column 4, \"Kennel-cough\", is only a remark"));
  const auto told = desk.import(list, "--columns rabies=3 --write");
  CHECK_FALSE(has(told.out, "\"Rabies\", is only a remark"));
  CHECK(has(desk.pet("rex"), "rabies = 2026-01-02"));
}

TEST_CASE("a pet of a list whose name gives no file makes none", "[import]") {
  const ImportDesk desk;
  desk.import("Dog,Owner\n...,A. Bo\n");
  const auto ran = desk.run("new pet --from " + desk.list() + " ...");
  CHECK(ran.status == 1);
  CHECK(has(ran.err, "\"...\" gives no name of a file"));
  CHECK(desk.pets().empty());
}
}  // namespace furnish::test
