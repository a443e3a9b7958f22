#pragma once

#include <optional>
#include <string>
#include <vector>

#include "spec/edit_parse.h"
#include "spec/keys.h"

// What to splice into a text so that it means one thing more, or less. Whether it does is proved by
// who makes the change.

namespace furnish {

/// `length` bytes from `at` become `text`.
struct Splice {
  std::size_t at = 0, length = 0;
  std::string text;
};

/// A key that is not there yet, in the table that is: a line, a part of braces, a section. Empty if
/// there is no place for it.
std::optional<Splice> insert_key(const ParsedText&, const TableInfo* file, const EditPath& table,
                                 const std::string& key, const EditValue&);
/// The same of an element of a `[[list]]` that has some.
std::optional<Splice> insert_section(const ParsedText&, const EditPath& list, std::size_t before,
                                     const EditTable&);
/// The same of an element of a list in brackets.
Splice insert_item(const ParsedText&, const TextLayout::Value& list, std::size_t before,
                   const std::string& item);

/// Takes out the lines of a key or section, with the remarks at them.
Splice remove_lines(const ParsedText&, const Site&);
/// Takes one part out of braces or a list.
Splice remove_part(const ParsedText&, const TextLayout::Value& from, std::size_t part);

/// Where a line that follows `line` begins, with what has to stand before and behind it.
Splice line_after(const ParsedText&, std::size_t line, const std::string& text);
/// With the line ends of the file.
std::string with_newline(std::string text, const std::string& newline);
}  // namespace furnish
