#include "spec/product_writer.h"

#include "spec/toml_text.h"
#include "spec/word_tables.h"

namespace furnish {
using toml_text::quantity;
using toml_text::quoted;

std::vector<std::pair<std::string, std::string>> product_fields(const ProductUse& use,
                                                                ProductKind usual) {
  const Product& from = use.product;
  std::vector<std::pair<std::string, std::string>> rows;
  // Without a salon a product is a word; a time beside it belongs to this bath.
  const bool word_only = from.key.empty() && use.dwell && !from.dwell && !from.dilution &&
                         from.contains.empty() && !from.medicated && from.kind == usual;
  if (!from.key.empty() || word_only) {
    rows.emplace_back("product", quoted(from.key.empty() ? from.name : from.key));
    if (use.dwell) rows.emplace_back("dwell", quantity(*use.dwell));
  } else {
    rows.emplace_back("name", quoted(from.name));
    if (from.kind != usual) {
      rows.emplace_back("kind", quoted(words::word(words::product_kinds, from.kind)));
    }
    if (from.dilution) rows.emplace_back("dilution", quantity(from.dilution->value));
    if (use.planned_dwell()) rows.emplace_back("dwell", quantity(*use.planned_dwell()));
    if (!from.contains.empty()) rows.emplace_back("contains", toml_text::list(from.contains));
    if (from.medicated) rows.emplace_back("medicated", "true");
  }
  if (!use.comb_through.empty()) rows.emplace_back("comb_through", quoted(use.comb_through));
  return rows;
}

std::string product_value(const ProductUse& use, ProductKind usual) {
  const auto rows = product_fields(use, usual);
  const bool key_alone = rows.size() == 1 && rows[0].first == "product";
  return key_alone && usual != ProductKind::other ? rows[0].second : toml_text::table(rows);
}
}  // namespace furnish
