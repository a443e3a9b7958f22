#pragma once

#include <map>
#include <string>

#include "spec/file_kinds.h"

namespace furnish {

/// What is known of a new file already: what stands behind a key, as TOML; behind that of a
/// repeated table, such as [[alert]], all of them with their headings.
using KnownFacts = std::map<const KeyInfo*, std::string>;

/// A new file of a kind, good as it is: what must be there, and every other key in a line that is
/// not read, with its example and what it is for. `schema` is where its JSON Schema lies, seen from
/// the file's folder; empty: nowhere.
std::string file_template(const FileKind&, const KnownFacts&, std::string_view schema);
/// The same with what is known alone; `remarks` are whole comment lines, or empty.
std::string known_file(const FileKind&, const KnownFacts&, std::string_view schema,
                       std::string_view remarks);
}  // namespace furnish
