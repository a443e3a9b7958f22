#pragma once

#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <string_view>

#include "base/source.h"

namespace furnish {
struct Document;
}
namespace furnish::desk {

/// A text as a tree whose parts have their places. Of one with faults of syntax, what could be read;
/// empty if nothing could.
std::optional<Document> parsed(std::string_view text);
/// The values of a file, keys in its order: days as {"date": …}, times as {"time": …}.
nlohmann::ordered_json tree_json(const Document&);
/// Keys and numbers that lead to what stands at a place, as far in as can be told; null for a place
/// in nothing.
nlohmann::ordered_json path_json(const Document&, Position);
}  // namespace furnish::desk
