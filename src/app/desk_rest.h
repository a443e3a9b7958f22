#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "app/desk_shop.h"

namespace furnish {

/// What can be read of a pet whose file has faults, so that nobody works on it without its
/// cautions: faulty lines are left out, one after another, and what must be there stands there as a
/// dash; an alert without its word counts as a warning. Lays what is left of `text` over the file.
/// Empty if that takes more than a few lines, or its salon cannot be read. It may know less than
/// the file says, and is never printed. The name of one whose own cannot be read.
inline constexpr std::string_view no_name = "…";
std::optional<Case> rest_of(DeskShop&, Workshop&, const PetPath&, const std::string& text);
}  // namespace furnish
