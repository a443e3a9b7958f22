#include "spec/pet_reader.h"

#include <fmt/format.h>

#include "spec/free_text.h"
#include "spec/pet_sections.h"
#include "spec/product_reader.h"
#include "spec/trim_reader.h"

namespace furnish {
namespace {
/// `none` says that there is no bath, so that a bath beside it is a slip.
void check_no_bath(Fields& fields) {
  const TomlEntry& none = *fields.find("none");
  for (const std::string_view key : {"before", "shampoo", "conditioner", "others", "dry"}) {
    const TomlEntry* const entry = fields.find(key);
    if (entry == nullptr) continue;
    fields.sink()
        .error("no-bath", entry->key_span, fmt::format("'{}' is given, but there is no bath", key))
        .notes.emplace_back(none.key_span, "'none' is here");
    return;
  }
}

constexpr std::array<std::string_view, 2> when_words{"first", "after clipping"};
std::optional<BathWhen> parse_bath_when(std::string_view word) {
  if (word == when_words[0]) return BathWhen::first;
  if (word == when_words[1]) return BathWhen::after_clipping;
  return std::nullopt;
}

Bath read_bath(Fields& fields, const Salon* salon) {
  Bath out;
  out.span = fields.span();
  out.none = fields.flag("none", false);
  out.before = fields.text("before");
  out.shampoo = read_product_use(fields, "shampoo", ProductKind::shampoo, salon);
  out.conditioner = read_product_use(fields, "conditioner", ProductKind::conditioner, salon);
  for (Fields& other : fields.tables("others")) {
    auto use = read_product_use(other, ProductKind::other, salon, Mixed::no);
    if (use) out.others.push_back(*std::move(use));
  }
  out.dry = fields.text("dry");
  out.when = fields.choice("when", "time of the bath", parse_bath_when, when_words);
  if (out.none) check_no_bath(fields);
  fields.finish();
  return out;
}

HomeAdvice read_home(Fields& fields, const Salon* salon) {
  HomeAdvice out;
  out.bath_every = fields.quantity("bath_every", bounds::home_bath_every);
  out.product = read_product_use(fields, "product", ProductKind::shampoo, salon);
  if (const auto bottle = fields.quantity("bottle", bounds::bottle)) out.bottle = bottle->value;
  out.notes = read_free_texts(fields, "notes");
  for (const std::string_view key : {"product", "bottle"}) {
    const TomlEntry* const entry = fields.find(key);
    if (entry == nullptr || fields.find("bath_every") != nullptr) continue;
    fields.sink()
        .error("no-home-bath", entry->key_span,
               fmt::format("'{}' is for a bath at home, but none is recommended", key))
        .hint = "say how often: bath_every = \"4 weeks\"";
    break;
  }
  fields.finish();
  return out;
}

void read_trim(Fields& fields, StyleLibrary& styles, Pet& pet) {
  if (const auto style = fields.text("style")) {
    const Style* const found = styles.find(style->value, style->span, fields.sink());
    if (found != nullptr) pet.style = *found;
  }
  pet.visit_every = fields.quantity("visit_every", bounds::visit_every);
  pet.own_trim = read_trim_rules(fields, Why::no);
}

void read_health(Fields& fields, Pet& pet) {
  pet.conditions = fields.choices("conditions", "condition", parse_condition, condition_words());
  pet.health_notes = fields.words("notes");
  fields.finish();
}

void check_vaccination_dates(const Pet& pet, DiagnosticSink& sink) {
  if (!pet.born) return;
  for (const Vaccination& one : pet.vaccinations) {
    if (one.given.value >= pet.born->value) continue;
    sink.error("before-birth", one.given.span,
               fmt::format("vaccination '{}' was given before the pet was born", one.name))
        .notes.emplace_back(pet.born->span, "born here");
  }
}

/// What the file says, with what it names looked up; resolved afterwards.
Pet read_sections(Fields& file, const Salon* salon, StyleLibrary& styles) {
  Pet pet;
  file.require("pet", "[pet] with a name under it");
  if (auto table = file.table("pet")) {
    pet.span = table->span();
    read_identity(*table, salon, pet);
  }
  if (auto table = file.table("owner")) pet.owner = read_owner(*table);
  for (Fields& alert : file.tables("alert")) pet.alerts.push_back(read_alert(alert));
  if (auto table = file.table("handling")) pet.handling = read_handling(*table);
  if (auto table = file.table("health")) read_health(*table, pet);
  if (auto table = file.table("build")) pet.build = read_build(*table);
  if (auto table = file.table("vaccinations")) {
    pet.vaccinations = read_vaccinations(*table, salon);
  }
  if (auto table = file.table("bath")) pet.bath = read_bath(*table, salon);
  if (auto table = file.table("trim")) read_trim(*table, styles, pet);
  if (auto table = file.table("finish")) pet.own_finish = read_finish(*table);
  if (auto table = file.table("home")) pet.home = read_home(*table, salon);
  if (auto table = file.table("preferences")) pet.preferences = read_preferences(*table);
  for (Fields& one : file.tables("accept")) pet.accepted.push_back(read_acceptance(one));
  file.finish();
  check_vaccination_dates(pet, file.sink());
  return pet;
}
}  // namespace

std::optional<Pet> read_pet_text(const ReadContext& context, std::string path, std::string text,
                                 const Salon* salon, StyleLibrary& styles) {
  std::string key = stem(path);
  const auto document = read_document(context, std::move(path), std::move(text),
                                      "a pet needs at least [pet] with a name");
  if (!document) return std::nullopt;
  Fields file(*document, "a pet's file", context.sink);
  Pet pet = read_sections(file, salon, styles);
  if (!no_errors_in(document->file, context.sink)) return std::nullopt;
  pet.key = std::move(key);
  pet.trim = resolve_trim(pet.style ? pet.style->trim : TrimRules(), pet.own_trim);
  pet.finish = resolve_finish(pet.style ? pet.style->finish : Finish(), pet.own_finish);
  return pet;
}

std::optional<Pet> read_pet(const ReadContext& context, const std::string& path, const Salon* salon,
                            StyleLibrary& styles) {
  auto bytes = read_bytes(context, path);
  if (!bytes) return std::nullopt;
  return read_pet_text(context, path, *std::move(bytes), salon, styles);
}
}  // namespace furnish
