#pragma once

#include "model/product.h"
#include "model/salon.h"
#include "spec/fields.h"

namespace furnish {

/// Takes away all that only a faultless table can tell of a product; what it is called stays.
void leave_out(Product&);
/// The tables of `[products]`; those that have faults are left out as above.
std::vector<Product> read_products(Fields& products);

/// What a use of a product may say beside the product itself.
enum class Mixed : bool { no, yes };

/// One product of a pet's bath or of a visit: `{ product = "oat" }` looks up a product of the
/// salon,
/// `{ name = "…" }` writes one out, of `kind` unless it says.
std::optional<ProductUse> read_product_use(Fields&, ProductKind kind, const Salon*, Mixed);
/// The same behind a key, where a string stands for `{ product = … }`.
std::optional<ProductUse> read_product_use(Fields& parent, const ProductKey& key, ProductKind kind,
                                           const Salon*);
}  // namespace furnish
