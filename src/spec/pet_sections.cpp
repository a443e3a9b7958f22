#include "spec/pet_sections.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"
#include "spec/audience_reader.h"
#include "spec/free_text.h"
#include "spec/language.h"
#include "spec/photo_path.h"
#include "spec/places.h"
#include "spec/word_tables.h"

namespace furnish {
namespace {
template <const auto& table, typename Enum>
std::optional<Enum> parse_in(std::string_view word) {
  const auto* const found = std::ranges::find(table, word);
  if (found == table.end()) return std::nullopt;
  return static_cast<Enum>(found - table.begin());
}

template <const auto& table, typename Enum>
std::optional<Enum> choose(Fields& fields, std::string_view key, std::string_view noun) {
  const auto choice = fields.choice<Enum>(key, noun, parse_in<table, Enum>, table);
  return choice ? std::optional(choice->value) : std::nullopt;
}

/// The places of a list of words; a group stands for its regions, which is on the safe side.
std::vector<Located<Place>> read_avoid(Fields& alert) {
  std::vector<Located<Place>> out;
  for (const Located<std::string>& word : alert.texts("avoid")) {
    const auto where = read_places(word.value, word.span, AnySide::yes, {}, alert.sink());
    if (!where) continue;
    for (const Place place : where->places) out.push_back({place, word.span});
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
  fault.hint = fmt::format("did you mean '{}'?", *near);
}
}  // namespace

void read_identity(Fields& fields, const Salon* salon, Pet& pet) {
  fields.require("name", "name = \"…\"");
  if (auto name = fields.text("name")) pet.name = *std::move(name);
  pet.breed = fields.words("breed");
  pet.colour = fields.words("colour");
  pet.sex = fields.words("sex");
  if (const auto coat = fields.choice("coat", "coat", parse_coat, coat_words())) {
    pet.coat = coat->value;
  }
  pet.born = fields.date("born");
  pet.weight = fields.quantity("weight", bounds::weight);
  pet.weighed = fields.date("weighed");
  if (auto photo = read_photo_path(fields, "photo", salon)) {
    pet.photo = photo->value;
    pet.photo_span = photo->span;
  }
  if (pet.weighed && fields.find("weight") == nullptr && fields.complete()) {
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
  out.name = fields.words("name");
  out.phone = fields.words("phone");
  out.email = fields.words("email");
  out.address = fields.word_list("address");
  out.language = read_language(fields, "language");
  out.collects = fields.word_list("collects");
  if (auto vet = fields.table("vet")) {
    out.vet.name = vet->words("name");
    out.vet.phone = vet->words("phone");
    vet->finish();
  }
  fields.finish();
  return out;
}

Alert read_alert(Fields& fields) {
  Alert out;
  out.span = fields.span();
  fields.require("level", "level = \"danger\", \"warning\", \"caution\" or \"notice\"");
  fields.require("text", "text = \"…\", what to beware of");
  if (const auto level = fields.choice("level", "signal word", parse_signal, signal_words())) {
    out.level = level->value;
  }
  out.text = read_free_text(fields, "text");
  out.action = read_free_text(fields, "do");
  out.avoid = read_avoid(fields);
  out.allergens = fields.texts("allergens");
  out.audience = read_audience(fields);
  fields.finish();
  return out;
}

Handling read_handling(Fields& fields) {
  Handling out;
  out.hold = fields.words("hold");
  out.lift = fields.words("lift");
  if (auto dryer = fields.text("dryer")) {
    out.dryer = dryer->value;
    out.dryer_span = dryer->span;
  }
  out.stop = fields.words("stop");
  if (const auto rest = fields.quantity("rest_every", bounds::rest_every)) {
    out.rest_every = std::chrono::round<std::chrono::minutes>(rest->value);
  }
  out.comes_with = fields.word_list("comes_with");
  const auto line = [&](std::string_view key) {
    const TomlEntry* const entry = fields.find(key);
    return entry != nullptr ? entry->node.span : SourceSpan{};
  };
  out.hold_span = line("hold");
  out.lift_span = line("lift");
  out.stop_span = line("stop");
  fields.finish();
  return out;
}

Build read_build(Fields& fields) {
  Build out;
  out.nose = choose<words::sizes, NoseLength>(fields, "nose", "length of nose");
  out.legs = choose<words::sizes, Legs>(fields, "legs", "length of legs");
  out.body = choose<words::sizes, BodyLength>(fields, "body", "length of body");
  out.ears = choose<words::ears, EarType>(fields, "ears", "kind of ears");
  out.tail = choose<words::tails, TailType>(fields, "tail", "kind of tail");
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
      Fields fields(entry->node, fmt::format("'{}'", entry->key), table);
      fields.require("on", "on = 2025-05-02, the day it was given");
      given = fields.date("on");
      one.booster = fields.flag("booster", false);
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
  out.likes = fields.word_list("likes");
  out.dislikes = fields.word_list("dislikes");
  if (const TomlEntry* const list = fields.find("dislikes")) out.dislikes_span = list->node.span;
  if (auto table = fields.table("keep_under")) {
    std::vector<Said<std::pair<Length, SourceSpan>>> said;
    for (const TomlEntry* const entry : table->rest()) {
      const auto where = read_places(entry->key, entry->key_span, AnySide::no, {}, table->sink());
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
  fields.require("rule", "rule = \"…\", the rule that is gone against");
  fields.require("reason", "reason = \"…\", why it is done all the same");
  fields.require("signed", "signed = 2026-11-24, the day the owner agreed");
  if (const auto rule = fields.choice("rule", "rule", parse_rule, rule_words())) out.rule = *rule;
  out.reason = fields.words("reason");
  if (const auto date = fields.date("signed")) out.signed_on = date->value;
  fields.finish();
  return out;
}
}  // namespace furnish
