#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "spec/edit.h"

// Holds an edit to what was asked, by means of its own: none of the editor's functions but the
// parser's tree and where().

namespace furnish::test {

/// Remarks of a text, sorted.
std::vector<std::string> remarks_of(std::string_view text);

/// Every value that is no table or list, and those that are empty, by path: "3:text".
std::map<EditPath, std::string> leaves(const EditValue& tree);

/// Where something goes that stood at a path before: `set` and `append` move nothing, `remove`
/// those behind an element. Empty of what is at or below the path of the edit.
std::optional<EditPath> moved(const EditPath& path, const Edit& edit);

/// What an edit did to a file that it should not have done; nothing is "". The path of the edit is
/// as the file spells it.
std::string wrong_with(const EditedText& before, const EditedText& after, const Edit& edit);
}  // namespace furnish::test
