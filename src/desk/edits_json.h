#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string_view>
#include <vector>

#include "spec/edit.h"

namespace furnish::desk {

// Edits and values as a page sends and takes them: days as {"date": "2026-11-24"}, times as
// {"time": "10:30"}, all else as JSON has it.

nlohmann::ordered_json value_json(const EditValue&);
nlohmann::ordered_json path_json(const EditPath&);
nlohmann::ordered_json edit_json(const Edit&);
/// What cannot be an edit throws nlohmann::json::exception.
EditPath path_in(const nlohmann::ordered_json&);
std::vector<Edit> edits_in(const nlohmann::ordered_json&);

/// A text to be changed as a file of that kind ("pet").
EditedText text_to_edit(std::string_view kind, std::string text);
/// The tree of a text; null if it is no TOML.
nlohmann::ordered_json tree_json(const EditedText&);
}  // namespace furnish::desk
