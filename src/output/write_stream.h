#pragma once

#include <string>
#include <string_view>

#include "output/temporary_file.h"

namespace furnish {

// What is written straight to where it goes, as nothing whole can be put there: the standard
// output, a device, a named pipe, a terminal. A reader that goes away is EPIPE, and ends no
// process.

/// All bytes, synced where that can be; 0, or why not.
Errno write_to_standard_output(const Disk&, std::string_view bytes);
/// The same to a path. A pipe without a reader is waited for some seconds, then ENXIO.
Errno write_directly(const Disk&, const std::string& path, std::string_view bytes);
/// Whether a path is of that kind: there, and neither a file nor a folder.
bool takes_a_stream(const Disk&, const std::string& path);
}  // namespace furnish
