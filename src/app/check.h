#pragma once

#include "app/console.h"
#include "app/options.h"
#include "app/workshop.h"

namespace furnish {

/// Reads every file of a salon (or the pets named), reports every fault and every caution, and says
/// how many files are good. Writes nothing.
Exit check(const Options&, Workshop&, Console&);
}  // namespace furnish
