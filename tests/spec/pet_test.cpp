#include <catch2/catch.hpp>

#include "model/for_everyone.h"
#include "spec/said.h"

namespace furnish::test {
namespace {
/// The pet of the design's own example, whole.
constexpr const char* marlow = R"([pet]
name    = "Marlow"
breed   = "spitz cross"
coat    = "double"
colour  = "orange sable"
sex     = "male, neutered"
born    = 2021-04-09
weight  = "4.6 kg"
weighed = 2026-11-02
photo   = "photos/marlow.jpg"

[owner]
name = "R. Adeyemi"
phone = "555 0101"
language = "es"
collects = ["R. Adeyemi", "K. Adeyemi"]

[[alert]]
level = "warning"
text  = "Snaps when a rear foot is held."
do    = "Second person at the head. Rest after each foot."
avoid = ["left hock", "furnishings"]
allergens = ["oat"]
for   = "everyone"

[[alert]]
level = "notice"
text  = "Deaf."

[handling]
dryer = "force dryer, not on the head"
rest_every = "15 min"
comes_with = ["blue lead"]

[health]
conditions = ["seizures", "heart disease"]
notes = "tablets at noon"

[build]
nose = "short"
legs = "long"
ears = "semi-prick"
tail = "plume"
bone = "fine"

[vaccinations]
rabies = 2025-05-02
distemper = { on = 2025-06-01, booster = true }

[bath]
before      = "slicker brush and comb to the skin"
shampoo     = { product = "oat", dwell = "4 min" }
conditioner = { name = "nourish", dilution = "1 in 9", contains = ["coconut"], comb_through = "fine" }
others      = [{ name = "detangler", kind = "spray" }]
dry         = "towel"

[trim]
style = "natural-tidy"
visit_every = "8 weeks"
pads     = { blade = "30" }
chest    = { shears = "thinners", leave = "30 mm", lay = "across", note = "not rounded" }
body     = { brush = true }
hocks    = { comb = "1/2 in", over = "40" }
tail     = { strip = "hand" }

[finish]
ears = "straight edge"

[preferences]
likes = ["full breeches"]
dislikes = ["rounded ears"]
keep_under = { ears = "40 mm" }

[[accept]]
rule = "prebrush"
reason = "brushed at home"
signed = 2026-11-01
)";

const TrimPart& part(const Pet& pet, Place place) {
  const TrimPart* const found = find_part(pet.trim, place);
  REQUIRE(found != nullptr);
  return *found;
}

Salon salon_with_oat(Desk& desk) {
  auto salon = desk.salon(
      "[products.oat]\nname = \"oat shampoo\"\nkind = \"shampoo\"\n"
      "dilution = \"10:1\"\ndwell = \"6 min\"\ncontains = [\"oat\"]\n");
  REQUIRE(salon);
  return *salon;
}
}  // namespace

TEST_CASE("what is cut before the bath, and in which direction, where the file says so", "[pet]") {
  Desk desk;
  const auto pet = desk.pet(
      "[pet]\nname = \"Rex\"\n[bath]\nwhen = \"after clipping\"\n[trim]\n"
      "back = { blade = \"7F\", lay = \"with\", before_bath = true }\n"
      "belly = { blade = \"10\" }\n[handling]\nhold = \"under the chin\"\n"
      "[preferences]\ndislikes = [\"scent\"]\n");
  INFO(desk.said());
  REQUIRE(pet);
  CHECK(pet->bath.when->value == BathWhen::after_clipping);
  CHECK(part(*pet, {Region::back, Side::both}).entry.before_bath);
  CHECK(part(*pet, {Region::back, Side::both}).lay() == Lay::with);
  CHECK_FALSE(part(*pet, {Region::belly, Side::both}).entry.before_bath);
  CHECK_FALSE(part(*pet, {Region::belly, Side::both}).lay());
  CHECK(pet->handling.hold_span.begin.line == 9);
  CHECK(pet->preferences.dislikes_span.begin.line == 11);
  CHECK_FALSE(desk.pet("[pet]\nname = \"Rex\"\n[bath]\nwhen = \"later\"\n"));
}

TEST_CASE("every key of a pet comes out as it was written", "[pet]") {
  Desk desk(FileMap{
      {"house/natural-tidy.toml",
       "[style]\nname = \"Natural tidy\"\n[trim]\nbody = { brush = true }\nsanitary = { blade "
       "= \"10\" }\n[finish]\nears = \"natural\"\ntail = \"plume\"\n"}});
  const Salon salon = salon_with_oat(desk);
  const auto pet = desk.pet(marlow, &salon);
  REQUIRE(desk.said() == "");
  REQUIRE(pet);
  CHECK(pet->key == "rex");  // the file is called rex.toml
  CHECK(pet->name.value == "Marlow");
  CHECK(pet->breed == "spitz cross");
  CHECK(pet->coat == Coat::double_coat);
  CHECK(pet->colour == "orange sable");
  CHECK(pet->sex == "male, neutered");
  CHECK(pet->born->value == make_date(2021, 4, 9));
  CHECK(pet->weight->value == Mass::kg(4.6));
  CHECK(pet->weighed->value == make_date(2026, 11, 2));
  CHECK(pet->photo == "photos/marlow.jpg");
  CHECK(pet->owner.language == "es");
  CHECK(pet->owner.collects.size() == 2);
  CHECK(pet->handling.rest_every == std::chrono::minutes(15));
  CHECK(pet->handling.comes_with == std::vector<std::string>{"blue lead"});
  REQUIRE(pet->conditions.size() == 2);
  CHECK(pet->conditions[1].value == Condition::heart_disease);
  CHECK(pet->build.nose == NoseLength::short_nose);
  CHECK(pet->build.legs == Legs::long_legs);
  CHECK(pet->build.ears == EarType::semi_prick);
  CHECK(pet->build.tail == TailType::plume);
  CHECK(pet->build.bone == Bone::fine);
  CHECK_FALSE(pet->build.body);
  REQUIRE(pet->vaccinations.size() == 2);
  CHECK(pet->vaccinations[0].given.value == make_date(2025, 5, 2));
  CHECK_FALSE(pet->vaccinations[0].booster);
  CHECK(pet->vaccinations[1].booster);
  CHECK(pet->visit_every->value == CalendarSpan(std::chrono::weeks(8)));
  REQUIRE(pet->accepted.size() == 1);
  CHECK(pet->accepted[0].rule.value == RuleId::prebrush);
  CHECK(pet->accepted[0].signed_on == make_date(2026, 11, 1));
  REQUIRE(pet->preferences.keep_under.size() == 1);
  CHECK(pet->preferences.keep_under[0].place == Place{Region::ears, Side::both});
  CHECK(pet->preferences.keep_under[0].length == 40_mm);
}

TEST_CASE("an owner's vet has a name and a number, and nothing else", "[pet]") {
  const auto owner = [](const std::string& vet) {
    return "[pet]\nname = \"Rex\"\n[owner]\nvet = " + vet + "\n";
  };
  Desk desk;
  const auto pet = desk.pet(owner("{ name = \"Dr. Quill\", phone = \"555 0199\" }"));
  INFO(desk.said());
  REQUIRE(pet);
  CHECK(pet->owner.vet.name == "Dr. Quill");
  CHECK(pet->owner.vet.phone == "555 0199");
  CHECK(for_everyone(*pet).owner.vet.name.empty());
  CHECK(for_everyone(*pet).owner.vet.phone.empty());
  CHECK_FALSE(desk.pet(owner("\"Dr. Quill\"")));
  CHECK_FALSE(desk.pet(owner("{ name = \"Dr. Quill\", fone = \"555 0199\" }")));
  CHECK_FALSE(desk.pet(owner("{ phone = 5550199 }")));
}

TEST_CASE("alerts keep their order, their audience and every place to avoid", "[pet]") {
  Desk desk;
  const auto pet = desk.pet(marlow);
  REQUIRE_FALSE(pet);  // there is no style here
  Desk with(FileMap{{"house/natural-tidy.toml", "[style]\nname = \"Natural tidy\"\n"}});
  const auto read = with.pet(marlow);
  REQUIRE(read);
  REQUIRE(read->alerts.size() == 2);
  const Alert& first = read->alerts[0];
  CHECK(first.level == Signal::warning);
  CHECK(first.action == "Second person at the head. Rest after each foot.");
  CHECK(first.audience == Audience::everyone);
  CHECK(read->alerts[1].audience == Audience::staff);
  // The left hock, and the six regions of the furnishings.
  REQUIRE(first.avoid.size() == 7);
  CHECK(first.avoid[0].value == Place{Region::hocks, Side::left});
  CHECK(first.avoid[1].value == Place{Region::ears, Side::both});
  CHECK(first.allergens.at(0).value == "oat");
  CHECK(with.place(first.span) == "pets/rex.toml:18");
  CHECK(with.place(first.avoid[0].span) == "pets/rex.toml:22");
}

TEST_CASE("products are looked up, or taken by their name where nobody listed any", "[pet]") {
  Desk desk(FileMap{{"house/natural-tidy.toml", "[style]\nname = \"Natural tidy\"\n"}});
  const auto alone = desk.pet(marlow);
  REQUIRE(alone);
  CHECK(alone->bath.shampoo->product.name == "oat");
  CHECK(alone->bath.shampoo->product.kind == ProductKind::shampoo);
  CHECK_FALSE(alone->bath.shampoo->product.dilution);

  const Salon salon = salon_with_oat(desk);
  const auto pet = desk.pet(marlow, &salon);
  REQUIRE(pet);
  const ProductUse& shampoo = *pet->bath.shampoo;
  CHECK(shampoo.product.name == "oat shampoo");
  CHECK(shampoo.product.dilution->value == Dilution{1, 11});
  CHECK(shampoo.product.dwell == std::chrono::minutes(6));
  CHECK(shampoo.planned_dwell() == std::chrono::minutes(4));
  const ProductUse& conditioner = *pet->bath.conditioner;
  CHECK(conditioner.product.key.empty());
  CHECK(conditioner.product.kind == ProductKind::conditioner);
  CHECK(conditioner.product.dilution->value == Dilution{1, 9});
  CHECK(conditioner.comb_through == "fine");
  REQUIRE(pet->bath.others.size() == 1);
  CHECK(pet->bath.others[0].product.kind == ProductKind::spray);
}

TEST_CASE("each part of the trim is what the file says", "[pet][trim]") {
  Desk desk(FileMap{{"house/natural-tidy.toml", "[style]\nname = \"Natural tidy\"\n"}});
  const auto pet = desk.pet(marlow);
  REQUIRE(pet);
  CHECK(std::get<Clip>(part(*pet, {Region::pads}).entry.tool).blade->name == "30");
  const TrimEntry& chest = part(*pet, {Region::chest}).entry;
  CHECK(std::get<Scissor>(chest.tool).shears == Shears::thinning);
  CHECK(chest.leave == 30_mm);
  CHECK(chest.lay == Lay::across);
  CHECK(chest.note == "not rounded");
  const auto comb = std::get<CombOver>(part(*pet, {Region::hocks}).entry.tool);
  CHECK(comb.comb == Length::inches(1, 2));
  CHECK(comb.base->name == "40");
  CHECK(std::get<HandStrip>(part(*pet, {Region::tail}).entry.tool).with == Strip::hand);
  for (const Region region : info(Group::body).members) {
    CHECK(std::holds_alternative<Brush>(part(*pet, {region}).entry.tool));
  }
}

TEST_CASE("every resolved value knows the file and line that it came from", "[pet][trim]") {
  Desk desk(FileMap{
      {"house/base.toml",
       "[style]\nname = \"Base\"\n[trim]\nlegs = { blade = \"4F\" }\nfeet = { blade = \"10\" "
       "}\n[finish]\ntail = \"plume\"\nears = \"natural\"\n"},
      {"styles/own.toml",
       "[style]\nname = \"Own\"\nextends = \"base\"\n[trim]\nfeet = { blade = \"15\" }\n"}});
  const auto pet = desk.pet(
      "[pet]\nname = \"Rex\"\n[trim]\nstyle = \"own\"\n"
      "left-hock = { blade = \"5F\" }\n[finish]\nears = \"vee\"\n");
  REQUIRE(desk.said() == "");
  REQUIRE(pet);
  CHECK(desk.place(part(*pet, {Region::front_legs}).entry.span) == "house/base.toml:4");
  CHECK(desk.place(part(*pet, {Region::feet}).entry.span) == "styles/own.toml:5");
  const TrimPart& left = part(*pet, {Region::hocks, Side::left});
  CHECK(desk.place(left.entry.span) == "pets/rex.toml:5");
  CHECK(left.differs());
  CHECK(left.entry.written == "left-hock");
  const TrimPart& right = part(*pet, {Region::hocks, Side::right});
  CHECK(desk.place(right.entry.span) == "house/base.toml:4");
  CHECK_FALSE(right.differs());
  REQUIRE(pet->finish.size() == 2);
  CHECK(pet->finish[0].words == "vee");
  CHECK(pet->finish[0].differs);
  CHECK(desk.place(pet->finish[1].span) == "house/base.toml:7");
}

TEST_CASE("a name is enough, and so are a name and a style", "[pet]") {
  Desk desk(FileMap{{"house/natural-tidy.toml",
                     "[style]\nname = \"Natural tidy\"\n[trim]\npads = { blade = \"30\" }\n"}});
  const auto bare = desk.pet("[pet]\nname = \"Rex\"\n");
  REQUIRE(bare);
  CHECK_FALSE(bare->style);
  CHECK(bare->trim.empty());
  CHECK_FALSE(bare->bath.none);
  const auto styled = desk.pet("pet.name = \"Rex\"\ntrim.style = \"natural-tidy\"\n");
  REQUIRE(styled);
  CHECK(styled->style->key == "natural-tidy");
  CHECK(styled->trim.size() == 1);
  CHECK(desk.said() == "");
}

TEST_CASE("quantities are read in both systems and with fractions", "[pet][quantity]") {
  // NIST Handbook 44, appendix C: an inch is 25.4 mm, a pound 0.45359237 kg, an ounce a sixteenth.
  const auto weight = [](const char* written) {
    Desk desk;
    const auto pet = desk.pet(std::string("[pet]\nname = \"Rex\"\nweight = \"") + written + "\"\n");
    REQUIRE(pet);
    return pet->weight->value;
  };
  CHECK(weight("4.6 kg").ug() == 4'600'000'000);
  CHECK(weight("4600 g").ug() == 4'600'000'000);
  CHECK(weight("10 lb").ug() == 4'535'923'700);
  CHECK(weight("10 lb 3 oz").ug() == 4'620'972'269);  // and 3 × 28.349523125 g
  CHECK(weight("½ lb").ug() == 226'796'185);
  CHECK(weight("10½ lb").ug() == 4'762'719'885);
  CHECK(weight("10 1/2 lb").ug() == 4'762'719'885);
  const auto leave = [](const char* written) {
    Desk desk;
    const auto pet = desk.pet(std::string("[pet]\nname = \"Rex\"\n[trim]\nchest = { shears = "
                                          "\"straight\", leave = \"") +
                              written + "\" }\n");
    REQUIRE(pet);
    return pet->own_trim.at(0).entry.leave->um();
  };
  CHECK(leave("1/2 in") == 12'700);
  CHECK(leave("1¼ in") == 31'750);
  CHECK(leave("3 cm") == 30'000);
  CHECK(leave("13 mm") == 13'000);
  CHECK(leave("0 mm") == 0);
  CHECK(leave("500 mm") == 500'000);
}

TEST_CASE("a blade may be named in each of its ways", "[pet][trim]") {
  for (const char* written : {"8½", "8 1/2", "8.5", "#8½"}) {
    Desk desk;
    const auto pet = desk.pet(std::string("[pet]\nname = \"Rex\"\n[trim]\nback = { blade = \"") +
                              written + "\" }\n");
    INFO(written);
    REQUIRE(pet);
    CHECK(std::get<Clip>(pet->own_trim.at(0).entry.tool).blade->name == "8½");
  }
}

TEST_CASE("photos may lie anywhere if the salon says so", "[pet]") {
  Desk desk;
  const auto salon = desk.salon("[salon]\nphotos_anywhere = true\n");
  REQUIRE(salon);
  const std::string text = "[pet]\nname = \"Rex\"\nphoto = \"/srv/photos/rex.jpg\"\n";
  CHECK(desk.pet(text, &*salon));
  CHECK_FALSE(desk.pet(text));
  CHECK(desk.pet("[pet]\nname = \"Rex\"\nphoto = \"photos/../photos/rex.jpg\"\n"));
}
}  // namespace furnish::test
