#pragma once

#include "app/options.h"
#include "base/files.h"

namespace furnish {

/// Does what the options ask for. Every stage is called from here, in order; nothing below prints.
Exit run(const Options&, const Files&);
}  // namespace furnish
