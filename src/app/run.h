#pragma once

#include "app/options.h"
#include "base/files.h"
#include "output/disk.h"

namespace furnish {

/// Does what the options ask for, reading from the files and writing to the disk. Every stage is
/// called from here, in order; nothing below prints.
Exit run(const Options&, const Files&, const Disk& = system_disk());
}  // namespace furnish
