#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/date.h"
#include "base/measures.h"
#include "base/source.h"

namespace furnish {

enum class ProductKind : std::uint8_t { shampoo, conditioner, spray, other };

/// What comes out of a bottle; a row of salon.toml, or written out in a pet's bath.
struct Product {
  std::string key;  ///< empty if written out in place
  std::string name;
  ProductKind kind = ProductKind::other;
  std::optional<Located<Dilution>> dilution;  ///< empty: nobody said; never guessed
  std::optional<std::chrono::seconds> dwell;  ///< as on its label
  std::vector<std::string> contains;
  bool medicated = false;
  std::optional<Date> mixed;  ///< the day the bottle in use was mixed
  bool unread = false;        ///< what the salon's file says of it has faults: nobody knows it
  SourceSpan span;
};

/// A product in a pet's bath.
struct ProductUse {
  Product product;
  std::optional<std::chrono::seconds> dwell;  ///< as planned here; else the product's own
  std::string comb_through;
  SourceSpan span;
  std::optional<std::chrono::seconds> planned_dwell() const {
    return dwell ? dwell : product.dwell;
  }
};
}  // namespace furnish
