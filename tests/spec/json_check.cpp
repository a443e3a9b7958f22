#include "spec/json_check.h"

#include <algorithm>
#include <array>
#include <map>
#include <nlohmann/json.hpp>
#include <regex>
#include <stdexcept>

#include "base/text.h"

namespace furnish::test {
namespace {
using Json = nlohmann::json;

struct ToJson {
  Json operator()(const TomlList& list) const {
    Json out = Json::array();
    for (const TomlNode& item : list) out.push_back(std::visit(*this, item.value));
    return out;
  }
  Json operator()(const TomlTable& table) const { return to_json(table); }
  Json operator()(const TomlDate& date) const { return date.written; }
  Json operator()(const TomlTime&) const { return "09:30:00"; }
  Json operator()(const TomlDateTime&) const { return "2026-11-24T09:30:00"; }
  template <typename T>
  Json operator()(const T& plain) const {
    return plain;
  }
};

bool is(const Json& value, const std::string& type) {
  if (type == "string") return value.is_string();
  if (type == "array") return value.is_array();
  if (type == "object") return value.is_object();
  if (type == "boolean") return value.is_boolean();
  if (type == "integer") return value.is_number_integer();
  if (type == "number") return value.is_number();
  throw std::runtime_error("type " + type);
}

const std::regex& compiled(const std::string& pattern) {
  static std::map<std::string, std::regex> all;
  const auto [at, fresh] = all.try_emplace(pattern);
  if (fresh) at->second = std::regex(pattern);
  return at->second;
}

class Check {
 public:
  explicit Check(const Json& root) : root_(root) {}

  std::string broken(const Json& schema, const Json& value, const std::string& at) const {
    if (schema.is_boolean()) return schema.get<bool>() ? "" : at + " may not be there";
    for (const auto& [keyword, rule] : schema.items()) {
      const std::string fault = keeps(keyword, rule, schema, value, at);
      if (!fault.empty()) return fault;
    }
    return {};
  }

 private:
  std::string keeps(const std::string& keyword, const Json& rule, const Json& schema,
                    const Json& value, const std::string& at) const {
    constexpr std::array<std::string_view, 6> no_rules{"$schema", "title",       "description",
                                                       "format",  "definitions", "properties"};
    if (std::ranges::find(no_rules, keyword) != no_rules.end()) {
      return keyword == "properties" ? members(rule, value, at) : "";
    }
    const auto unless = [&](bool good) { return good ? std::string() : at + ": " + keyword; };
    if (keyword == "type") {
      if (rule.is_string()) return unless(is(value, rule));
      return unless(std::ranges::any_of(rule, [&](const Json& one) { return is(value, one); }));
    }
    if (keyword == "enum") return unless(std::ranges::find(rule, value) != rule.end());
    if (keyword == "anyOf") {
      return unless(std::ranges::any_of(
          rule, [&](const Json& one) { return broken(one, value, at).empty(); }));
    }
    if (keyword == "allOf") {
      return unless(std::ranges::all_of(
          rule, [&](const Json& one) { return broken(one, value, at).empty(); }));
    }
    if (keyword == "$ref") {
      const std::string name = rule.get<std::string>();
      return broken(root_.at("definitions").at(name.substr(name.rfind('/') + 1)), value, at);
    }
    if (keyword == "required") {
      if (!value.is_object()) return {};
      return unless(std::ranges::all_of(
          rule, [&](const Json& key) { return value.contains(key.get<std::string>()); }));
    }
    if (keyword == "additionalProperties") return others(rule, schema, value, at);
    if (keyword == "items") return items(rule, value, at);
    if (keyword == "minItems") return unless(!value.is_array() || value.size() >= rule);
    if (keyword == "maxItems") return unless(!value.is_array() || value.size() <= rule);
    if (keyword == "minLength") {
      return unless(!value.is_string() || code_points(value.get<std::string>()) >= rule);
    }
    if (keyword == "pattern") {
      return unless(!value.is_string() ||
                    std::regex_search(value.get<std::string>(), compiled(rule)));
    }
    if (keyword == "minimum") return unless(!value.is_number() || value >= rule);
    if (keyword == "maximum") return unless(!value.is_number() || value <= rule);
    throw std::runtime_error("keyword " + keyword);
  }

  std::string members(const Json& properties, const Json& value, const std::string& at) const {
    if (!value.is_object()) return {};
    for (const auto& [key, rule] : properties.items()) {
      if (!value.contains(key)) continue;
      std::string fault = broken(rule, value.at(key), at + "/" + key);
      if (!fault.empty()) return fault;
    }
    return {};
  }

  std::string others(const Json& rule, const Json& schema, const Json& value,
                     const std::string& at) const {
    if (!value.is_object()) return {};
    for (const auto& [key, member] : value.items()) {
      if (schema.contains("properties") && schema.at("properties").contains(key)) continue;
      std::string fault = broken(rule, member, at + "/" + key);
      if (!fault.empty()) return fault;
    }
    return {};
  }

  std::string items(const Json& rule, const Json& value, const std::string& at) const {
    if (!value.is_array()) return {};
    for (std::size_t i = 0; i < value.size(); ++i) {
      std::string fault = broken(rule, value[i], at + "/" + std::to_string(i));
      if (!fault.empty()) return fault;
    }
    return {};
  }

  const Json& root_;
};
}  // namespace

Json to_json(const TomlTable& table) {
  Json out = Json::object();
  for (const TomlEntry& entry : table) out[entry.key] = std::visit(ToJson(), entry.node.value);
  return out;
}

std::string broken(const Json& schema, const Json& value) {
  return Check(schema).broken(schema, value, "");
}
}  // namespace furnish::test
