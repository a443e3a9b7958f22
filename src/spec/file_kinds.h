#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "spec/keys.h"

namespace furnish {

/// The kinds of files that a salon keeps. The products of a salon may be asked for by themselves:
/// they are a section of salon.toml.
struct FileKind {
  std::string_view name;   ///< "pet", as `schema` and `new` call it
  std::string_view title;  ///< "a pet's file"
  const TableInfo* table;
};
std::span<const FileKind> file_kinds();
/// Null if there is no such kind.
const FileKind* find_file_kind(std::string_view name);
/// The first key of that name in any file, or in any table of one; null if there is none.
const KeyInfo* find_key(std::string_view name);
}  // namespace furnish
