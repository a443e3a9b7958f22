#include "desk/tree.h"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "base/files.h"
#include "spec/document.h"

namespace furnish::desk {
namespace {
using Json = nlohmann::ordered_json;

Json json_of(const TomlNode&);

Json json_of(const TomlTable& table) {
  Json out = Json::object();
  for (const TomlEntry& entry : table) out[entry.key] = json_of(entry.node);
  return out;
}

struct ValueJson {
  Json operator()(const std::string& text) const { return text; }
  Json operator()(std::int64_t number) const { return number; }
  Json operator()(double number) const { return number; }
  Json operator()(bool flag) const { return flag; }
  Json operator()(const TomlDate& date) const { return {{"date", date.written}}; }
  Json operator()(const TomlTime& time) const {
    const auto minutes = time.time.count();
    return {{"time", fmt::format("{:02}:{:02}", minutes / 60, minutes % 60)}};
  }
  Json operator()(const TomlDateTime& both) const { return {{"date", both.date}}; }
  Json operator()(const TomlList& list) const {
    Json out = Json::array();
    for (const TomlNode& node : list) out.push_back(json_of(node));
    return out;
  }
  Json operator()(const TomlTable& table) const { return json_of(table); }
};

Json json_of(const TomlNode& node) {
  return std::visit(ValueJson{}, node.value);
}

bool holds(const SourceSpan& span, Position at) {
  return span.begin.line != 0 && span.begin <= at && at < span.end;
}

bool find_in(const TomlTable& table, Position at, Json& path);

/// Adds the steps from a value down to a place in it.
bool find_in(const TomlNode& node, Position at, Json& path) {
  if (const auto* const table = std::get_if<TomlTable>(&node.value)) {
    return find_in(*table, at, path) || holds(node.span, at);
  }
  if (const auto* const list = std::get_if<TomlList>(&node.value)) {
    for (std::size_t i = 0; i < list->size(); ++i) {
      path.push_back(i);
      if (find_in((*list)[i], at, path)) return true;
      path.erase(path.size() - 1);
    }
  }
  return holds(node.span, at);
}

bool find_in(const TomlTable& table, Position at, Json& path) {
  for (const TomlEntry& entry : table) {
    path.push_back(entry.key);
    if (find_in(entry.node, at, path) || holds(entry.key_span, at)) return true;
    path.erase(path.size() - 1);
  }
  return false;
}
}  // namespace

std::optional<Document> parsed(std::string_view text) {
  const MemoryFiles none({});
  SourceSet sources;
  DiagnosticSink unheard;  // whoever reads the file as what it is says it
  return read_document({none, sources, unheard}, "", std::string(text), "");
}

Json tree_json(const Document& document) {
  return json_of(document.root);
}

Json path_json(const Document& document, Position at) {
  Json path = Json::array();
  if (at.line == 0 || !find_in(document.root, at, path)) return nullptr;
  return path;
}
}  // namespace furnish::desk
