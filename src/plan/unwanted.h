#pragma once

#include <string>
#include <vector>

#include "model/pet.h"
#include "model/product.h"

namespace furnish {

class DiagnosticSink;

/// What of a product a pet may not have: the `allergens` of its alerts, as written, and what their
/// texts say it is allergic to, by the product's own word for it. In order, each once; empty if
/// nothing.
std::vector<std::string> unwanted_in(const Product&, const Pet&);

/// Warns of a word in `allergens` that nothing in these products meets where one is nearly it: a
/// slip ("lavendar"), which no rule would see.
void check_allergens(const Pet&, const std::vector<Product>& of_salon, DiagnosticSink&);
}  // namespace furnish
