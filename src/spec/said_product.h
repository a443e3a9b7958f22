#pragma once

#include <string>
#include <string_view>

namespace furnish {

/// A product, its mix and its time that somebody wrote one after the other, taken apart:
/// "oat 10:1 4 min". What is not there is empty; what is, is TOML's text without quotes.
struct SaidProduct {
  std::string name, dilution, dwell;
};
SaidProduct said_product(std::string_view words);

/// `{ name = "oat", dilution = "10:1", dwell = "4 min" }`; empty if the words are but a name.
std::string product_in_braces(std::string_view words);
}  // namespace furnish
