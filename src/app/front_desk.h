#pragma once

#include "app/console.h"
#include "app/options.h"
#include "app/workshop.h"

namespace furnish {

/// `due`, `expiring` and `find`: rows about the pets of the salon, as text or JSON, on the standard
/// output or in a file.
Exit front_desk(const Options&, Workshop&, Console&);
}  // namespace furnish
