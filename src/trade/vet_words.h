#pragma once

#include <optional>
#include <string_view>

namespace furnish {

/// The first task in free words that many places reserve to veterinarians, named for a person:
/// "anal sacs", "ear treatment", "teeth", "cutting mats off", "medication"; empty if there is none,
/// or the words take it back ("no anal sacs"). A list, not law: local rules differ; common
/// practice, no source.
std::optional<std::string_view> veterinary_task(std::string_view words);
}  // namespace furnish
