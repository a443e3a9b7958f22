#pragma once

#include <string_view>

#include "spec/edit_value.h"
#include "spec/keys.h"

// What the key tables say of a path. `file` and tables may be null: then nothing is known.

namespace furnish {

/// Null where the tables have no such key.
const KeyInfo* key_at(const TableInfo* file, const EditPath&);
/// Of the table at a path; of the file at none.
const TableInfo* table_at(const TableInfo* file, const EditPath&);

/// The place of a key in its table; of one that is not listed, behind all.
std::size_t rank(const TableInfo*, std::string_view key);
/// With the keys of its tables in the order of the format.
EditValue in_order(const TableInfo*, EditValue);

/// The path with the keys as they stand in the tree, where a place is spelled in another way.
EditPath spelled_as_in(const EditValue& tree, const TableInfo* file, const EditPath&);
/// The same of the keys of what is to stand at a path.
EditValue spelled_as_in(const EditValue& tree, const TableInfo* file, const EditPath&, EditValue);
}  // namespace furnish
