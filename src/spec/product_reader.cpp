#include "spec/product_reader.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"
#include "spec/offer.h"
#include "spec/product_format.h"
#include "spec/said_product.h"
#include "spec/toml_text.h"

namespace furnish {
namespace {
/// What belongs to a product, wherever it is written; its dwell is its label's.
Product read_product(Fields& fields, ProductKind kind) {
  Product out;
  out.name = fields.words(keys::product::name);
  const auto said = fields.choice(keys::product::kind);
  out.kind = said ? said->value : kind;
  if (const TomlEntry* const entry = fields.find(keys::product::dilution)) {
    const auto dilution = as_dilution(entry->node, "dilution", fields.sink());
    if (dilution) out.dilution = {*dilution, entry->node.span};
  }
  if (const auto dwell = fields.quantity(keys::product::dwell)) out.dwell = dwell->value;
  out.contains = fields.word_list(keys::product::contains);
  out.medicated = fields.flag(keys::product::medicated, false);
  out.span = fields.span();
  return out;
}

/// The salon's product of that key. Where nobody listed any, the word is all there is: its name.
std::optional<Product> look_up(const Located<std::string>& word, ProductKind kind,
                               const Salon* salon, DiagnosticSink& sink) {
  const auto by_its_word = [&] {
    Product out;
    out.name = word.value;
    out.kind = kind;
    out.span = word.span;
    return out;
  };
  const bool some_unread = salon != nullptr && salon->unknown(SalonPart::products);
  if (salon == nullptr || (salon->products.empty() && !some_unread)) return by_its_word();
  const auto found = std::ranges::find(salon->products, word.value, &Product::key);
  if (found != salon->products.end()) return *found;
  if (some_unread) {  // it may stand where nobody can read it
    Product out = by_its_word();
    out.key = word.value;
    out.unread = true;
    return out;
  }
  std::vector<std::string_view> keys;
  for (const Product& product : salon->products) keys.push_back(product.key);
  report_unknown("unknown-product", word.span, "product", word.value, keys, sink)
      .notes.emplace_back(salon->products.front().span, "the salon's products begin here");
  return std::nullopt;
}

/// A product's mix and time behind its name, in one string: what the braces would say of it.
bool report_all_in_one(const Located<std::string>& word, const Salon* salon, DiagnosticSink& sink) {
  if (salon == nullptr) return false;
  const auto on_shelf = [&](std::string_view key) {
    return std::ranges::find(salon->products, key, &Product::key) != salon->products.end();
  };
  std::string braces = product_in_braces(word.value);
  if (braces.empty() || salon->products.empty() || on_shelf(word.value)) return false;
  const SaidProduct said = said_product(word.value);
  if (on_shelf(said.name)) {  // the bottle says how it is mixed
    const std::string key = toml_text::quoted(said.name);
    braces = said.dwell.empty()
                 ? key
                 : toml_text::table({{"product", key}, {"dwell", toml_text::quoted(said.dwell)}});
  }
  Diagnostic& fault = sink.error("unknown-product", word.span,
                                 "a product with its mix or its time is a table in braces");
  offer(fault, braces);
  return true;
}

/// With `product`, only what may differ from bath to bath is said beside it.
void refuse_product_keys(Fields& fields) {
  for (const KeyInfo* const key : keys::product::shelf_list) {
    if (key == &keys::product::dwell || key == &keys::product::mixed) continue;
    const TomlEntry* const entry = fields.find(*key);
    if (entry == nullptr) continue;
    fields.sink()
        .error("product-key", entry->key_span,
               fmt::format("'{}' belongs to the product, not to one use of it", key->name))
        .hint = "write it in [products] of salon.toml, or leave 'product' out and give a name";
  }
}

std::optional<ProductUse> looked_up_use(Fields& fields, const Located<std::string>& word,
                                        ProductKind kind, const Salon* salon) {
  refuse_product_keys(fields);
  ProductUse use;
  if (const auto dwell = fields.quantity(keys::product::dwell)) use.dwell = dwell->value;
  auto product = look_up(word, kind, salon, fields.sink());
  if (!product) return std::nullopt;
  use.product = *std::move(product);
  return use;
}
}  // namespace

void leave_out(Product& product) {
  Product out;
  out.key = std::move(product.key);
  out.name = std::move(product.name);
  out.kind = product.kind;
  out.medicated = product.medicated;
  out.span = product.span;
  out.unread = true;
  product = std::move(out);
}

std::vector<Product> read_products(Fields& products) {
  std::vector<Product> out;
  for (const TomlEntry* const entry : products.rest()) {
    const std::size_t errors = products.sink().error_count();
    if (!std::holds_alternative<TomlTable>(entry->node.value)) {
      report_type(entry->node, entry->key, "a table of a product", products.sink()).hint =
          fmt::format("write [products.{}] and its name under it", entry->key);
      Product product;
      product.key = product.name = entry->key;
      product.span = entry->key_span;
      product.unread = true;
      out.push_back(std::move(product));
      continue;
    }
    Fields fields(entry->node, fmt::format("[products.{}]", entry->key), keys::product::shelf,
                  products);
    Product product = read_product(fields, ProductKind::other);
    if (const auto mixed = fields.date(keys::product::mixed)) product.mixed = mixed->value;
    fields.finish();
    product.key = entry->key;
    product.span = entry->key_span;
    if (product.name.empty()) product.name = entry->key;
    if (products.sink().error_count() != errors) leave_out(product);
    out.push_back(std::move(product));
  }
  return out;
}

std::optional<ProductUse> read_product_use(Fields& fields, ProductKind kind, const Salon* salon,
                                           Mixed mixed) {
  const TomlEntry* const named = fields.find(keys::product::product);
  std::optional<ProductUse> use;
  if (named != nullptr) {
    if (const auto word = fields.text(keys::product::product))
      use = looked_up_use(fields, *word, kind, salon);
  } else {
    fields.require(keys::product::name, "or product = \"…\", a product of salon.toml");
    use = ProductUse{};
    use->product = read_product(fields, kind);
  }
  const std::string comb_through = fields.words(keys::product::comb_through);
  std::optional<Located<Date>> mixed_on;
  if (mixed == Mixed::yes) mixed_on = fields.date(keys::product::mixed);
  // After a fault in `product`, its neighbours are known keys all the same.
  for (const KeyInfo* const key : keys::product::use_list) fields.find(*key);
  fields.finish();
  if (!use) return std::nullopt;
  use->comb_through = comb_through;
  if (mixed_on) use->product.mixed = mixed_on->value;
  use->span = fields.span();
  return use;
}

std::optional<ProductUse> read_product_use(Fields& parent, const ProductKey& key, ProductKind kind,
                                           const Salon* salon) {
  const TomlEntry* const entry = parent.find(key);
  if (entry == nullptr) return std::nullopt;
  if (std::holds_alternative<TomlTable>(entry->node.value)) {
    Fields fields(entry->node, fmt::format("'{}'", key.name), *key.table, parent);
    return read_product_use(fields, kind, salon, Mixed::no);
  }
  if (!std::holds_alternative<std::string>(entry->node.value)) {
    report_type(entry->node, key.name, "a product such as \"oat\" or { product = \"oat\" }",
                parent.sink());
    return std::nullopt;
  }
  auto said = as_text(entry->node, key.name, parent.sink());
  if (!said) return std::nullopt;
  const Located<std::string> word{*std::move(said), entry->node.span};
  if (report_all_in_one(word, salon, parent.sink())) return std::nullopt;
  auto product = look_up(word, kind, salon, parent.sink());
  if (!product) return std::nullopt;
  return ProductUse{*std::move(product), {}, {}, entry->node.span};
}
}  // namespace furnish
