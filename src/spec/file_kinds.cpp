#include "spec/file_kinds.h"

#include <algorithm>
#include <array>

#include "spec/day_format.h"
#include "spec/pet_format.h"
#include "spec/salon_format.h"
#include "spec/style_format.h"
#include "spec/visit_format.h"

namespace furnish {
namespace {
constexpr std::array<FileKind, 6> kinds{{
    {"salon", "a salon's file", &keys::salon_file::file},
    {"pet", "a pet's file", &keys::pet_file::file},
    {"style", "a style's file", &keys::style_file::file},
    {"day", "a day's file", &keys::day_file::file},
    {"visit", "a visit's file", &keys::visit_file::file},
    {"products", "the products of a salon", &keys::shelf::table},
}};

const KeyInfo* find_in(const TableInfo& table, std::string_view name) {
  for (const KeyInfo* const key : table.keys) {
    if (key->name == name) return key;
    if (key->table == nullptr) continue;
    if (const KeyInfo* const inner = find_in(*key->table, name)) return inner;
  }
  const KeyInfo* const other = table.others.value;
  return other == nullptr || other->table == nullptr ? nullptr : find_in(*other->table, name);
}
}  // namespace

const KeyInfo* find_key(std::string_view name) {
  for (const FileKind& kind : kinds) {
    if (const KeyInfo* const key = find_in(*kind.table, name)) return key;
  }
  return nullptr;
}

std::span<const FileKind> file_kinds() {
  return kinds;
}

const FileKind* find_file_kind(std::string_view name) {
  const auto* const found = std::ranges::find(kinds, name, &FileKind::name);
  return found == kinds.end() ? nullptr : found;
}
}  // namespace furnish
