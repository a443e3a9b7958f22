#include "spec/salon_reader.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "base/paper.h"
#include "base/text.h"
#include "spec/language.h"
#include "spec/product_reader.h"
#include "spec/trim_reader.h"
#include "trade/health.h"

namespace furnish {
namespace {
constexpr std::array<std::string_view, 2> unit_words{"metric", "us"};
std::optional<Units> parse_units(std::string_view word) {
  if (word == "metric") return Units::metric;
  if (word == "us") return Units::us;
  return std::nullopt;
}

constexpr std::array<std::string_view, 7> weekday_words{
    "sunday", "monday", "tuesday", "wednesday", "thursday", "friday", "saturday"};
std::optional<std::chrono::weekday> parse_weekday(std::string_view word) {
  const auto* const found = std::ranges::find(weekday_words, lower_ascii(word));
  if (found == weekday_words.end()) return std::nullopt;
  return std::chrono::weekday(static_cast<unsigned>(found - weekday_words.begin()));
}

constexpr std::array<std::string_view, 2> felted_words{"clip first", "bath first"};
std::optional<FeltedWay> parse_felted(std::string_view word) {
  if (word == felted_words[0]) return FeltedWay::clip_first;
  if (word == felted_words[1]) return FeltedWay::bath_first;
  return std::nullopt;
}

void read_identity(Fields& fields, Salon& salon) {
  salon.name = fields.words("name");
  salon.phone = fields.words("phone");
  salon.email = fields.words("email");
  salon.address = fields.word_list("address");
  if (std::string tag = read_language(fields, "language"); !tag.empty()) salon.language = tag;
  if (const auto units = fields.choice("units", "units", parse_units, unit_words)) {
    salon.units = units->value;
  }
  for (const auto& day : fields.choices("closed", "weekday", parse_weekday, weekday_words)) {
    salon.closed.push_back(day.value);
  }
  salon.contact_on_card = fields.flag("contact_on_card", salon.contact_on_card);
  salon.tools_for_owners = fields.flag("tools_for_owners", salon.tools_for_owners);
  if (const auto way = fields.choice("felted", "way", parse_felted, felted_words)) {
    salon.felted = way->value;
  }
  salon.shorten_visits = fields.flag("shorten_visits", salon.shorten_visits);
  salon.photos_anywhere = fields.flag("photos_anywhere", salon.photos_anywhere);
  fields.finish();
}

void read_paper(Fields& fields, PaperSettings& paper) {
  const std::vector<std::string_view> known = paper_names();
  if (const auto card = fields.choice("card", "paper", parse_paper, known)) {
    paper.card = card->value;
  }
  if (const auto sheet = fields.choice("sheet", "paper", parse_paper, known)) {
    paper.sheet = sheet->value;
  }
  const auto distance = [&](std::string_view key) -> std::optional<Length> {
    const auto read = fields.quantity(key, bounds::reading_distance);
    return read ? std::optional(read->value) : std::nullopt;
  };
  paper.distances = {distance("name"), distance("alert"), distance("action"), distance("body"),
                     distance("footer")};
  fields.finish();
}

std::vector<const Blade*> read_blades(Fields& fields) {
  std::vector<std::pair<const Blade*, SourceSpan>> seen;
  for (const TomlNode& item : fields.items("blades")) {
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
  auto table = fields.table("measured");
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
  const bool blades_listed = fields.find("blades") != nullptr;
  if (blades_listed) {
    kit.blades = read_blades(fields);
  } else {
    for (const Blade& blade : blades()) kit.blades.push_back(&blade);
  }
  if (fields.find("combs") != nullptr) {
    for (const TomlNode& item : fields.items("combs")) {
      const auto comb = as_quantity(item, "combs", bounds::comb, fields.sink());
      if (comb) kit.combs.push_back(*comb);
    }
  } else {
    kit.combs.assign(guard_combs().begin(), guard_combs().end());
  }
  if (fields.find("shears") != nullptr) {
    for (const auto& s : fields.choices("shears", "shears", parse_shears, shears_words())) {
      kit.shears.push_back(s.value);
    }
  } else {
    kit.shears = {Shears::straight, Shears::curved, Shears::thinning, Shears::blending};
  }
  if (const auto bottle = fields.quantity("bottle", bounds::bottle)) kit.bottle = bottle->value;
  read_measured(fields, kit, blades_listed, kit.measured);
  fields.finish();
  return kit;
}

std::vector<VaccinationRule> read_rules(Fields& table) {
  std::vector<VaccinationRule> out;
  for (const TomlEntry* const entry : table.rest()) {
    if (!std::holds_alternative<TomlTable>(entry->node.value)) {
      report_type(entry->node, entry->key, "a table such as { valid = \"3 years\" }", table.sink());
      continue;
    }
    Fields fields(entry->node, fmt::format("'{}'", entry->key), table);
    VaccinationRule rule;
    rule.name = entry->key;
    rule.span = entry->key_span;
    if (rule.name == "rabies") rule.wait = rabies_wait;
    if (const auto wait = fields.quantity("wait", bounds::vaccination_wait)) {
      rule.wait = wait->value;
    }
    if (const auto valid = fields.quantity("valid", bounds::vaccination_valid)) {
      rule.valid = valid->value;
    }
    rule.required = fields.flag("required", rule.required);
    fields.finish();
    out.push_back(std::move(rule));
  }
  return out;
}

void read_time(Fields& fields, TimeSettings& time) {
  const auto minutes = [&](std::string_view key, double& value) {
    value = fields.number(key, bounds::minutes_a_share).value_or(value);
  };
  minutes("base", time.base);
  minutes("bath_per_m2", time.bath_per_m2);
  minutes("dry_per_m2", time.dry_per_m2);
  minutes("brush_per_m2", time.brush_per_m2);
  minutes("clip_per_part", time.clip_per_part);
  minutes("scissor_per_part", time.scissor_per_part);
  time.spread = fields.number("spread", bounds::spread).value_or(time.spread);
  fields.finish();
}

void read_mixing(Fields& fields, Salon& salon) {
  if (const auto keeps = fields.quantity("keeps", bounds::mix_keeps)) {
    salon.mix_keeps = keeps->value;
  }
  for (const CoatInfo& row : coats()) {
    if (const auto volume = fields.quantity(row.key, bounds::mix_per_m2)) {
      salon.mix_per_m2[static_cast<std::size_t>(row.coat)] = volume->value.in_ml() / 1000;
    }
  }
  fields.finish();
}

void read_blends(Fields& fields, BlendSettings& blends) {
  if (const auto step = fields.quantity("step", bounds::blend_step)) blends.step = step->value;
  blends.ratio = fields.number("ratio", bounds::blend_ratio).value_or(blends.ratio);
  fields.finish();
}
}  // namespace

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
  Fields file(*document, "a salon's file", context.sink);
  Salon salon = default_salon();
  salon.span = document->span();
  if (auto table = file.table("salon")) {
    salon.span = table->span();
    read_identity(*table, salon);
  }
  if (auto table = file.table("paper")) read_paper(*table, salon.paper);
  if (auto table = file.table("kit")) salon.kit = read_kit(*table);
  if (auto table = file.table("products")) salon.products = read_products(*table);
  if (auto table = file.table("vaccinations")) salon.vaccinations = read_rules(*table);
  if (auto table = file.table("blends")) read_blends(*table, salon.blends);
  if (auto table = file.table("time")) read_time(*table, salon.time);
  if (auto table = file.table("mixing")) read_mixing(*table, salon);
  file.finish();
  if (!no_errors_in(document->file, context.sink)) return std::nullopt;
  return salon;
}

std::optional<Salon> read_salon(const ReadContext& context, const std::string& path) {
  auto bytes = read_bytes(context, path);
  if (!bytes) return std::nullopt;
  return read_salon_text(context, path, *std::move(bytes));
}
}  // namespace furnish
