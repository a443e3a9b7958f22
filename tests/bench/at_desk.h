#pragma once

#include <string>

namespace furnish::bench {

/// From the last key to the new sheet, as the desk answers its page, beside the same sheet made
/// warm.
void at_desk(int runs);
/// From a word to its pets, of 10,000 that are made for it in a folder.
void find_pets(int runs, const std::string& folder);
}  // namespace furnish::bench
