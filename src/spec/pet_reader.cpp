#include "spec/pet_reader.h"

#include <fmt/format.h>

#include "spec/free_text.h"
#include "spec/pet_format.h"
#include "spec/pet_sections.h"
#include "spec/product_reader.h"
#include "spec/trim_reader.h"

namespace furnish {
namespace {
/// `none` says that there is no bath, so that a bath beside it is a slip.
void check_no_bath(Fields& fields) {
  const TomlEntry& none = *fields.find(keys::bath::none);
  for (const KeyInfo* const key : keys::bath::list) {
    const TomlEntry* const entry = fields.find(*key);
    if (entry == nullptr || key == &keys::bath::none || key == &keys::bath::when) continue;
    fields.sink()
        .error("no-bath", entry->key_span,
               fmt::format("'{}' is given, but there is no bath", key->name))
        .notes.emplace_back(none.key_span, "'none' is here");
    return;
  }
}

Bath read_bath(Fields& fields, const Salon* salon) {
  Bath out;
  out.span = fields.span();
  out.none = fields.flag(keys::bath::none, false);
  out.before = fields.text(keys::bath::before);
  out.shampoo = read_product_use(fields, keys::bath::shampoo, ProductKind::shampoo, salon);
  out.conditioner =
      read_product_use(fields, keys::bath::conditioner, ProductKind::conditioner, salon);
  for (Fields& other : fields.tables(keys::bath::others)) {
    auto use = read_product_use(other, ProductKind::other, salon, Mixed::no);
    if (use) out.others.push_back(*std::move(use));
  }
  out.dry = fields.text(keys::bath::dry);
  out.when = fields.choice(keys::bath::when);
  if (out.none) check_no_bath(fields);
  fields.finish();
  return out;
}

HomeAdvice read_home(Fields& fields, const Salon* salon) {
  HomeAdvice out;
  out.bath_every = fields.quantity(keys::home::bath_every);
  out.product = read_product_use(fields, keys::home::product, ProductKind::shampoo, salon);
  if (const auto bottle = fields.quantity(keys::home::bottle)) out.bottle = bottle->value;
  out.notes = read_free_texts(fields, keys::home::notes);
  for (const KeyInfo* const key : {static_cast<const KeyInfo*>(&keys::home::product),
                                   static_cast<const KeyInfo*>(&keys::home::bottle)}) {
    const TomlEntry* const entry = fields.find(*key);
    if (entry == nullptr || fields.find(keys::home::bath_every) != nullptr) continue;
    fields.sink()
        .error("no-home-bath", entry->key_span,
               fmt::format("'{}' is for a bath at home, but none is recommended", key->name))
        .hint = "say how often: bath_every = \"4 weeks\"";
    break;
  }
  fields.finish();
  return out;
}

void read_trim(Fields& fields, StyleLibrary& styles, Pet& pet) {
  if (const auto style = fields.text(keys::pet_trim::style)) {
    const Style* const found = styles.find(style->value, style->span, fields.sink());
    if (found != nullptr) pet.style = *found;
  }
  pet.visit_every = fields.quantity(keys::pet_trim::visit_every);
  pet.own_trim = read_trim_rules(fields, Why::no);
}

void read_health(Fields& fields, Pet& pet) {
  pet.conditions = fields.choices(keys::health::conditions);
  pet.health_notes = fields.words(keys::health::notes);
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
  if (auto table = file.table(keys::pet_file::pet)) {
    pet.span = table->span();
    read_identity(*table, salon, pet);
  }
  if (auto table = file.table(keys::pet_file::owner)) pet.owner = read_owner(*table);
  for (Fields& alert : file.tables(keys::pet_file::alert)) pet.alerts.push_back(read_alert(alert));
  if (auto table = file.table(keys::pet_file::handling)) pet.handling = read_handling(*table);
  if (auto table = file.table(keys::pet_file::health)) read_health(*table, pet);
  if (auto table = file.table(keys::pet_file::build)) pet.build = read_build(*table);
  if (auto table = file.table(keys::pet_file::vaccinations)) {
    pet.vaccinations = read_vaccinations(*table, salon);
  }
  if (auto table = file.table(keys::pet_file::bath)) pet.bath = read_bath(*table, salon);
  if (auto table = file.table(keys::pet_file::trim)) read_trim(*table, styles, pet);
  if (auto table = file.table(keys::pet_file::finish)) pet.own_finish = read_finish(*table);
  if (auto table = file.table(keys::pet_file::home)) pet.home = read_home(*table, salon);
  if (auto table = file.table(keys::pet_file::preferences))
    pet.preferences = read_preferences(*table);
  for (Fields& one : file.tables(keys::pet_file::accept))
    pet.accepted.push_back(read_acceptance(one));
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
  Fields file(*document, keys::pet_file::file, context.sink);
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
