#include "spec/made_pet.h"

#include <algorithm>
#include <array>

#include "base/quantity.h"
#include "base/text.h"
#include "spec/places.h"
#include "trade/safety.h"

namespace furnish::test {
namespace {
constexpr std::array pieces{"a",      "Bo",  "7",      " ",    "\"",         "\\", "'",   "#",
                            "=",      "[x]", "{",      "}",    ",",          ".",  "é",   "½",
                            "ß",      "\\n", "\"\"\"", "犬",   "Ω",          "🐕",  "\\u", "end",
                            "\u00A0", "-",   "_",      "true", "2026-11-24", "ل"};
}  // namespace

std::string PetMaker::words() {
  std::string out;
  const int n = upto(40) == 0 ? 400 : 1 + upto(8);
  for (int i = 0; i < n; ++i) out += any_of(pieces);
  while (code_points(out) > 500) out.resize(byte_of_code_point(out, 500));
  out = trimmed(out);
  return blank(out) ? "x" : out;
}

std::vector<std::string> PetMaker::list() {
  std::vector<std::string> out(static_cast<std::size_t>(maybe() ? 0 : upto(4)));
  for (std::string& one : out) one = words();
  return out;
}

Date PetMaker::date() {
  return *make_date(2000, 1, 1) + std::chrono::days(upto(10000));
}

Place PetMaker::place(bool any_side) {
  const RegionInfo& row = any_of(regions());
  const bool sided = maybe() && (row.paired || any_side);
  return {row.region, sided ? (maybe() ? Side::left : Side::right) : Side::both};
}

TrimEntry PetMaker::entry() {
  TrimEntry out;
  // Few kinds of work, so that groups come to share some.
  const auto length = [&] {
    return maybe() ? Length::inches(1 + upto(30), 16) : Length::micrometres(1000 + upto(49) * 777);
  };
  switch (upto(4)) {
    case 0:
      out.tool = Clip{&any_of(blades())};
      break;
    case 1:
      out.tool = CombOver{maybe() ? Length::inches(1, 2) : length(),
                          maybe() ? find_blade("30") : &any_of(blades())};
      break;
    case 2:
      out.tool = Scissor{static_cast<Shears>(upto(3))};
      break;
    case 3:
      out.tool = HandStrip{static_cast<Strip>(upto(1))};
      break;
    default:
      out.tool = Brush{};
  }
  const bool clipped =
      std::holds_alternative<Clip>(out.tool) || std::holds_alternative<CombOver>(out.tool);
  if (!clipped && maybe()) out.leave = length();
  out.lay = static_cast<Lay>(upto(2));
  out.before_bath = upto(3) == 0;
  if (upto(3) == 0) out.note = words();
  return out;
}

TrimRules PetMaker::rules() {
  std::vector<TrimEntry> works;
  for (int i = upto(3); i >= 0; --i) works.push_back(entry());
  while (true) {
    std::vector<Said<TrimEntry>> said;
    std::uint32_t line = 0;
    for (int i = upto(12); i > 0; --i) {
      TrimEntry work = any_of(works);
      const Place where = place(false);
      NamedPlaces places{{where}, false};
      work.written = to_text(where);
      if (upto(2) == 0) {
        const GroupInfo& group = any_of(groups());
        places = {{}, true};
        for (const Region region : group.members) places.places.push_back({region, Side::both});
        work.written = group.key;
      }
      if (const auto twin = std::ranges::find(said, work.written, &Said<TrimEntry>::written);
          twin != said.end())
        continue;
      work.span = {0, {++line, 1}, {line, 2}};
      said.push_back({places, work, work.written, work.span});
    }
    DiagnosticSink sink;
    TrimRules out;
    for (auto& [where, work] : spread(said, same_work, sink)) out.push_back({where, work});
    if (!sink.has_errors()) return out;
  }
}

Alert PetMaker::alert() {
  Alert out;
  out.level = static_cast<Signal>(upto(3));
  out.text = words();
  out.action = words_or_none();
  for (int i = upto(5); i > 0; --i) {
    if (upto(2) == 0) {
      for (const Region region : any_of(groups()).members) out.avoid.push_back({{region}, {}});
    } else {
      out.avoid.push_back({place(true), {}});
    }
  }
  for (std::string& one : list()) out.allergens.push_back({std::move(one), {}});
  out.audience = static_cast<Audience>(upto(1));
  return out;
}

ProductUse PetMaker::product(ProductKind usual) {
  ProductUse out;
  const auto dwell = [&] { return std::chrono::seconds(1 + upto(3598)); };
  if (maybe()) {
    out.product = any_of(salon_.products);
    if (maybe()) out.dwell = dwell();
  } else {
    out.product.name = words();
    out.product.kind = maybe() ? usual : static_cast<ProductKind>(upto(3));
    // As files give it: a number with a point is not quite what arithmetic makes of it.
    const std::string parts = std::to_string(1 + upto(40)) + "." + std::to_string(upto(99));
    const std::string dilution = maybe() ? "neat" : maybe() ? parts + ":1" : "1 in " + parts;
    if (maybe()) out.product.dilution = {*parse_dilution(dilution).value, {}};
    if (maybe()) out.product.dwell = dwell();
    out.product.contains = list();
    out.product.medicated = maybe();
  }
  out.comb_through = words_or_none();
  return out;
}

Bath PetMaker::bath() {
  Bath out;
  out.none = upto(4) == 0;
  if (out.none) return out;
  if (maybe()) out.before = {words(), {}};
  if (maybe()) out.shampoo = product(ProductKind::shampoo);
  if (maybe()) out.conditioner = product(ProductKind::conditioner);
  for (int i = upto(2); i > 0; --i) out.others.push_back(product(ProductKind::other));
  if (maybe()) out.dry = {words(), {}};
  if (maybe()) out.when = {static_cast<BathWhen>(upto(1)), {}};
  return out;
}

Finish PetMaker::finish() {
  Finish out;
  for (auto* part : {&out.ears, &out.tail, &out.feet, &out.nails, &out.extras}) {
    if (!maybe()) continue;
    *part = FreeText(words());
    if (maybe()) (*part)->others.push_back({"es", words()});
  }
  return out;
}

Pet PetMaker::pet() {
  Pet out;
  out.key = "rex";
  out.name = {words(), {}};
  for (auto* text :
       {&out.breed, &out.colour, &out.sex, &out.health_notes, &out.owner.name, &out.owner.phone,
        &out.owner.email, &out.owner.vet.name, &out.owner.vet.phone, &out.handling.hold,
        &out.handling.lift, &out.handling.dryer, &out.handling.stop}) {
    *text = words_or_none();
  }
  if (maybe()) out.photo = "photos/x \"y\".jpg";
  if (maybe()) out.coat = any_of(coats()).coat;
  for (std::optional<Birth>* const day : {&out.born, &out.since}) {
    if (!maybe()) continue;
    Birth about{date(), {}, static_cast<BirthKnown>(upto(2))};
    const std::chrono::year_month_day first(about.value);
    if (about.known == BirthKnown::month) about.value = first.year() / first.month() / 1;
    if (about.known == BirthKnown::year) about.value = first.year() / std::chrono::January / 1;
    *day = about;
  }
  const Date since = out.born ? last_day(*out.born) : date();
  if (maybe()) {
    const int pounds = upto(200);
    out.weight = {upto(2) == 0 ? Mass::pounds(1 + pounds / 16.0)
                               : Mass::micrograms(1 + std::int64_t{upto(149'000)} *
                                                          (maybe() ? 1'000'000 : 999'983)),
                  {}};
    if (maybe()) out.weighed = {since + std::chrono::days(upto(900)), {}};
  }
  if (maybe()) out.build.nose = static_cast<NoseLength>(upto(2));
  if (maybe()) out.build.legs = static_cast<Legs>(upto(2));
  if (maybe()) out.build.body = static_cast<BodyLength>(upto(2));
  if (maybe()) out.build.ears = static_cast<EarType>(upto(4));
  if (maybe()) out.build.tail = static_cast<TailType>(upto(4));
  if (maybe()) out.build.bone = static_cast<Bone>(upto(2));
  out.owner.address = list();
  out.owner.collects = list();
  if (maybe()) out.owner.language = "es-419";
  for (int i = upto(3); i > 0; --i) out.alerts.push_back(alert());
  if (maybe()) out.handling.rest_every = std::chrono::minutes(1 + upto(239));
  out.handling.comes_with = list();
  for (const std::string_view word : condition_words()) {
    if (upto(4) == 0) out.conditions.push_back({*parse_condition(word), {}});
  }
  for (int i = upto(3); i > 0; --i) {
    const std::string name = std::to_string(i) + words();
    out.vaccinations.push_back({name, {since + std::chrono::days(upto(900)), {}}, maybe()});
  }
  out.bath = bath();
  if (maybe()) out.style = any_of(styles_);
  if (maybe())
    out.visit_every = {maybe() ? CalendarSpan(std::chrono::months(1 + upto(22)))
                               : CalendarSpan(std::chrono::days(7 + upto(721))),
                       {}};
  out.own_trim = rules();
  out.own_finish = finish();
  out.trim = resolve_trim(out.style ? out.style->trim : TrimRules(), out.own_trim);
  out.finish = resolve_finish(out.style ? out.style->finish : Finish(), out.own_finish);
  if (maybe()) {
    out.home.bath_every = {std::chrono::days(1 + upto(180)), {}};
    out.home.product = bath().shampoo;
    if (maybe()) out.home.bottle = Volume::nanolitres(10'000'000 + upto(1'000'000) * 19'000LL);
  }
  for (std::string& note : list()) out.home.notes.emplace_back(std::move(note));
  out.preferences.likes = list();
  out.preferences.dislikes = list();
  for (const PlacedEntry& one : maybe() ? rules() : TrimRules()) {
    out.preferences.keep_under.push_back(
        {one.place, Length::micrometres(1000 + upto(499'000)), {}});
  }
  for (int i = upto(2); i > 0; --i) {
    const SafetyRule& against = any_of(safety_rules());
    out.accepted.push_back({{against.id, {}}, words(), date(), {}});
  }
  return out;
}
}  // namespace furnish::test
