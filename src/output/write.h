#pragma once

#include <string>
#include <string_view>

#include "base/diagnostic.h"

namespace furnish {

/// Writes the whole of `bytes`, or leaves what was there. "-" is the standard output. A new or
/// regular file is written beside its place and moved there once it is safely on the disk, through
/// a symbolic link to what it names; an existing file keeps its permissions. A device or a pipe is
/// written to directly. False iff an error was reported, in words for a person; then no
/// half-written and no temporary file is left (a device or pipe may have taken a part).
bool write_whole(const std::string& path, std::string_view bytes, DiagnosticSink& sink);
/// The same for a path where nothing may be yet: whatever is there, a link too, is left as it is
/// and is an error ("exists"), also if it comes to be there meanwhile. "-" is the standard output.
bool write_new(const std::string& path, std::string_view bytes, DiagnosticSink& sink);
}  // namespace furnish
