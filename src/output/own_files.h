#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "base/diagnostic.h"
#include "output/disk.h"

namespace furnish {

/// No file of ours is larger.
inline constexpr std::uintmax_t largest_own_file = std::uintmax_t{4} << 30;
/// Whether what lies there was written by furnish, and nobody has changed it since: by its seal, of
/// a file that is read in stretches. What cannot be read was not.
bool is_own_file(const std::string& path);
/// Takes away what an earlier run left and this one has nothing for: a sheet that furnish wrote and
/// nobody changed, with `of` in its first bytes. Anything else stays, and a warning ("left-over")
/// says why. True if there was something, whatever became of it.
bool remove_own(const std::string& path, DiagnosticSink& sink, const Disk& disk = system_disk(),
                std::string_view of = {});
}  // namespace furnish
