#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>

#include "spec/document.h"

namespace furnish::test {

/// A file as JSON: dates and times as strings, as editors take them.
nlohmann::json to_json(const TomlTable&);

/// Where `value` breaks a JSON Schema, for those keywords that schema.cpp writes; empty if it keeps
/// it. Throws for a keyword that it does not know, so that none is passed over.
std::string broken(const nlohmann::json& schema, const nlohmann::json& value);
}  // namespace furnish::test
