#include "spec/writer.h"

#include <catch2/catch.hpp>

#include <algorithm>

#include "base/text.h"
#include "model/for_everyone.h"
#include "share.h"
#include "spec/made_pet.h"
#include "spec/said.h"
#include "spec/toml_text.h"

// That what is written can be read, and holds what the pet held: checked against the reader, whose
// own tests hold it to the format. TOML's rules of strings and keys: toml.io, version 1.0.0.

namespace furnish::test {
namespace {
const std::string source = FURNISH_SOURCE_DIR;

Pet written_and_read(const Pet& pet, const std::string& text, Desk& desk, const Salon* salon) {
  INFO(text);
  const auto read = read_pet_text(desk.context(), pet.key + ".toml", text, salon, desk.styles());
  CHECK(desk.said() == "");
  REQUIRE(read);
  return *read;
}

/// A style's and a salon's files beside the generated pets.
const FileMap house{
    {"house/plain.toml", R"([style]
name = "Plain"
[trim]
body = { comb = "13 mm" }
legs = { shears = "curved", leave = "20 mm" }
"left ear" = { blade = "8 1/2", lay = "against" }
[finish]
tail = "plume"
)"},
    {"house/one.toml", "[style]\nname = \"One\"\n[trim]\nears = { brush = true }\n"}};
constexpr const char* salon_text = R"([salon]
name = "A"
[products.oat]
name = "Oat bath"
kind = "shampoo"
dilution = "10:1"
dwell = "4 min"
[products."ten to one"]
contains = ["coconut"]
mixed = 2026-11-01
)";

std::vector<Style> styles_of(Desk& desk) {
  std::vector<Style> out;
  for (const std::string& key : desk.styles().keys()) out.push_back(*desk.styles().find(key, {}));
  return out;
}

void check_short(const Pet& pet) {
  const std::string text = trim_toml(pet);
  Desk bare;
  const Pet read = written_and_read(pet, text, bare, nullptr);
  INFO(text);
  CHECK(same(work(read.trim), work(pet.trim)));
  CHECK(read.name.value == pet.name.value);
  CHECK(read.coat == pet.coat);
  CHECK(std::ranges::equal(read.finish, pet.finish, [](const auto& a, const auto& b) {
    return a.part == b.part && a.words == b.words;
  }));
}

template <typename Each>
void for_each_sample(Each each) {
  for (const std::string& folder :
       {source + "/samples/lantern-street", source + "/samples/us-corner"}) {
    const DiskFiles files;
    SourceSet sources;
    DiagnosticSink sink;
    const ReadContext context{files, sources, sink};
    StyleLibrary styles(context, source + "/styles", folder + "/styles");
    const auto salon = read_salon(context, folder + "/salon.toml");
    REQUIRE(salon);
    for (const std::string& name : files.toml_files(folder + "/pets")) {
      const auto pet = read_pet(context, folder + "/pets/" + name, &*salon, styles);
      REQUIRE(pet);
      each(*pet, [&](const std::string& text) {
        return read_pet_text(context, name, text, &*salon, styles);
      });
      CHECK(said(sink, sources) == "");
    }
  }
}

/// Every field of the staff filled with words that can be found again.
Pet marked_pet() {
  Pet pet;
  pet.name.value = "Rex";
  pet.owner = {"Owner",
               "MARK-phone",
               "MARK-mail",
               "qaa",
               {"MARK-address"},
               {"MARK-collects"},
               {"MARK-vet", "MARK-practice"}};
  Alert hidden;
  hidden.text = "MARK-alert";
  hidden.action = "MARK-do";
  hidden.avoid = {{{Region::hocks, Side::left}, {}}};
  hidden.allergens = {{"MARK-allergen", {}}};
  Alert shown;
  shown.text = "open alert";
  shown.audience = Audience::everyone;
  pet.alerts = {hidden, shown, hidden};
  pet.handling = {"MARK-hold",    "MARK-lift", "MARK-dryer", "MARK-stop", std::chrono::minutes(41),
                  {"MARK-comes"}, {},          {},           {},          {}};
  pet.health_notes = "MARK-health";
  pet.accepted = {{{RuleId::senior, {}}, "MARK-reason", *make_date(2026, 1, 1), {}}};
  return pet;
}
}  // namespace

TEST_CASE("every sample pet reads back as it was written", "[writer]") {
  std::size_t pets = 0;
  for_each_sample([&](const Pet& pet, const auto& read) {
    const std::string text = pet_toml(pet);
    INFO(text);
    auto again = read(text);
    REQUIRE(again);
    again->key = pet.key;
    CHECK(differences(pet, *again).empty());
    REQUIRE(read(pet_toml(for_everyone(pet))));
    check_short(pet);
    ++pets;
  });
  CHECK(pets > 15);
}

TEST_CASE("generated pets read back as they were written", "[writer]") {
  Desk desk(house);
  const auto salon = desk.salon(salon_text);
  REQUIRE(salon);
  PetMaker maker(20261124, *salon, styles_of(desk));
  const std::size_t pets = share_of(1000);
  std::size_t trims = 0, sided = 0;
  for (std::size_t i = 0; i < pets; ++i) {
    const Pet pet = maker.pet();
    Desk each(house);
    const std::string text = pet_toml(pet);
    const Pet read = written_and_read(pet, text, each, &*salon);
    INFO(text);
    REQUIRE(differences(pet, read) == std::vector<std::string>());
    check_short(pet);
    Desk third(house);
    written_and_read(pet, pet_toml(for_everyone(pet)), third, &*salon);
    trims += pet.trim.empty() ? 0 : 1;
    sided += std::ranges::any_of(
        pet.trim, [](const TrimPart& part) { return part.place.side != Side::both; });
  }
  CHECK(trims > pets / 2);
  CHECK(sided > pets / 5);
}

TEST_CASE("no field of the staff is in what everyone may read", "[writer]") {
  const Pet pet = marked_pet();
  const std::string staff = pet_toml(pet);
  for (const char* mark :
       {"MARK-phone",    "MARK-mail",     "qaa",         "MARK-address", "MARK-collects",
        "MARK-vet",      "MARK-practice", "MARK-alert",  "MARK-do",      "left-hock",
        "MARK-allergen", "MARK-hold",     "MARK-lift",   "MARK-dryer",   "MARK-stop",
        "41 min",        "MARK-comes",    "MARK-health", "senior",       "MARK-reason",
        "[[accept]]",    "[handling]"}) {
    INFO(mark);
    CHECK(staff.find(mark) != std::string::npos);
    CHECK(pet_toml(for_everyone(pet)).find(mark) == std::string::npos);
    CHECK(trim_toml(pet).find(mark) == std::string::npos);
  }
  CHECK(pet_toml(for_everyone(pet)) == R"([pet]
name = "Rex"

[owner]
name = "Owner"

[[alert]]
level = "notice"
text  = "open alert"
for   = "everyone"
)");
  CHECK(trim_toml(pet) == "[pet]\nname=\"Rex\"\n");
}

TEST_CASE("of generated pets, everyone's text says what it would of a pet without staff fields",
          "[writer]") {
  Desk desk(house);
  const auto salon = desk.salon(salon_text);
  PetMaker maker(7, *salon, styles_of(desk));
  for (std::size_t i = 0; i < share_of(300); ++i) {
    const Pet pet = maker.pet();
    Pet open = pet;
    open.owner = {};
    open.owner.name = pet.owner.name;
    std::erase_if(open.alerts, [](const Alert& one) { return one.audience == Audience::staff; });
    open.handling = {};
    open.health_notes.clear();
    open.photo.clear();
    open.accepted.clear();
    REQUIRE(pet_toml(for_everyone(pet)) == pet_toml(open));
    REQUIRE(trim_toml(pet) == trim_toml(open));
  }
}

TEST_CASE("strings and keys are escaped as TOML asks", "[writer]") {
  CHECK(toml_text::quoted("a \"b\" \\ c\t\n\x01\x7F é") ==
        "\"a \\\"b\\\" \\\\ c\\t\\n\\u0001\\u007F é\"");
  CHECK(toml_text::key("left-hock_2") == "left-hock_2");
  CHECK(toml_text::key("left hock") == "\"left hock\"");
  CHECK(toml_text::key("") == "\"\"");
  CHECK(toml_text::key("a.b") == "\"a.b\"");
}

TEST_CASE("quantities are written exactly, in the unit that says them best", "[writer]") {
  using toml_text::Form;
  using toml_text::quantity;
  CHECK(quantity(13_mm) == "\"13 mm\"");
  CHECK(quantity(Length::inches(1, 2)) == "\"1/2 in\"");
  CHECK(quantity(Length::inches(1, 2), Form::short_form) == "\"1/2in\"");
  CHECK(quantity(Length::inches(5, 4), Form::short_form) == "\"31.75mm\"");
  CHECK(quantity(Length::inches(5, 4)) == "\"1 1/4 in\"");
  CHECK(quantity(Length::inches(1)) == "\"1 in\"");
  CHECK(quantity(0.001_mm) == "\"0.001 mm\"");
  CHECK(quantity(0_mm) == "\"0 mm\"");
  CHECK(quantity(12.34_mm, Form::short_form) == "\"12.34mm\"");
  CHECK(quantity(Mass::kg(4.6)) == "\"4.6 kg\"");
  CHECK(quantity(Mass::pounds(10 + 3.0 / 16)) == "\"10 lb 3 oz\"");
  CHECK(quantity(Mass::pounds(12.4)) == "\"12.4 lb\"");
  CHECK(quantity(Mass::micrograms(1)) == "\"0.000000001 kg\"");
  CHECK(quantity(std::chrono::seconds(90)) == "\"90 s\"");
  CHECK(quantity(std::chrono::seconds(600)) == "\"10 min\"");
  CHECK(quantity(CalendarSpan(std::chrono::days(7))) == "\"1 week\"");
  CHECK(quantity(CalendarSpan(std::chrono::days(30))) == "\"30 days\"");
  CHECK(quantity(Dilution{1, 1}) == "\"neat\"");
  CHECK(quantity(Dilution{1, 11}) == "\"10:1\"");
  CHECK(quantity(Dilution{1, 8.5}) == "\"7.5:1\"");
  CHECK(toml_text::blade(*find_blade("8.5")) == "\"8 1/2\"");
  CHECK(toml_text::blade(*find_blade("3¾"), Form::short_form) == "\"3.75\"");
  for (const Blade& one : blades()) {
    for (const Form form : {Form::plain, Form::short_form}) {
      std::string name = toml_text::blade(one, form);
      CHECK(find_blade(name.substr(1, name.size() - 2)) == &one);
    }
  }
}

TEST_CASE("the short trim names groups where that is shorter, and what differs beside them",
          "[writer]") {
  Desk desk;
  const auto pet = desk.pet(R"([pet]
name = "Bó"
coat = "curly"
[trim]
neck = { comb = "13 mm" }
shoulders = { comb = "13 mm" }
back = { comb = "13 mm" }
sides = { comb = "13 mm" }
loin = { comb = "13 mm" }
rump = { blade = "8 1/2", lay = "against" }
hocks = { brush = true }
"left hock" = { shears = "thinning", leave = "1/2 in", note = "sore \"heel\"" }
[finish]
feet = "round"
)");
  REQUIRE(pet);
  CHECK(trim_toml(*pet) == R"([pet]
name="Bó"
coat="curly"
[trim]
body.comb="13mm"
rump={blade="8.5",lay="against"}
hock.brush=true
left-hock={shears="thinning",leave="1/2in",note="sore \"heel\""}
[finish]
feet="round"
)");
}

TEST_CASE("a trim that a program changed is written place by place", "[writer]") {
  Desk desk;
  auto pet = desk.pet("[pet]\nname = \"R\"\n[trim]\nlegs = { brush = true }\n");
  REQUIRE(pet);
  pet->own_trim[0].entry.note = "short";  // front legs; "legs" no longer says it
  const std::string text = pet_toml(*pet);
  CHECK(text.find("front-legs = { brush = true, note = \"short\" }") != std::string::npos);
  const auto read = Desk().pet(text);
  REQUIRE(read);
  CHECK(read->own_trim.size() == 3);
  CHECK(read->own_trim[1].entry.note.empty());
}

TEST_CASE("bytes of the short trim of each sample", "[writer]") {
  std::string sizes;
  std::size_t largest = 0;
  for_each_sample([&](const Pet& pet, const auto&) {
    const std::size_t size = trim_toml(pet).size();
    sizes += pet.key + " " + std::to_string(size) + "\n";
    largest = std::max(largest, size);
  });
  INFO(sizes);
  // ISO/IEC 18004, table 7: a version 40 code holds 2,331 bytes at error level M.
  CHECK(largest <= 2331);
}
}  // namespace furnish::test
