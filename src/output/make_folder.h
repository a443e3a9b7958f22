#pragma once

#include <string>

#include "base/diagnostic.h"
#include "output/disk.h"

namespace furnish {

/// A folder with all that it lies in, where they are not there yet, and without the unfinished
/// files of runs that were killed. False iff an error was reported.
bool make_folder(const std::string& path, DiagnosticSink& sink, const Disk& disk = system_disk());
/// The same, but into what had to be made nobody but its owner may look.
bool make_private_folder(const std::string& path, DiagnosticSink& sink,
                         const Disk& disk = system_disk());
}  // namespace furnish
