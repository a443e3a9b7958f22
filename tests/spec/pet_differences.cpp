#include <algorithm>

#include "spec/made_pet.h"

namespace furnish::test {
namespace {
template <typename T>
bool same_value(const std::optional<Located<T>>& a, const std::optional<Located<T>>& b) {
  return a.has_value() == b.has_value() && (!a || a->value == b->value);
}

template <typename T>
bool same_values(const std::vector<Located<T>>& a, const std::vector<Located<T>>& b) {
  return std::ranges::equal(a, b, {}, &Located<T>::value, &Located<T>::value);
}

bool same(const Alert& a, const Alert& b) {
  return a.level == b.level && a.text == b.text && a.action == b.action &&
         same_values(a.avoid, b.avoid) && same_values(a.allergens, b.allergens) &&
         a.audience == b.audience;
}

bool same(const Handling& a, const Handling& b) {
  return a.hold == b.hold && a.lift == b.lift && a.dryer == b.dryer && a.stop == b.stop &&
         a.rest_every == b.rest_every && a.comes_with == b.comes_with;
}

bool same(const Owner& a, const Owner& b) {
  return a.name == b.name && a.phone == b.phone && a.email == b.email && a.language == b.language &&
         a.address == b.address && a.collects == b.collects && a.vet.name == b.vet.name &&
         a.vet.phone == b.vet.phone;
}

bool same(const Build& a, const Build& b) {
  return a.nose == b.nose && a.legs == b.legs && a.body == b.body && a.ears == b.ears &&
         a.tail == b.tail && a.bone == b.bone;
}

bool same(const ProductUse& a, const ProductUse& b) {
  const Product &p = a.product, &q = b.product;
  return p.key == q.key && p.name == q.name && p.kind == q.kind &&
         same_value(p.dilution, q.dilution) && p.dwell == q.dwell && p.contains == q.contains &&
         p.medicated == q.medicated && p.mixed == q.mixed && a.dwell == b.dwell &&
         a.comb_through == b.comb_through;
}

bool same(const std::optional<ProductUse>& a, const std::optional<ProductUse>& b) {
  return a.has_value() == b.has_value() && (!a || same(*a, *b));
}

bool same(const TrimEntry& a, const TrimEntry& b) {
  return same_work(a, b) && a.why == b.why && a.written == b.written;
}

bool same(const PlacedEntry& a, const PlacedEntry& b) {
  return a.place == b.place && same(a.entry, b.entry);
}

bool same(const TrimPart& a, const TrimPart& b) {
  return a.place == b.place && same(a.entry, b.entry) && a.said_by == b.said_by &&
         a.house.has_value() == b.house.has_value() && (!a.house || same(*a.house, *b.house));
}

bool same(const FinishLine& a, const FinishLine& b) {
  return a.part == b.part && a.words == b.words && a.said_by == b.said_by && a.differs == b.differs;
}

bool same(const Finish& a, const Finish& b) {
  return a.ears == b.ears && a.tail == b.tail && a.feet == b.feet && a.nails == b.nails &&
         a.extras == b.extras;
}

bool same(const KeepUnder& a, const KeepUnder& b) {
  return a.place == b.place && a.length == b.length;
}

bool same(const Acceptance& a, const Acceptance& b) {
  return a.rule.value == b.rule.value && a.reason == b.reason && a.signed_on == b.signed_on;
}

bool same(const Vaccination& a, const Vaccination& b) {
  return a.name == b.name && a.given.value == b.given.value && a.booster == b.booster;
}

template <typename T>
bool all_same(const std::vector<T>& a, const std::vector<T>& b) {
  return std::ranges::equal(a, b, [](const T& x, const T& y) { return same(x, y); });
}

bool same(const Bath& a, const Bath& b) {
  return a.none == b.none && same_value(a.before, b.before) && same(a.shampoo, b.shampoo) &&
         same(a.conditioner, b.conditioner) && all_same(a.others, b.others) &&
         same_value(a.dry, b.dry) && same_value(a.when, b.when);
}
}  // namespace

std::vector<std::string> differences(const Pet& a, const Pet& b) {
  std::vector<std::string> out;
  const auto check = [&](const char* field, bool alike) {
    if (!alike) out.emplace_back(field);
  };
  check("key", a.key == b.key);
  check("name", a.name.value == b.name.value);
  check("breed", a.breed == b.breed);
  check("colour", a.colour == b.colour);
  check("sex", a.sex == b.sex);
  check("photo", a.photo == b.photo);
  check("coat", a.coat == b.coat);
  const auto same_day = [](const std::optional<Birth>& one, const std::optional<Birth>& other) {
    return one.has_value() == other.has_value() &&
           (!one || (one->value == other->value && one->known == other->known));
  };
  check("born", same_day(a.born, b.born));
  check("since", same_day(a.since, b.since));
  check("weight", same_value(a.weight, b.weight));
  check("weighed", same_value(a.weighed, b.weighed));
  check("build", same(a.build, b.build));
  check("owner", same(a.owner, b.owner));
  check("alerts", all_same(a.alerts, b.alerts));
  check("handling", same(a.handling, b.handling));
  check("conditions", same_values(a.conditions, b.conditions));
  check("health_notes", a.health_notes == b.health_notes);
  check("vaccinations", all_same(a.vaccinations, b.vaccinations));
  check("bath", same(a.bath, b.bath));
  check("style",
        a.style.has_value() == b.style.has_value() && (!a.style || a.style->key == b.style->key));
  check("visit_every", same_value(a.visit_every, b.visit_every));
  check("own_trim", all_same(a.own_trim, b.own_trim));
  check("trim", all_same(a.trim, b.trim));
  check("own_finish", same(a.own_finish, b.own_finish));
  check("finish", all_same(a.finish, b.finish));
  check("home", same_value(a.home.bath_every, b.home.bath_every) &&
                    same(a.home.product, b.home.product) && a.home.bottle == b.home.bottle &&
                    a.home.notes == b.home.notes);
  check("likes", a.preferences.likes == b.preferences.likes);
  check("dislikes", a.preferences.dislikes == b.preferences.dislikes);
  check("keep_under", all_same(a.preferences.keep_under, b.preferences.keep_under));
  check("accepted", all_same(a.accepted, b.accepted));
  return out;
}

std::vector<WorkAt> work(const ResolvedTrim& trim) {
  std::vector<WorkAt> out;
  for (const TrimPart& part : trim) {
    const bool split = part.place.side == Side::both && info(part.place.region).paired;
    for (const Side side : {Side::both, Side::left, Side::right}) {
      if (split ? side != Side::both : side == part.place.side) {
        out.push_back({{part.place.region, side}, part.entry});
      }
    }
  }
  return out;
}

bool same(const std::vector<WorkAt>& a, const std::vector<WorkAt>& b) {
  return std::ranges::equal(a, b, [](const WorkAt& x, const WorkAt& y) {
    return x.place == y.place && same_work(x.entry, y.entry);
  });
}
}  // namespace furnish::test
