#pragma once

#include <string>
#include <utility>
#include <vector>

#include "model/product.h"

namespace furnish {

/// A product in use, as keys and values: by its key in the salon, or written out. `usual` is the
/// kind that its place in the file implies.
std::vector<std::pair<std::string, std::string>> product_fields(const ProductUse&,
                                                                ProductKind usual);
/// The same as one value: `"oat"`, or `{ product = "oat", dwell = "4 min" }`.
std::string product_value(const ProductUse&, ProductKind usual);
}  // namespace furnish
