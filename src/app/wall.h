#pragma once

#include "app/console.h"
#include "app/options.h"
#include "app/workshop.h"

namespace furnish {

/// `furnish rules`: the salon's page for the wall.
Exit print_rules(const Options&, Workshop&, Console&);
}  // namespace furnish
