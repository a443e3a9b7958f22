#include "plan/day_plan.h"

#include "base/text.h"
#include "plan/made.h"

using namespace furnish;
using namespace furnish::made;

namespace {
using std::chrono::hours;
using std::chrono::minutes;

/// A day with the pets that are booked on it.
class Shop {
 public:
  /// A pet whose only visit took so long; what the visit says beside that may be set.
  Visit& add(const std::string& key, int took, std::optional<Coat> coat = Coat::smooth) {
    One& one = all_[key];
    one.pet = pet(coat);
    one.pet.key = key;
    one.pet.owner.phone = "555 0101";
    one.pet.weight = {Mass::kg(20), {}};
    one.visits = {visit("2026-09-01")};
    if (took > 0) one.visits.front().minutes = minutes(took);
    return one.visits.front();
  }
  Pet& operator[](const std::string& key) { return all_[key].pet; }

  void book(const std::string& key, minutes at, std::optional<minutes> collect = {},
            const std::string& groomer = "Ines") {
    Booking out = booking("2026-11-24", at);
    out.pet = {key, line(++lines_)};
    out.collect = collect;
    out.groomer = groomer;
    out.span = line(lines_);
    day_.bookings.push_back(out);
  }

  DayPlan plan(const Salon& shop = salon()) {
    day_.date = day("2026-11-24");
    std::vector<std::string> keys;
    std::map<std::string, Duration> expected;
    for (auto& [key, one] : all_) {
      DiagnosticSink sink;
      one.plan = make_plan(shop, one.pet, one.visits, {}, day_.date, sink);
      if (one.plan.duration) expected[key] = *one.plan.duration;
      keys.push_back(key);
      pets_.emplace(key, DayPet{one.pet, one.plan, one.visits});
    }
    return day_plan(day_, pets_, day_warnings(shop, day_, keys, expected));
  }

 private:
  struct One {
    Pet pet;
    std::vector<Visit> visits;
    Plan plan;
  };
  std::map<std::string, One> all_;
  std::map<std::string, DayPet> pets_;
  Day day_;
  std::uint32_t lines_ = 0;
};

std::vector<std::string> keys_of(const DayBlock& block) {
  std::vector<std::string> out;
  for (const DayRow& row : block.rows) out.push_back(row.booking->pet.value);
  return out;
}
}  // namespace

TEST_CASE("a day is by groomer, each by the hour, and who names none is last") {
  Shop shop;
  for (const char* key : {"a", "b", "c", "d", "e"}) shop.add(key, 60);
  shop.book("e", hours(8), {}, "");
  shop.book("a", hours(14), {}, "Bo");
  shop.book("b", hours(9), {}, "ines ");
  shop.book("c", hours(12), {}, "Ines");
  shop.book("d", hours(10), {}, "Bo");
  const DayPlan plan = shop.plan();
  REQUIRE(plan.blocks.size() == 3);
  CHECK(plan.blocks[0].groomer == "ines ");
  CHECK(keys_of(plan.blocks[0]) == std::vector<std::string>{"b", "c"});
  CHECK(keys_of(plan.blocks[1]) == std::vector<std::string>{"d", "a"});
  CHECK(plan.blocks[2].groomer.empty());
  CHECK(keys_of(plan.blocks[2]) == std::vector<std::string>{"e"});
}

TEST_CASE("minutes add up, what nobody knows counts nothing, and what runs over is by how much") {
  Shop shop;
  shop.add("a", 90);
  shop.add("b", 45);
  shop.add("c", 0);
  shop["c"].weight.reset();
  shop.book("a", hours(9), minutes(9 * 60 + 80));
  shop.book("b", hours(11), minutes(11 * 60 + 45));
  shop.book("c", hours(13), hours(14));
  shop.book("ghost", hours(15));
  const DayPlan plan = shop.plan();
  REQUIRE(plan.blocks.size() == 1);
  const DayBlock& block = plan.blocks[0];
  REQUIRE(block.rows.size() == 4);
  CHECK(block.expected == minutes(135));
  CHECK(block.booked == minutes(80 + 45 + 60));
  CHECK(block.rows[0].over() == minutes(10));
  CHECK(block.rows[1].over() == minutes(0));  // to the minute
  CHECK_FALSE(block.rows[2].expected);
  CHECK(block.rows[2].over() == minutes(0));
  CHECK(block.rows[3].pet == nullptr);
  CHECK_FALSE(block.rows[3].booked);
}

TEST_CASE("two at once are marked on both rows") {
  Shop shop;
  for (const char* key : {"a", "b", "c"}) shop.add(key, 90);
  shop.book("a", hours(9), hours(12));
  shop.book("b", hours(10), hours(12));
  shop.book("c", hours(10), hours(12), "Bo");
  const DayPlan plan = shop.plan();
  REQUIRE(plan.blocks.size() == 2);
  const auto& rows = plan.blocks[0].rows;
  REQUIRE(rows[0].clashes.size() == 1);
  CHECK(rows[0].clashes[0]->pet.value == "b");
  REQUIRE(rows[1].clashes.size() == 1);
  CHECK(rows[1].clashes[0]->pet.value == "a");
  CHECK(plan.blocks[1].rows[0].clashes.empty());
}

TEST_CASE("products of a day are one sum each, and a pet that comes twice is bathed once") {
  Shop shop;
  shop.add("a", 60);
  shop.add("b", 60);
  shop["a"].bath.shampoo = shop["b"].bath.shampoo = product("oat");
  shop.book("a", hours(9));
  shop.book("b", hours(11));
  shop.book("a", hours(15));
  const DayPlan plan = shop.plan();
  REQUIRE(plan.mixes.size() == 1);
  CHECK(plan.mixes[0].dogs == 2);
  // 20 kg are 0.7442 m²; at 0.7 l a square metre (smooth; common practice) 520.9 ml each: three
  // bottles of half a litre for both, where each by itself would take two.
  CHECK(plan.mixes[0].parts.total.in_ml() == Approx(2 * 520.9).margin(0.2));
  CHECK(plan.mixes[0].bottles == 3);
}

TEST_CASE("what is mixed names each pet of the day that may not have it, planned for it or not") {
  Shop shop;
  for (const char* key : {"a", "b", "c", "d"}) shop.add(key, 60);
  for (const char* key : {"a", "d"}) {
    shop[key].bath.shampoo = product("bright");
    shop[key].bath.shampoo->product.contains = {"violet dye", "lavender"};
  }
  shop["b"].alerts = {{}};
  shop["b"].alerts[0].allergens = {{"lavender", {}}};
  shop["c"].alerts = {{}};
  shop["c"].alerts[0].allergens = {{"oat", {}}};
  shop["d"].alerts = {{}};
  shop["d"].alerts[0].text = "Allergic to lavender";
  int hour = 8;
  for (const char* key : {"a", "b", "c", "d", "b"}) shop.book(key, hours(hour++));
  const auto held = [&] {
    std::string out;
    for (const NotFor& one : shop.plan().not_for) {
      out += one.product + " " + one.pet->pet.key + " " + joined(one.what, "/") + ";";
    }
    return out;
  };
  CHECK(held() == "bright b lavender;bright d lavender;");
}

TEST_CASE("a pet that a product is used on all the same, with a reason, is not held back from it") {
  Shop shop;
  shop.add("a", 60);
  shop["a"].bath.shampoo = product("lavender wash");
  shop["a"].alerts = {{}};
  shop["a"].alerts[0].allergens = {{"lavender", {}}};
  Acceptance accepted;
  accepted.rule = {RuleId::allergen, {}};
  shop["a"].accepted = {accepted};
  shop.book("a", hours(8));
  CHECK(shop.plan().not_for.empty());
}

TEST_CASE("an owner is rung for what is open and untold, and for what is missing") {
  Shop shop;
  const auto found = [](Visit& visit, Audience audience) {
    Finding finding;
    finding.place = {at("left hock"), {}};
    finding.what = "lump";
    finding.audience = audience;
    visit.findings = {finding};
  };
  found(shop.add("a", 60), Audience::everyone);
  Visit& told = shop.add("b", 60);
  found(told, Audience::everyone);
  told.told = "a lump: see the vet";
  found(shop.add("c", 60), Audience::staff);
  shop.add("d", 60);
  shop["d"].owner.phone.clear();
  shop.add("e", 60);
  shop["e"].owner.phone.clear();
  shop["e"].owner.email = "e@owner.example";
  int hour = 8;
  for (const char* key : {"d", "a", "b", "c", "e"}) shop.book(key, hours(hour++));
  const DayPlan plan = shop.plan();
  REQUIRE(plan.calls.size() == 2);
  CHECK(plan.calls[0].pet->pet.key == "d");
  CHECK(plan.calls[0].no_contact);
  CHECK(plan.calls[1].pet->pet.key == "a");
  CHECK(plan.calls[1].untold.size() == 1);
}

TEST_CASE("an owner is rung for a vaccination the salon requires, unless that is accepted") {
  Salon strict = salon();
  VaccinationRule rule;
  rule.name = "rabies";
  rule.required = true;
  strict.vaccinations = {rule};
  Shop shop;
  shop.add("a", 60);
  shop.add("b", 60);
  shop.add("c", 60);
  shop["a"].vaccinations = {{"rabies", {day("2025-11-23"), {}}, true}};
  shop["b"].vaccinations = {{"rabies", {day("2026-11-01"), {}}, true}};
  Acceptance accepted;
  accepted.rule = {RuleId::vaccination, {}};
  shop["c"].accepted = {accepted};
  int hour = 8;
  for (const char* key : {"a", "b", "c"}) shop.book(key, hours(hour++));
  const DayPlan plan = shop.plan(strict);
  REQUIRE(plan.calls.size() == 1);
  CHECK(plan.calls[0].pet->pet.key == "a");
  CHECK(plan.calls[0].vaccinations.size() == 1);
}

TEST_CASE("a closed day says so") {
  Salon shut = salon();
  shut.closed = {std::chrono::Tuesday};
  Shop shop;
  shop.add("a", 60);
  shop.book("a", hours(9));
  CHECK(shop.plan(shut).closed);
  Shop open;
  open.add("a", 60);
  open.book("a", hours(9));
  CHECK_FALSE(open.plan().closed);
}
