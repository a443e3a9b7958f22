#pragma once

#include <string>

#include "model/audience.h"
#include "model/visit.h"

namespace furnish {

/// A visit's file written anew: everything the model holds, so that reading it in the same salon
/// gives the same visit. For everyone, what is for staff is left out: behaviour and what helped,
/// findings that are not for everyone, and where photos lie.
std::string visit_toml(const Visit&, Audience);
}  // namespace furnish
