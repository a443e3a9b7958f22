#pragma once

#include <string>

#include "output/content_path.h"

namespace furnish {

/// What an item draws, in fewer bytes, if it is nothing but: dots in rows, as lines of dashes
/// without length (ISO 32000-1, 8.4.3.6), or squares of a code, as a mask. Else empty.
std::string in_rows(const ContentItem&);
/// With four straight lines round a rectangle as such, and lines that run as good as straight on as
/// one.
Path plainer(const Path&);
}  // namespace furnish
