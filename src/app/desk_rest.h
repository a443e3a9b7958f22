#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "app/desk_shop.h"

namespace furnish {

/// What can be read of a pet whose file has faults, so that nobody works on it without its
/// cautions: faulty lines are left out, one after another, and what must be there stands there as a
/// dash; an alert without its word counts as a warning. Lays what is left of `text` over the file;
/// `shop` reads through what is laid over. Empty if that takes more than a few lines, or its salon
/// cannot be read. It may know less than the file says: of it only what can hurt is printed. The
/// name of one whose own cannot be read.
inline constexpr std::string_view no_name = "…";
std::optional<Case> rest_of(OverlaidFiles& over, Workshop& shop, const PetPath&,
                            const std::string& text, Date day);
}  // namespace furnish
