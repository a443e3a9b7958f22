#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "app/console.h"
#include "app/options.h"
#include "app/workshop.h"

namespace furnish {

/// `new salon`, `new pet`, `new style`, `new day`: a file good as it is, with every key in it as a
/// line to bring to life, and its schema beside it. Never over a file that is there.
Exit new_files(const Options&, Workshop&, Console&);

/// One such file: a "pet" or "style" of that name, or the "day" of a date. Its path; empty iff an
/// error was reported.
std::optional<std::string> new_file(const std::string& root, const std::string& kind,
                                    const std::string& name, Workshop&);

/// Puts a kind's schema into schemas/ of a salon's folder unless one is there; where it then lies,
/// seen from a file so many folders below the salon's. Empty after an error.
std::string schema_from(const std::string& root, std::string_view kind, std::size_t below,
                        Workshop&);
}  // namespace furnish
