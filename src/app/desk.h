#pragma once

#include "app/console.h"
#include "app/options.h"
#include "app/workshop.h"

namespace furnish {

/// `furnish desk`: serves the salon's page on this computer until the last page of it is closed or
/// Ctrl-C comes.
Exit serve_desk(const Options&, Workshop&, Console&);
}  // namespace furnish
