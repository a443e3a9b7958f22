#pragma once

#include "app/console.h"
#include "app/options.h"
#include "app/workshop.h"

namespace furnish {

/// `rename OLD NEW`: moves pets/OLD.toml and visits/OLD/ together, never over what is there, and
/// says which bookings still name the old one; no file's contents change.
Exit rename_pet(const Options&, Workshop&, Console&);
}  // namespace furnish
