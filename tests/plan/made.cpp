#include "plan/made.h"

#include <algorithm>

#include "base/quantity.h"
#include "base/text.h"

namespace furnish::made {

Date day(std::string_view iso) {
  const auto date = parse_date(iso);
  REQUIRE(date);
  return *date;
}

SourceSpan line(std::uint32_t number) {
  return {0, {number, 1}, {number, 2}};
}

Place at(std::string_view words) {
  const auto place = parse_place(words);
  REQUIRE(place);
  return *place;
}

Tool blade(std::string_view name) {
  const Blade* const found = find_blade(name);
  REQUIRE(found != nullptr);
  return Clip{found};
}

Tool comb(Length length, std::string_view base) {
  const Blade* const found = find_blade(base);
  REQUIRE(found != nullptr);
  return CombOver{length, found};
}

Tool shears(Shears which) {
  return Scissor{which};
}

TrimPart part(std::string_view place, Tool tool, Lay lay, std::optional<Length> leave,
              std::uint32_t line_number) {
  TrimPart out;
  out.place = at(place);
  out.entry.tool = tool;
  out.entry.lay = lay;
  out.entry.leave = leave;
  out.entry.written = place;
  out.entry.span = line(line_number);
  return out;
}

Salon salon() {
  return {};
}

Kit kit(std::vector<std::string_view> blades, std::vector<Length> combs,
        std::vector<Shears> shears) {
  Kit out;
  for (const std::string_view name : blades) out.blades.push_back(find_blade(name));
  out.combs = std::move(combs);
  out.shears = std::move(shears);
  return out;
}

Pet pet(std::optional<Coat> coat) {
  Pet out;
  out.key = "marlow";
  out.name = {"Marlow", line(1)};
  out.coat = coat;
  out.span = line(1);
  out.bath.before = Located<std::string>{"slicker brush and comb to the skin", line(20)};
  out.bath.span = line(19);
  return out;
}

Visit visit(std::string_view iso) {
  Visit out;
  out.date = {day(iso), line(1)};
  return out;
}

RegionState state(std::string_view place, std::optional<Length> length, std::optional<int> mats) {
  RegionState out;
  out.place = at(place);
  out.length = length;
  out.mats = mats;
  out.span = line(5);
  return out;
}

Alert avoiding(std::string_view place) {
  Alert out;
  out.level = Signal::warning;
  out.avoid.push_back({at(place), line(9)});
  return out;
}

ProductUse product(std::string_view name, std::optional<Dilution> dilution) {
  ProductUse out;
  out.product.name = name;
  out.product.kind = ProductKind::shampoo;
  if (dilution) out.product.dilution = Located<Dilution>{*dilution, line(30)};
  out.product.span = line(30);
  out.span = line(21);
  return out;
}

Booking booking(std::string_view iso, std::chrono::minutes at) {
  Booking out;
  out.date = day(iso);
  out.at = at;
  out.pet = {"marlow", line(40)};
  out.span = line(40);
  return out;
}

namespace {
struct SayFact {
  std::string operator()(const std::vector<Place>& places) const {
    std::vector<std::string> names;
    for (const Place place : places) names.push_back(to_text(place));
    return joined(names, ", ");
  }
  std::string operator()(Date date) const { return to_iso(date); }
  std::string operator()(Mass mass) const { return to_text(mass, Units::metric); }
  std::string operator()(std::chrono::seconds time) const { return to_text(time); }
  std::string operator()(Condition condition) const { return std::string(to_text(condition)); }
  std::string operator()(const Blade* blade) const { return "#" + std::string(blade->name); }
  std::string operator()(int number) const { return std::to_string(number); }
  std::string operator()(double number) const { return std::to_string(number); }
  std::string operator()(const FreeText& text) const { return text.value; }
  std::string operator()(VetTask task) const { return std::string(key(task)); }
  std::string operator()(const std::string& text) const { return text; }
};
}  // namespace

std::string said(const CautionText& text) {
  std::vector<std::string> facts;
  for (const CautionFact& fact : text.facts) facts.push_back(std::visit(SayFact{}, fact));
  return text.key + (facts.empty() ? "" : ": ") + joined(facts, "; ");
}

PlanWords words() {
  return {said, [](Method method) { return std::string(key(method)); }};
}

bool Made::says(std::string_view code) const {
  return std::ranges::any_of(sink.all(), [&](const Diagnostic& d) { return d.code == code; });
}

const std::vector<Caution>& Made::with(RuleId id) const {
  return is_standing(rule(id)) ? plan.standing : plan.cautions;
}

const Caution* Made::caution(RuleId id) const {
  const auto found = std::ranges::find(with(id), id, &Caution::rule);
  return found == with(id).end() ? nullptr : &*found;
}

std::size_t Made::count(RuleId id) const {
  return static_cast<std::size_t>(std::ranges::count(with(id), id, &Caution::rule));
}

Made plan(const Salon& salon, const Pet& pet, const std::vector<Visit>& visits,
          std::string_view today, const std::vector<Booking>& bookings) {
  Made out;
  out.plan = make_plan(salon, pet, visits, {bookings, {}}, day(today), out.sink);
  static const std::vector<std::string> keys = caution_keys();
  for (const auto* const all : {&out.plan.cautions, &out.plan.standing}) {
    for (const Caution& one : *all) {
      CHECK(is_standing(rule(one.rule)) == (all == &out.plan.standing));
    }
  }
  std::vector<Caution> both = out.plan.cautions;
  both.insert(both.end(), out.plan.standing.begin(), out.plan.standing.end());
  for (const Caution& one : both) {
    for (const CautionText* const text : {&one.what, &one.instead}) {
      if (std::ranges::find(keys, text->key) == keys.end()) FAIL(text->key);
    }
  }
  return out;
}
}  // namespace furnish::made
