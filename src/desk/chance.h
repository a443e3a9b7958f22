#pragma once

#include <string>

namespace furnish::desk {

/// 128 bits that nobody can guess, as 32 hexadecimal digits. Throws std::runtime_error if the
/// system has none to give: then no desk may open.
std::string chance();
}  // namespace furnish::desk
