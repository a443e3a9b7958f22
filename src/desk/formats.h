#pragma once

#include <nlohmann/json_fwd.hpp>

namespace furnish::desk {

/// Every kind of file as data for a form: its tables, keys, their kinds, words, bounds and what
/// they are for, straight from what the readers ask by.
nlohmann::ordered_json formats_json();
}  // namespace furnish::desk
