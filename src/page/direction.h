#pragma once

#include <string_view>

namespace furnish {

/// True if a language is written from right to left. `tag` is BCP 47; a script in it ("az-Arab")
/// counts for more than the language. Languages and scripts as Unicode's CLDR has them.
bool right_to_left(std::string_view tag);
}  // namespace furnish
