#pragma once

#include <optional>
#include <string>

namespace furnish {

/// Where `fonts/` and `styles/` lie: `asked` (from --data) if it is not empty, else the folder
/// installed beside this program (../share/furnish from where it runs), else the source tree it was
/// built from. Empty if none of them has a `fonts` folder; with `asked`, what was asked is not
/// second-guessed.
std::string find_data_folder(const std::string& asked);
}  // namespace furnish
