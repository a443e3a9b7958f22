#include "desk/formats.h"

#include <array>
#include <nlohmann/json.hpp>

#include "spec/file_kinds.h"
#include "trade/tools.h"

namespace furnish::desk {
namespace {
using Json = nlohmann::ordered_json;

/// In the order of Kind.
constexpr std::array<const char*, 34> kind_names{
    "text",     "texts",       "free_text", "free_texts", "staff_text", "flag",     "date",
    "birth",    "time",        "number",    "whole",      "minutes",    "choice",   "choices",
    "paper",    "length",      "lengths",   "mass",       "volume",     "duration", "days",
    "dilution", "language",    "photo",     "place",      "places",     "blade",    "blades",
    "product",  "vaccination", "focus",     "seams",      "table",      "tables"};
static_assert(static_cast<std::size_t>(Kind::tables) + 1 == kind_names.size());
constexpr std::array<const char*, 4> open_names{"none", "names", "places", "blades"};

Json table_json(const TableInfo& table);

Json key_json(const KeyInfo& key) {
  Json out{{"name", key.name},
           {"kind", kind_names.at(static_cast<std::size_t>(key.kind))},
           {"doc", key.doc},
           {"example", key.example},
           {"required", key.required},
           {"audience", key.audience == Audience::staff ? "staff" : "everyone"}};
  if (key.words != nullptr) {
    for (const std::string_view word : key.words()) out["words"].push_back(word);
  } else if (key.kind == Kind::blade || key.kind == Kind::blades) {
    for (const Blade& blade : blades()) out["words"].push_back(blade.name);
  }
  if (key.bounds != nullptr) out["bounds"] = key.bounds();
  if (key.table != nullptr) out["table"] = table_json(*key.table);
  return out;
}

Json table_json(const TableInfo& table) {
  Json out{{"name", table.name}, {"doc", table.doc}, {"keys", Json::array()}};
  for (const KeyInfo* const key : table.keys) out["keys"].push_back(key_json(*key));
  if (table.others.value != nullptr) {
    out["others"] = {{"which", open_names.at(static_cast<std::size_t>(table.others.which))},
                     {"value", key_json(*table.others.value)}};
  }
  return out;
}
}  // namespace

Json formats_json() {
  Json out = Json::object();
  for (const FileKind& kind : file_kinds()) out[std::string(kind.name)] = table_json(*kind.table);
  return out;
}
}  // namespace furnish::desk
