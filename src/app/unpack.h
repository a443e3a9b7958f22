#pragma once

#include <cstddef>

#include "app/console.h"
#include "app/options.h"
#include "app/workshop.h"

namespace furnish {

/// What `unpack` reads at most, a PDF with photos among it; of a text, Files::largest.
inline constexpr std::size_t largest_sheet = std::size_t{64} * 1024 * 1024;

/// Gets a pet's file back from what carries it: the attachment of a sheet's PDF, or the text of a
/// sheet's code as a phone gives it (CRLF, a byte order mark and white space at the end are taken
/// off). What comes out reads as a pet's file, or every fault is told and nothing is written. Of
/// another salon's pet, products that are not ours are taken as they are, and a style that is not
/// ours is a warning. An attachment comes out byte for byte; a file that exists is never touched.
Exit unpack(const Options&, Workshop&, Console&);
}  // namespace furnish
