#include "spec/pet_sections.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"
#include "spec/audience_reader.h"
#include "spec/date_hint.h"
#include "spec/free_text.h"
#include "spec/language.h"
#include "spec/offer.h"
#include "spec/pet_format.h"
#include "spec/photo_path.h"
#include "spec/places.h"
#include "trade/place_synonyms.h"

namespace furnish {
namespace {
template <typename Enum>
std::optional<Enum> choose(Fields& fields, const ChoiceKey<Enum>& key) {
  const auto choice = fields.choice(key);
  return choice ? std::optional(choice->value) : std::nullopt;
}

/// The places of a list of words; a group stands for its regions, which is on the safe side.
std::vector<Located<Place>> read_avoid(Fields& alert) {
  std::vector<Located<Place>> out;
  for (const Located<std::string>& word : alert.texts(keys::alert::avoid)) {
    const auto where = read_places(
        word.value, word.span, AnySide::yes, {}, alert.sink(),
        "; what is the matter there stands in text, what a visit found in its [[finding]]");
    if (!where) continue;
    for (const Place place : where->places) out.push_back({place, word.span});
    // Who says face here means the skin round the eyes too.
    if (const auto several = several_meant(word.value);
        std::ranges::find(several, Region::muzzle) != several.end()) {
      out.push_back({{Region::eyes, Side::both}, word.span});
    }
  }
  return out;
}

/// A name that is nearly one of the salon's is a slip that would hide a missing vaccination.
void check_vaccination_name(const TomlEntry& entry, const Salon* salon, DiagnosticSink& sink) {
  if (salon == nullptr) return;
  std::vector<std::string_view> names;
  for (const VaccinationRule& rule : salon->vaccinations) names.push_back(rule.name);
  if (std::ranges::find(names, entry.key) != names.end()) return;
  const auto near = nearest(entry.key, names);
  if (!near) return;
  const auto rule = std::ranges::find(salon->vaccinations, *near, &VaccinationRule::name);
  Diagnostic& fault =
      sink.warning("unknown-vaccination", entry.key_span,
                   fmt::format("the salon has no rule for a vaccination '{}'", entry.key));
  fault.notes.emplace_back(rule->span, "its nearest name is here");
  offer_meant(fault, *near);
}

/// A year, or "2019-03": as much as is known of a day of birth. Empty where it is a day, or nothing
/// that could be read as less.
std::optional<Birth> part_of_a_day(const TomlNode& node) {
  std::string text;
  if (const auto* const year = std::get_if<std::int64_t>(&node.value)) text = std::to_string(*year);
  if (const auto* const words = std::get_if<std::string>(&node.value)) text = trimmed(*words);
  const bool year = text.size() == 4;
  const auto first = parse_date(text + (year ? "-01-01" : "-01"));
  if (!first || !bounds::day.holds(*first)) return std::nullopt;
  return Birth{*first, node.span, year ? BirthKnown::year : BirthKnown::month};
}

std::optional<Birth> read_birth(Fields& fields, const DateKey& key) {
  const TomlEntry* const entry = fields.find(key);
  if (entry == nullptr) return std::nullopt;
  if (auto part = part_of_a_day(entry->node)) return part;
  // A month in words is not to become a day that nobody knows.
  const std::string hint = date_hint(entry->node);
  constexpr std::string_view write = "write 2021-04";
  if (hint.size() > write.size() && hint.find(" or the day itself") != std::string::npos) {
    report_type(entry->node, key.name, "a date such as 2021-04-09, or a year", fields.sink()).hint =
        fmt::format("write \"{}\"", hint.substr(write.size() - 7, 7));
    return std::nullopt;
  }
  const auto day = fields.date(key);
  return day ? std::optional(Birth{day->value, day->span}) : std::nullopt;
}
}  // namespace

void read_identity(Fields& fields, const Salon* salon, Pet& pet) {
  if (auto name = fields.text(keys::identity::name)) pet.name = *std::move(name);
  pet.breed = fields.words(keys::identity::breed);
  pet.colour = fields.words(keys::identity::colour);
  pet.sex = fields.words(keys::identity::sex);
  if (const auto coat = fields.choice(keys::identity::coat)) {
    pet.coat = coat->value;
  }
  pet.born = read_birth(fields, keys::identity::born);
  pet.weight = fields.quantity(keys::identity::weight);
  pet.weighed = fields.date(keys::identity::weighed);
  if (auto photo = read_photo_path(fields, keys::identity::photo, salon)) {
    pet.photo = photo->value;
    pet.photo_span = photo->span;
  }
  pet.since = read_birth(fields, keys::identity::since);
  if (pet.weighed && fields.find(keys::identity::weight) == nullptr && fields.complete()) {
    fields.sink().error("weighed-without-weight", pet.weighed->span,
                        "'weighed' is the day of the weight, but there is no weight");
  }
  if (pet.weighed && pet.born && pet.weighed->value < pet.born->value) {
    fields.sink()
        .error("before-birth", pet.weighed->span, "weighed before it was born")
        .notes.emplace_back(pet.born->span, "born here");
  }
  fields.finish();
}

Owner read_owner(Fields& fields) {
  Owner out;
  out.name = fields.words(keys::owner::name);
  out.phone = fields.words(keys::owner::phone);
  out.email = fields.words(keys::owner::email);
  out.address = fields.word_list(keys::owner::address);
  out.language = read_language(fields, keys::owner::language);
  out.collects = fields.word_list(keys::owner::collects);
  if (auto vet = fields.table(keys::owner::vet)) {
    out.vet.name = vet->words(keys::vet::name);
    out.vet.phone = vet->words(keys::vet::phone);
    vet->finish();
  }
  fields.finish();
  return out;
}

Alert read_alert(Fields& fields) {
  Alert out;
  out.span = fields.span();
  if (const auto level = fields.choice(keys::alert::level)) {
    out.level = level->value;
  }
  out.text = read_free_text(fields, keys::alert::text);
  out.action = read_free_text(fields, keys::alert::action);
  out.avoid = read_avoid(fields);
  out.allergens = fields.texts(keys::alert::allergens);
  out.audience = read_audience(fields);
  fields.finish();
  return out;
}

Handling read_handling(Fields& fields) {
  Handling out;
  out.hold = fields.words(keys::handling::hold);
  out.lift = fields.words(keys::handling::lift);
  if (auto dryer = fields.text(keys::handling::dryer)) {
    out.dryer = dryer->value;
    out.dryer_span = dryer->span;
  }
  out.stop = fields.words(keys::handling::stop);
  if (const auto rest = fields.quantity(keys::handling::rest_every)) {
    out.rest_every = std::chrono::round<std::chrono::minutes>(rest->value);
  }
  out.comes_with = fields.word_list(keys::handling::comes_with);
  const auto line = [&](const KeyInfo& key) {
    const TomlEntry* const entry = fields.find(key);
    return entry != nullptr ? entry->node.span : SourceSpan{};
  };
  out.hold_span = line(keys::handling::hold);
  out.lift_span = line(keys::handling::lift);
  out.stop_span = line(keys::handling::stop);
  fields.finish();
  return out;
}

Build read_build(Fields& fields) {
  Build out;
  out.nose = choose(fields, keys::build::nose);
  out.legs = choose(fields, keys::build::legs);
  out.body = choose(fields, keys::build::body);
  out.ears = choose(fields, keys::build::ears);
  out.tail = choose(fields, keys::build::tail);
  out.bone = choose(fields, keys::build::bone);
  fields.finish();
  return out;
}

std::vector<Vaccination> read_vaccinations(Fields& table, const Salon* salon) {
  std::vector<Vaccination> out;
  for (const TomlEntry* const entry : table.rest()) {
    check_vaccination_name(*entry, salon, table.sink());
    Vaccination one;
    one.name = entry->key;
    std::optional<Located<Date>> given;
    if (std::holds_alternative<TomlTable>(entry->node.value)) {
      Fields fields(entry->node, fmt::format("'{}'", entry->key), keys::vaccination::table, table);
      given = fields.date(keys::vaccination::on);
      one.booster = fields.flag(keys::vaccination::booster, false);
      fields.finish();
    } else if (const auto date = as_date(entry->node, entry->key, table.sink())) {
      given = Located<Date>{*date, entry->node.span};
    }
    if (!given) continue;
    one.given = *given;
    out.push_back(std::move(one));
  }
  return out;
}

Preferences read_preferences(Fields& fields) {
  Preferences out;
  out.likes = fields.word_list(keys::preferences::likes);
  out.dislikes = fields.word_list(keys::preferences::dislikes);
  if (const TomlEntry* const list = fields.find(keys::preferences::dislikes))
    out.dislikes_span = list->node.span;
  if (auto table = fields.table(keys::preferences::keep_under)) {
    std::vector<Said<std::pair<Length, SourceSpan>>> said;
    for (const TomlEntry* const entry : table->rest()) {
      const auto where = read_key_places(*entry, AnySide::no, {}, *table);
      const auto length = as_quantity(entry->node, entry->key, bounds::keep_under, table->sink());
      if (!where || !length) continue;
      said.push_back({*where, {*length, entry->key_span}, entry->key, entry->key_span});
    }
    const auto same = [](const auto& a, const auto& b) { return a.first == b.first; };
    for (const auto& [place, value] : spread(said, same, table->sink())) {
      out.keep_under.push_back({place, value.first, value.second});
    }
  }
  fields.finish();
  return out;
}

Acceptance read_acceptance(Fields& fields) {
  Acceptance out;
  out.span = fields.span();
  if (const auto rule = fields.choice(keys::acceptance::rule)) out.rule = *rule;
  out.reason = fields.words(keys::acceptance::reason);
  if (const auto date = fields.date(keys::acceptance::signed_on)) out.signed_on = date->value;
  fields.finish();
  return out;
}
}  // namespace furnish
