#pragma once

#include <nlohmann/json_fwd.hpp>

#include "app/desk_shop.h"

namespace furnish {

/// What a page of the desk asks for first: who the salon is, the page's own words in the salon's
/// language, and what its forms choose from.
nlohmann::ordered_json desk_facts(DeskShop&);
}  // namespace furnish
