#pragma once

#include "app/console.h"
#include "app/options.h"
#include "app/workshop.h"

namespace furnish {

/// `furnish watch`: makes the salon's sheets, and again whenever a file of it is saved, until
/// Ctrl-C.
Exit watch_salon(const Options&, Workshop&, Console&);
}  // namespace furnish
