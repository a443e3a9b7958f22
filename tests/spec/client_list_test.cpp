#include "spec/client_list.h"

#include <algorithm>
#include <array>
#include <catch2/catch.hpp>

#include "base/text.h"
#include "spec/client_dates.h"
#include "spec/client_texts.h"
#include "spec/file_kinds.h"

namespace furnish::test {
namespace {
constexpr Date today = std::chrono::sys_days(std::chrono::year(2026) / 11 / 24);

/// A list read as it stands, and what was said of it.
struct Read {
  std::optional<ClientList> list;
  std::string said;
  std::string file(std::size_t i) const {
    return known_file(*find_file_kind("pet"), list.value().pets.at(i).facts, "", "");
  }
};

Read read(const std::string& text, ClientListRequest request = {}, Units units = Units::metric) {
  const MemoryFiles files({{"clients.csv", text}});
  SourceSet sources;
  DiagnosticSink sink;
  Salon salon;
  salon.units = units;
  Read out;
  out.list = read_client_list({files, sources, sink}, "clients.csv", request, salon, today);
  for (const Diagnostic& one : in_reading_order(sink.all())) out.said += to_text(one, sources);
  return out;
}

bool says(const Read& read, std::string_view words) {
  return read.said.find(words) != std::string::npos;
}

ClientListRequest choosing(std::initializer_list<std::string_view> choices) {
  ClientListRequest out;
  std::string fault;
  for (const std::string_view one : choices) {
    out.columns.push_back(parse_column_choice(one, fault).value());
  }
  return out;
}

using Facts = std::vector<ClientFact>;
Facts facts(const std::string& headers) {
  const Read one = read(headers + "\n" + "Rex\n");
  Facts out;
  if (one.list) {
    for (const ClientColumn& column : one.list->columns.columns) out.push_back(column.fact);
  }
  return out;
}
}  // namespace

// Headers as people of each language head such lists; common practice, no source.
TEST_CASE("columns are known by their headers in seven languages", "[clients]") {
  using enum ClientFact;
  CHECK(facts("Pet Name,Breed,Colour,Owner,Mobile,E-mail,D.O.B.,Weight (lbs),Notes,Vet,Ref") ==
        Facts{name, breed, colour, owner, phone, email, born, weight, note, vet, comment});
  CHECK(facts("Mascota;Raza;Dueño/a;Teléfono móvil;Fecha de nacimiento;Peso;Observaciones") ==
        Facts{name, breed, owner, phone, born, weight, note});
  CHECK(facts("Nom;Prénom;Nom du chien;Race;Téléphone;Code postal;Remarques;Né(e) le") ==
        Facts{last_name, first_name, name, breed, phone, address, note, born});
  CHECK(
      facts("Hundename;Rasse;Halter/in;Handy-Nr.;Straße;PLZ;Geb.-Datum;Gewicht in kg;Allergien") ==
      Facts{name, breed, owner, phone, address, address, born, weight, allergies});
  CHECK(facts("Nome do cão,Raça,Tutor(a),Telemóvel,Data de nascimento,Peso em kg,Alergias") ==
        Facts{name, breed, owner, phone, born, weight, allergies});
  CHECK(facts("Tên chó,Giống,Chủ nuôi,SĐT,Ngày sinh,Cân nặng (kg),Ghi chú,Địa chỉ") ==
        Facts{name, breed, owner, phone, born, weight, note, address});
  CHECK(facts("اسم الكلب,السلالة,اسم المالك,رقم الهاتف,تاريخ الميلاد,الوزن,ملاحظات") ==
        Facts{name, breed, owner, phone, born, weight, note});
}

TEST_CASE("a name is the pet's, unless another column is", "[clients]") {
  using enum ClientFact;
  CHECK(facts("Name,Breed") == Facts{name, breed});
  CHECK(facts("Name,Dog") == Facts{owner, name});
  CHECK(facts("NAME,OWNER") == Facts{name, owner});
  CHECK(facts("First name,Name,Dog") == Facts{first_name, last_name, name});
  const Read several = read("Client,Dog 1,Breed 1,Dog 2,Breed 2\nA. Bo,Rex,spitz,Flo,\nC,Max,,,\n");
  REQUIRE(several.list);
  REQUIRE(several.list->pets.size() == 3);
  CHECK(several.file(0) ==
        "[pet]\nname  = \"Rex\"\nbreed = \"spitz\"\n\n[owner]\nname = \"A. Bo\"\n");
  CHECK(several.file(1) == "[pet]\nname = \"Flo\"\n\n[owner]\nname = \"A. Bo\"\n");
}

TEST_CASE("a person says what columns are", "[clients]") {
  const Read bare = read("Rex,A. Bo,555\nFlo,C. Du,556\n", choosing({"name=1", "owner=2"}));
  REQUIRE(bare.list);
  CHECK_FALSE(bare.list->columns.headed);
  CHECK(bare.list->pets.size() == 2);
  const Read chosen =
      read("Name,Client,Tag\nA. Bo,Rex,7\n", choosing({"name=Client", "owner=1", "nothing=3"}));
  REQUIRE(chosen.list);
  CHECK(chosen.file(0) == "[pet]\nname = \"Rex\"\n\n[owner]\nname = \"A. Bo\"\n");
  CHECK(chosen.list->pets[0].remarks == "");
  const Read none = read("Rex,A. Bo\n");
  CHECK_FALSE(none.list);
  CHECK(says(none, "clients.csv:1:1: error: no column is headed as the pet's name"));
  const Read absent = read("Rex,A. Bo\n", choosing({"name=3"}));
  CHECK_FALSE(absent.list);
  CHECK(says(absent, "there is no column \"3\"; the list has 2"));
  std::string fault;
  CHECK_FALSE(parse_column_choice("nmae=2", fault));
  CHECK(fault.find("did you mean name?") != std::string::npos);
  CHECK_FALSE(parse_column_choice("name", fault));
}

TEST_CASE("all that a line says is in the pet's file or in a comment", "[clients]") {
  const Read one = read(
      "Pet,Coat,Sex,Owner,Phone,Mobile,Street,Town,Language,Vet,Vet phone,Health,Allergies,Bites,"
      "Every,Ref\n"
      "Rex,Curly,m,A. Bo,0555 01,+44 (0)555-02,1 Hill Road,Eastmere,español,Dr Ahn,555 9,"
      "\"Blind, deaf\",\"oats, wool\",yes,6 weeks,K-17\n");
  CHECK(one.said == "");
  REQUIRE(one.list);
  CHECK(one.file(0) ==
        "[pet]\nname = \"Rex\"\ncoat = \"curly\"\nsex  = \"m\"\n\n"
        "[owner]\nname     = \"A. Bo\"\nphone    = \"0555 01, +44 (0)555-02\"\n"
        "address  = [\"1 Hill Road\", \"Eastmere\"]\nlanguage = \"es\"\n"
        "vet      = { name = \"Dr Ahn\", phone = \"555 9\" }\n\n"
        "[[alert]]\nlevel     = \"warning\"\ntext      = \"Allergies: oats, wool\"\n"
        "allergens = [\"oats\", \"wool\"]\n\n"
        "[[alert]]\nlevel = \"warning\"\ntext  = \"Bites: yes\"\n\n"
        "[health]\nconditions = [\"blind\", \"deaf\"]\n\n[trim]\nvisit_every = \"6 weeks\"\n");
  CHECK(one.list->pets[0].remarks == "# Ref: K-17\n");
  const Read nothing = read("Pet,Notes,Allergies,Weight\nRex,-,none,N/A\n");
  CHECK(nothing.said == "");
  CHECK(nothing.file(0) == "[pet]\nname = \"Rex\"\n");
  const Read odd = read("Pet,Coat\nRex,fluffy\n");
  CHECK(says(odd, "clients.csv:2:5: warning: the coat \"fluffy\" is none that is known"));
  CHECK(odd.list->pets.at(0).remarks == "# Coat: fluffy\n");
  // A note may be longer than a text of a file.
  const std::string words(900, 'x');
  const Read lengthy = read("Pet,Notes\nRex,\"shy\nof " + words + " " + words + "\"\n");
  CHECK(lengthy.said == "");
  const std::string file = lengthy.file(0);
  // Every x of the note, one in the dog's name, one in each "text".
  const auto alerts = std::ranges::count(file, '[') / 2;
  CHECK(alerts == 5);
  CHECK(std::ranges::count(file, 'x') == 1800 + 1 + alerts);
}

TEST_CASE("weights are in the unit that they, their header or the salon has", "[clients]") {
  const auto weight = [](const std::string& header, const std::string& cell,
                         Units units = Units::metric) {
    const Read one = read("Pet;" + header + "\nRex;" + cell + "\n", {}, units);
    if (!one.list || one.list->pets.empty()) return std::string("fault");
    const std::string file = one.file(0);
    const std::size_t at = file.find("weight = \"");
    return at == std::string::npos ? "" : file.substr(at + 10, file.rfind('"') - at - 10);
  };
  CHECK(weight("Weight", "4.6 kg") == "4.6 kg");
  CHECK(weight("Weight", "10 lb 3 oz") == "10 lb 3 oz");
  CHECK(weight("Weight", "4.6") == "4.6 kg");
  CHECK(weight("Weight", "4,6") == "4.6 kg");
  CHECK(weight("Weight", "10", Units::us) == "10 lb");
  CHECK(weight("Weight (kg)", "10", Units::us) == "10 kg");
  CHECK(weight("Weight lbs", "10") == "10 lb");
  CHECK(weight("Weight", "12,500 kg") == "12.500 kg");
  CHECK(weight("Weight", "4,600 g") == "fault");  // 4.6 g or 4600 g
  CHECK(weight("Weight", "1,2,3") == "fault");
  CHECK(weight("Weight", "big") == "fault");
  CHECK(weight("Weight", "900") == "fault");
}

TEST_CASE("dates are read in the order that their column shows", "[clients]") {
  const auto born = [](std::initializer_list<std::string_view> cells) {
    std::string text = "Pet;Born\n";
    for (const std::string_view cell : cells) text += "Rex;" + std::string(cell) + "\n";
    return read(text);
  };
  const auto first = [&](std::initializer_list<std::string_view> cells) {
    const Read one = born(cells);
    if (!one.list || one.list->pets.empty()) return std::string("fault");
    const std::string file = one.file(0);
    return file.substr(file.find("born = ") + 7, 10);
  };
  CHECK(first({"03/04/2019", "24/11/2019"}) == "2019-04-03");
  CHECK(first({"03/04/2019", "11/24/2019"}) == "2019-03-04");
  CHECK(first({"2019-04-03"}) == "2019-04-03");
  CHECK(first({"2019/04/03 00:00:00"}) == "2019-04-03");
  CHECK(first({"03.04.2019"}) == "2019-04-03");
  CHECK(first({"03/03/2019"}) == "2019-03-03");
  CHECK(first({"3-4-19", "30-4-98"}) == "2019-04-03");
  CHECK(first({"24 de noviembre de 2019"}) == "2019-11-24");
  CHECK(first({"Nov 24th, 2019"}) == "2019-11-24");
  CHECK(first({"24. Dezember 2019"}) == "2019-12-24");
  CHECK(first({"1er août 2019"}) == "2019-08-01");
  CHECK(first({"ngày 24 tháng 11 năm 2019"}) == "2019-11-24");
  CHECK(first({"٢٤ نوفمبر ٢٠١٩"}) == "2019-11-24");
  // This year only the day-first reading has been already.
  CHECK(first({"05/12/2026", "03/04/2026"}) == "2026-05-12");
  const Read open = born({"03/04/2019", "05/06/2020"});
  CHECK_FALSE(open.list);
  CHECK(says(open,
             "clients.csv:2:5: error: nothing in this column says whether the day or the month "
             "of \"03/04/2019\" stands first"));
  CHECK(says(open, "--dates day-first"));
  const Read mixed = born({"24/11/2019", "11/24/2019"});
  CHECK_FALSE(mixed.list);
  CHECK(says(mixed, "clients.csv:3:5: error: the dates of this column are not all written in one"));
  CHECK(says(mixed, "clients.csv:2:5: note:"));
  ClientListRequest told;
  told.dates = DateOrder::day_first;
  const Read one_bad =
      read("Pet;Born\nRex;24/11/2019\nFlo;11/24/2019\nMax;43793\nPip;1/2/2027\n", told);
  REQUIRE(one_bad.list);
  CHECK(one_bad.list->pets.size() == 1);
  CHECK(one_bad.list->unusable == 3);
  CHECK(says(one_bad, "clients.csv:3:5: error: the day it was born: \"11/24/2019\" is no day"));
  CHECK(says(one_bad, "a spreadsheet's number of a day"));
}

TEST_CASE("a line that cannot be used is told with its place, the others are", "[clients]") {
  const Read one = read(
      "Pet,Breed,Notes\nRex,spitz,\"good\nboy\"\n,terrier,\nFlo,\"spaniel,\n"
      "Max & Pip,a/b/c,\nOtis,x,y,z\nAda,,\n");
  REQUIRE(one.list);
  CHECK(one.list->lines == 6);
  CHECK(one.list->unusable == 4);
  REQUIRE(one.list->pets.size() == 2);
  CHECK(one.list->pets[1].name == "Ada");
  CHECK(says(one, "clients.csv:4:1: error: this line names no pet"));
  CHECK(says(one, "clients.csv:5:5: error: this quote is not closed"));
  CHECK(says(one, "clients.csv:6:11: error: this line has 2 pets, and of this 3: whose is it?"));
  CHECK(says(one, "clients.csv:7:10: error: this line has 4 values, and the first has 3"));
  CHECK(says(read("Pet\nRex\x01\n"), "clients.csv:2:1: error:"));
  CHECK(says(read("Pet,Owner\nZoë,José Ünal\nRex,Jos\xE9\n"),
             "clients.csv:3:5: error: a letter here is lost: it is not UTF-8"));
  CHECK(says(read(std::string("Pet\nR\0x\n", 8)), "is no text"));
  CHECK(says(read(" \n\n"), "is empty"));
}

TEST_CASE("several pets in one value are taken apart, and that is said", "[clients]") {
  const Read two = read("Pet,Breed,Owner\nSalt & Pepper,spitz / poodle,A. Bo\n");
  REQUIRE(two.list);
  REQUIRE(two.list->pets.size() == 2);
  CHECK(two.list->pets[1].name == "Pepper");
  CHECK(two.file(1).find("poodle") != std::string::npos);
  CHECK(says(two, "warning: taken for 2 pets: Salt, Pepper"));
  // One breed, coat or day of birth is that of both; one weight is not.
  const Read both =
      read("Pet,Breed,Coat,Born\nBiscuit & Fern,spitz,double,13/04/2021\nOtis,,,14/04/2021\n");
  REQUIRE(both.list);
  REQUIRE(both.list->pets.size() == 3);
  for (const std::size_t i : {0U, 1U}) {
    CHECK(both.file(i).find("breed = \"spitz\"\ncoat  = \"double\"\nborn  = 2021-04-13") !=
          std::string::npos);
  }
  CHECK(says(read("Pet,Weight\nBiscuit & Fern,4 kg\n"), "of this 1: whose is it?"));
  ClientListRequest whole;
  whole.whole_names = true;
  const Read one = read("Pet,Breed\nSalt & Pepper,spitz\n", whole);
  REQUIRE(one.list->pets.size() == 1);
  CHECK(one.said == "");
}

TEST_CASE("a question that nobody answered is kept where somebody may be hurt", "[clients]") {
  const Read one = read("Pet,Breed,Bites?\nRex,?,?\nFlo,spitz,no\n");
  REQUIRE(one.list);
  REQUIRE(one.list->pets.size() == 2);
  CHECK(one.list->pets[0].remarks == "# Bites?: ?\n");
  CHECK(one.file(0) == "[pet]\nname = \"Rex\"\n");
  CHECK(one.list->pets[1].remarks == "");
}

TEST_CASE("a pet's mark is that of its name, owner, number and email alone", "[clients]") {
  const auto mark = [](const std::string& line) {
    return read("Pet,Owner,Phone,Notes\n" + line + "\n").list.value().pets.at(0).mark;
  };
  const std::string one = mark("Zoë,A. Bo,0555 01,shy");
  CHECK(one.size() == 16);
  CHECK(one == mark("ZOE,a. bo,0555-01,"));
  CHECK(one != mark("Zoë,A. Bo,0555 02,shy"));
  CHECK(one != mark("Zoë,A. Bu,0555 01,shy"));
}

// The first test vectors that the authors of FNV publish for its 64 bits; from memory.
TEST_CASE("marks are the sums that others make too", "[clients]") {
  CHECK(hash_of("") == "cbf29ce484222325");
  CHECK(hash_of("a") == "af63dc4c8601ec8c");
  CHECK(hash_of("foobar") == "85944171f73967e8");
}
}  // namespace furnish::test
