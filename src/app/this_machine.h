#pragma once

#include <string>

namespace furnish {

/// What sheets hang on beside a salon's files, in one mark: this program, the libraries that it
/// runs with, where this machine has its fonts and what it says of them, by their files' numbers,
/// sizes and times.
std::string mark_of_this_machine();
/// Of all files in a folder, and below it.
std::string mark_of_files_in(const std::string& folder);
}  // namespace furnish
