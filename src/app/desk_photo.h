#pragma once

#include <string>
#include <string_view>

#include "app/desk_shop.h"
#include "desk/salon.h"

namespace furnish {

/// A photo of a visit ("marlow/2026-11-24") as a new file of the salon's photos/: upright, no
/// larger than paper can show, without what the camera wrote beside it. Never over a file.
desk::PhotoMade store_photo(DeskShop&, std::string_view visit, std::string bytes);
}  // namespace furnish
