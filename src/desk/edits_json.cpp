#include "desk/edits_json.h"

#include <array>
#include <cmath>
#include <nlohmann/json.hpp>
#include <utility>

#include "spec/file_kinds.h"

namespace furnish::desk {
namespace {
using Json = nlohmann::ordered_json;

/// In the order of Edit::Op.
constexpr std::array<const char*, 3> ops{"set", "remove", "append"};

[[noreturn]] void unknown(const Json& what) {
  throw Json::type_error::create(302, "it is no edit", &what);
}

struct ToJson {
  Json operator()(const EditDate& date) const { return {{"date", date.written}}; }
  Json operator()(const EditTime& time) const { return {{"time", time.written.substr(0, 5)}}; }
  Json operator()(const EditMoment& both) const { return {{"moment", both.written}}; }
  Json operator()(const EditList& list) const {
    Json out = Json::array();
    for (const EditValue& value : list) out.push_back(value_json(value));
    return out;
  }
  Json operator()(const EditTable& table) const {
    Json out = Json::object();
    for (const EditEntry& entry : table) out[entry.key] = value_json(entry.value);
    return out;
  }
  template <typename T>
  Json operator()(const T& plain) const {
    return plain;
  }
};

EditValue value_in(const Json& json);

EditValue object_in(const Json& json) {
  if (json.size() == 1 && json.begin()->is_string()) {
    const std::string& key = json.begin().key();
    auto written = json.begin()->get<std::string>();
    if (key == "date") return {EditDate{std::move(written)}};
    if (key == "time") return {EditTime{std::move(written)}};
    if (key == "moment") return {EditMoment{std::move(written)}};
  }
  EditTable out;
  for (const auto& [key, value] : json.items()) out.push_back({key, value_in(value)});
  return {std::move(out)};
}

EditValue value_in(const Json& json) {
  switch (json.type()) {
    case Json::value_t::string:
      return {json.get<std::string>()};
    case Json::value_t::boolean:
      return {json.get<bool>()};
    case Json::value_t::number_integer:
    case Json::value_t::number_unsigned:
      return {json.get<std::int64_t>()};
    case Json::value_t::number_float:
      return {json.get<double>()};
    case Json::value_t::object:
      return object_in(json);
    case Json::value_t::array: {
      EditList out;
      for (const Json& one : json) out.push_back(value_in(one));
      return {std::move(out)};
    }
    default:
      unknown(json);
  }
}
}  // namespace

Json value_json(const EditValue& value) {
  return std::visit(ToJson{}, value.is);
}

Json path_json(const EditPath& path) {
  Json out = Json::array();
  for (const EditStep& step : path) {
    std::visit([&](const auto& one) { out.push_back(one); }, step);
  }
  return out;
}

Json edit_json(const Edit& edit) {
  Json out{{"op", ops.at(static_cast<std::size_t>(edit.op))}, {"path", path_json(edit.path)}};
  if (edit.op != Edit::Op::remove) out["value"] = value_json(edit.value);
  return out;
}

EditPath path_in(const Json& json) {
  EditPath out;
  if (!json.is_array()) unknown(json);
  for (const Json& step : json) {
    if (step.is_number_unsigned()) {
      out.emplace_back(step.get<std::size_t>());
    } else {
      out.emplace_back(step.get<std::string>());
    }
  }
  return out;
}

std::vector<Edit> edits_in(const Json& json) {
  std::vector<Edit> out;
  if (!json.is_array()) unknown(json);
  for (const Json& one : json) {
    const std::string op = one.at("op").get<std::string>();
    std::size_t number = 0;
    while (number < ops.size() && op != ops.at(number)) ++number;
    if (number == ops.size()) unknown(one);
    Edit edit{static_cast<Edit::Op>(number), path_in(one.at("path"))};
    if (edit.op != Edit::Op::remove) edit.value = value_in(one.at("value"));
    out.push_back(std::move(edit));
  }
  return out;
}

EditedText text_to_edit(std::string_view kind, std::string text) {
  const FileKind* const known = find_file_kind(kind);
  return EditedText(std::move(text), known != nullptr ? known->table : nullptr);
}

Json tree_json(const EditedText& text) {
  return text.good() ? value_json(text.tree()) : Json();
}
}  // namespace furnish::desk
