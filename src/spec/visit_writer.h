#pragma once

#include <string>

#include "model/visit.h"

namespace furnish {

/// A visit's file written anew: everything the model holds, so that reading it in the same salon
/// gives the same visit. Photos without a file's name are left out. Whom it is for is decided
/// before (model/for_everyone.h).
std::string visit_toml(const Visit&);
}  // namespace furnish
