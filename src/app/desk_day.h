#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>
#include <vector>

#include "app/desk_shop.h"

namespace furnish {

/// A day as it is booked: who comes when and to whom, what clashes, what to mix, whom to ring.
nlohmann::ordered_json desk_day(DeskShop&, Date);
/// The keys of the pets that are booked, by the hour, each once.
std::vector<std::string> booked_on(DeskShop&, Date);
}  // namespace furnish
