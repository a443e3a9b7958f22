#include "spec/salon_reader.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "base/paper.h"
#include "base/text.h"
#include "spec/free_text.h"
#include "spec/language.h"
#include "spec/product_reader.h"
#include "spec/salon_faults.h"
#include "spec/salon_format.h"
#include "spec/trim_reader.h"
#include "trade/health.h"

namespace furnish {
namespace {
void read_identity(Fields& fields, Salon& salon) {
  salon.name = fields.words(keys::salon::name);
  salon.phone = fields.words(keys::salon::phone);
  salon.email = fields.words(keys::salon::email);
  salon.address = fields.word_list(keys::salon::address);
  if (std::string tag = read_language(fields, keys::salon::language); !tag.empty())
    salon.language = tag;
  if (const auto units = fields.choice(keys::salon::units)) {
    salon.units = units->value;
  }
  for (const auto& day : fields.choices(keys::salon::closed)) {
    salon.closed.push_back(day.value);
  }
  salon.rules = read_free_texts(fields, keys::salon::rules);
  salon.contact_on_card = fields.flag(keys::salon::contact_on_card, salon.contact_on_card);
  salon.tools_for_owners = fields.flag(keys::salon::tools_for_owners, salon.tools_for_owners);
  if (const auto way = fields.choice(keys::salon::felted)) {
    salon.felted = way->value;
  }
  salon.shorten_visits = fields.flag(keys::salon::shorten_visits, salon.shorten_visits);
  salon.photos_anywhere = fields.flag(keys::salon::photos_anywhere, salon.photos_anywhere);
  fields.finish();
}

void read_paper(Fields& fields, PaperSettings& paper) {
  if (const auto card = fields.choice(keys::paper::card)) {
    paper.card = card->value;
  }
  if (const auto sheet = fields.choice(keys::paper::sheet)) {
    paper.sheet = sheet->value;
  }
  const auto distance = [&](const QuantityKey<Length>& key) -> std::optional<Length> {
    const auto read = fields.quantity(key);
    return read ? std::optional(read->value) : std::nullopt;
  };
  paper.distances = {distance(keys::paper::name), distance(keys::paper::alert),
                     distance(keys::paper::action), distance(keys::paper::body),
                     distance(keys::paper::footer)};
  fields.finish();
}

std::vector<const Blade*> read_blades(Fields& fields) {
  std::vector<std::pair<const Blade*, SourceSpan>> seen;
  for (const TomlNode& item : fields.items(keys::kit::blades)) {
    const Blade* const blade = as_blade(item, "blades", fields.sink());
    if (blade == nullptr) continue;
    const auto first = std::ranges::find(seen, blade, [](const auto& s) { return s.first; });
    if (first == seen.end()) {
      seen.emplace_back(blade, item.span);
    } else {
      fields.report_twice("blade", item.span, first->second);
    }
  }
  std::vector<const Blade*> out;
  for (const auto& [blade, span] : seen) out.push_back(blade);
  return out;
}

void read_measured(Fields& fields, const Kit& kit, bool blades_listed,
                   std::map<const Blade*, Length>& measured) {
  auto table = fields.table(keys::kit::measured);
  if (!table) return;
  for (const TomlEntry* const entry : table->rest()) {
    const Blade* const blade = known_blade(entry->key, entry->key_span, fields.sink());
    const auto length = as_quantity(entry->node, entry->key, bounds::blade, fields.sink());
    if (blade == nullptr || !length) continue;
    if (!measured.emplace(blade, *length).second) {
      fields.sink().error("given-twice", entry->key_span,
                          fmt::format("blade {} is measured twice", blade->name));
    } else if (blades_listed && std::ranges::find(kit.blades, blade) == kit.blades.end()) {
      fields.sink().warning(
          "not-in-kit", entry->key_span,
          fmt::format("blade {} is measured, but not among the blades", blade->name));
    }
  }
}

/// A list that a kit does not give holds everything: nobody said that it is missing.
Kit read_kit(Fields& fields) {
  Kit kit;
  const bool blades_listed = fields.find(keys::kit::blades) != nullptr;
  if (blades_listed) {
    kit.blades = read_blades(fields);
  } else {
    for (const Blade& blade : blades()) kit.blades.push_back(&blade);
  }
  if (fields.find(keys::kit::combs) != nullptr) {
    for (const TomlNode& item : fields.items(keys::kit::combs)) {
      const auto comb = as_quantity(item, "combs", bounds::comb, fields.sink());
      if (comb) kit.combs.push_back(*comb);
    }
  } else {
    kit.combs.assign(guard_combs().begin(), guard_combs().end());
  }
  if (fields.find(keys::kit::shears) != nullptr) {
    for (const auto& s : fields.choices(keys::kit::shears)) {
      kit.shears.push_back(s.value);
    }
  } else {
    kit.shears = {Shears::straight, Shears::curved, Shears::thinning, Shears::blending};
  }
  if (const auto bottle = fields.quantity(keys::kit::bottle)) kit.bottle = bottle->value;
  read_measured(fields, kit, blades_listed, kit.measured);
  fields.finish();
  return kit;
}

/// Those without a fault of their own.
std::vector<VaccinationRule> read_rules(Fields& table) {
  std::vector<VaccinationRule> out;
  for (const TomlEntry* const entry : table.rest()) {
    const std::size_t errors = table.sink().error_count();
    if (!std::holds_alternative<TomlTable>(entry->node.value)) {
      report_type(entry->node, entry->key, "a table such as { valid = \"3 years\" }", table.sink());
      continue;
    }
    Fields fields(entry->node, fmt::format("'{}'", entry->key), keys::rule::table, table);
    VaccinationRule rule;
    rule.name = entry->key;
    rule.span = entry->key_span;
    if (rule.name == "rabies") rule.wait = rabies_wait;
    if (const auto wait = fields.quantity(keys::rule::wait)) {
      rule.wait = wait->value;
    }
    if (const auto valid = fields.quantity(keys::rule::valid)) {
      rule.valid = valid->value;
    }
    rule.required = fields.flag(keys::rule::required, rule.required);
    fields.finish();
    if (table.sink().error_count() == errors) out.push_back(std::move(rule));
  }
  return out;
}

void read_time(Fields& fields, TimeSettings& time) {
  const auto minutes = [&](const NumberKey& key, double& value) {
    value = fields.number(key).value_or(value);
  };
  minutes(keys::time::base, time.base);
  minutes(keys::time::bath_per_m2, time.bath_per_m2);
  minutes(keys::time::dry_per_m2, time.dry_per_m2);
  minutes(keys::time::brush_per_m2, time.brush_per_m2);
  minutes(keys::time::clip_per_part, time.clip_per_part);
  minutes(keys::time::scissor_per_part, time.scissor_per_part);
  time.spread = fields.number(keys::time::spread).value_or(time.spread);
  fields.finish();
}

void read_mixing(Fields& fields, Salon& salon) {
  if (const auto keeps = fields.quantity(keys::mixing::keeps)) {
    salon.mix_keeps = keeps->value;
  }
  for (const CoatInfo& row : coats()) {
    const auto coat = static_cast<std::size_t>(row.coat);
    if (const auto volume = fields.quantity(*keys::mixing::coats.at(coat))) {
      salon.mix_per_m2.at(coat) = volume->value.in_ml() / 1000;
    }
  }
  fields.finish();
}

void read_blends(Fields& fields, BlendSettings& blends) {
  if (const auto step = fields.quantity(keys::blends::step)) blends.step = step->value;
  blends.ratio = fields.number(keys::blends::ratio).value_or(blends.ratio);
  fields.finish();
}
}  // namespace

std::optional<std::chrono::weekday> keys::parse_weekday(std::string_view word) {
  // Cut short as people do, "tue" and "thurs"; three letters tell them apart.
  const std::string lower = lower_ascii(word);
  const auto* const found = std::ranges::find_if(words::weekdays, [&](std::string_view day) {
    return lower.size() >= 3 && day.starts_with(lower);
  });
  if (found == words::weekdays.end()) return std::nullopt;
  return std::chrono::weekday(static_cast<unsigned>(found - words::weekdays.begin()));
}

std::span<const std::string_view> keys::paper_words() {
  static const std::vector<std::string_view> names = paper_names();
  return names;
}

Salon default_salon() {
  Salon salon;
  for (const CoatInfo& row : coats()) {
    salon.mix_per_m2[static_cast<std::size_t>(row.coat)] = row.mix;
  }
  return salon;
}

std::optional<Salon> read_salon_text(const ReadContext& context, std::string path,
                                     std::string text) {
  // An empty salon.toml says that this is a salon's folder, and nothing else.
  const auto document = read_document(context, std::move(path), std::move(text), "");
  if (!document) return std::nullopt;
  Fields file(*document, keys::salon_file::file, context.sink);
  Salon salon = default_salon();
  salon.span = document->span();
  if (auto table = file.table(keys::salon_file::salon)) {
    salon.span = table->span();
    read_identity(*table, salon);
  }
  if (auto table = file.table(keys::salon_file::paper)) read_paper(*table, salon.paper);
  if (auto table = file.table(keys::salon_file::kit)) {
    // A heading with nothing under it says nothing of the drawer.
    if (!table->empty()) salon.kit = read_kit(*table);
  }
  if (auto table = file.table(keys::salon_file::products)) salon.products = read_products(*table);
  if (auto table = file.table(keys::salon_file::vaccinations))
    salon.vaccinations = read_rules(*table);
  if (auto table = file.table(keys::salon_file::blends)) read_blends(*table, salon.blends);
  if (auto table = file.table(keys::salon_file::time)) read_time(*table, salon.time);
  if (auto table = file.table(keys::salon_file::mixing)) read_mixing(*table, salon);
  file.finish();
  leave_out_faulty(salon, *document, context);
  return salon;
}

std::optional<Salon> read_salon(const ReadContext& context, const std::string& path) {
  auto bytes = read_bytes(context, path);
  if (!bytes) return std::nullopt;
  return read_salon_text(context, path, *std::move(bytes));
}
}  // namespace furnish
