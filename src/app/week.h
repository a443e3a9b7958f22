#pragma once

#include "app/console.h"
#include "app/options.h"
#include "app/workshop.h"

namespace furnish {

/// `furnish day --week`: seven days from the workshop's on. A day whose file has faults says so, as
/// does a pet that cannot be read, and the status is one of faults.
Exit print_week(const Options&, Workshop&, Console&);
}  // namespace furnish
