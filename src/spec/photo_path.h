#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "model/salon.h"
#include "spec/fields.h"

namespace furnish {

/// A picture's path with forward slashes. It may not lead out of the salon's folder, unless the
/// salon allows that; whether the file is there is for those who open it.
std::optional<Located<std::string>> read_photo_path(Fields&, const PhotoKey&, const Salon*);
}  // namespace furnish
