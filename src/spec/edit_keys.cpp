#include "spec/edit_keys.h"

#include <algorithm>

#include "spec/places.h"

namespace furnish {
namespace {
const KeyInfo* key_of(const TableInfo* table, std::string_view name) {
  if (table == nullptr) return nullptr;
  for (const KeyInfo* const key : table->keys) {
    if (key->name == name) return key;
  }
  return table->others.value;
}

bool same_places(std::string_view a, std::string_view b) {
  DiagnosticSink unheard;
  const auto one = read_places(a, {}, AnySide::yes, {}, unheard);
  if (!one) return false;
  const auto other = read_places(b, {}, AnySide::yes, {}, unheard);
  return other && one->group == other->group && one->places == other->places;
}

bool listed(const TableInfo& table, std::string_view name) {
  return rank(&table, name) < table.keys.size();
}

/// The key of a table that is meant by `name`.
std::string spelled(const EditTable& table, const TableInfo* info, const std::string& name) {
  const bool places = info != nullptr && info->others.which == OpenKeys::places;
  if (!places || find(table, name) != nullptr || listed(*info, name)) return name;
  const auto meant = std::ranges::find_if(table, [&](const EditEntry& one) {
    return !listed(*info, one.key) && same_places(name, one.key);
  });
  return meant == table.end() ? name : meant->key;
}
}  // namespace

const KeyInfo* key_at(const TableInfo* file, const EditPath& path) {
  const TableInfo* table = file;
  const KeyInfo* key = nullptr;
  for (const EditStep& step : path) {
    const auto* const name = std::get_if<std::string>(&step);
    if (name == nullptr) continue;
    key = key_of(table, *name);
    table = key == nullptr ? nullptr : key->table;
  }
  return key;
}

const TableInfo* table_at(const TableInfo* file, const EditPath& path) {
  if (path.empty()) return file;
  const KeyInfo* const key = key_at(file, path);
  return key == nullptr ? nullptr : key->table;
}

std::size_t rank(const TableInfo* table, std::string_view key) {
  if (table == nullptr) return 0;
  const auto found =
      std::ranges::find(table->keys, key, [](const KeyInfo* one) { return one->name; });
  return static_cast<std::size_t>(found - table->keys.begin());
}

EditValue in_order(const TableInfo* info, EditValue value) {
  if (EditTable* const table = value.table()) {
    std::ranges::stable_sort(*table, {}, [&](const EditEntry& one) { return rank(info, one.key); });
    for (EditEntry& one : *table) {
      const KeyInfo* const key = key_of(info, one.key);
      one.value = in_order(key == nullptr ? nullptr : key->table, std::move(one.value));
    }
  } else if (EditList* const list = value.list()) {
    for (EditValue& item : *list) item = in_order(info, std::move(item));
  }
  return value;
}

EditPath spelled_as_in(const EditValue& tree, const TableInfo* file, const EditPath& path) {
  EditPath out;
  for (const EditStep& step : path) {
    const auto* const name = std::get_if<std::string>(&step);
    const EditValue* const up = find(tree, out);
    if (name != nullptr && up != nullptr && up->table() != nullptr) {
      out.emplace_back(spelled(*up->table(), table_at(file, out), *name));
    } else {
      out.push_back(step);
    }
  }
  return out;
}

EditValue spelled_as_in(const EditValue& tree, const TableInfo* file, const EditPath& path,
                        EditValue value) {
  const EditValue* const there = find(tree, path);
  if (value.table() == nullptr || there == nullptr || there->table() == nullptr) return value;
  for (EditEntry& one : *value.table()) {
    one.key = spelled(*there->table(), table_at(file, path), one.key);
    one.value = spelled_as_in(tree, file, joined(path, one.key), std::move(one.value));
  }
  return value;
}
}  // namespace furnish
