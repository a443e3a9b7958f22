#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace furnish::desk {

/// A text with the changes of two who had it before them, line by line; empty where both changed
/// the same lines or lines that touch, unless they wrote the same there. A line keeps its end.
std::optional<std::string> merged_texts(std::string_view base, std::string_view theirs,
                                        std::string_view yours);
}  // namespace furnish::desk
