#pragma once

#include "model/product.h"
#include "spec/keys.h"
#include "spec/word_tables.h"

// A product on the shelf, and one use of it.

namespace furnish::keys::product {
using namespace make_key;

inline constexpr auto name = text("name", "\"oat shampoo\"", "what stands on the bottle");
inline constexpr auto kind = choice<ProductKind>(
    "kind", "kind of product", words::parse_in<words::product_kinds, ProductKind>,
    words::all<words::product_kinds>, "\"shampoo\"", "what it is");
inline constexpr auto dilution =
    of(Kind::dilution, "dilution", "\"10:1\"",
       "water to product; \"1 in 10\" is a tenth of all, \"neat\" is undiluted");
inline constexpr auto dwell =
    quantity<bounds::dwell>("dwell", "\"4 min\"", "how long it stays on the coat");
inline constexpr auto contains =
    texts("contains", "[\"oat\", \"glycerin\"]", "what is in it, held against allergies");
inline constexpr auto medicated = flag("medicated", "true", "it treats something");
inline constexpr auto mixed = date("mixed", "2026-11-24", "the day this bottle was mixed");

/// `[products.KEY]` of a salon.
inline constexpr std::array<const KeyInfo*, 7> shelf_list{&name,     &kind,      &dilution, &dwell,
                                                          &contains, &medicated, &mixed};
inline constexpr TableInfo shelf{"product", "a product on the shelf", shelf_list};

inline constexpr auto product =
    text("product", "\"oat\"", "the key of a product in salon.toml; else write it out here");
inline constexpr auto comb_through =
    text("comb_through", "\"coarse, then fine\"", "how it is combed through the coat");
/// One use in a bath.
inline constexpr std::array<const KeyInfo*, 8> use_list{
    &product, &dwell, &comb_through, &name, &kind, &dilution, &contains, &medicated};
inline constexpr TableInfo use{"product-use", "a use of a product", use_list};
/// One use at a visit.
inline constexpr std::array<const KeyInfo*, 9> used_list{
    &product, &mixed, &dwell, &comb_through, &name, &kind, &dilution, &contains, &medicated};
inline constexpr TableInfo used{"product-used", "a product that was used", used_list};

constexpr ProductKey use_of(std::string_view key, std::string_view example, std::string_view doc) {
  auto made = of<ProductKey>(Kind::product, key, example, doc);
  made.table = &use;
  return made;
}
}  // namespace furnish::keys::product
