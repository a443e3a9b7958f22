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

/// Whether a folder is a salon's; an error that says how to start one if it is not.
bool in_a_salon(const std::string& root, Workshop&);
/// A name without ".toml" behind it: people name the file where a pet is asked for.
std::string without_ending(std::string name);
/// A name as that of a file: "Lady Jane" is lady-jane. What a folder would be, or hide, is left
/// out, and what is longer than a file's name may be. Empty if nothing stays that can be one.
std::string file_name(std::string_view name);
/// One such file: a "pet" or "style" of that name, or the "day" of a date. Its path; empty iff an
/// error was reported.
std::optional<std::string> new_file(const std::string& root, const std::string& kind,
                                    const std::string& name, Workshop&);

/// Puts a kind's schema into schemas/ of a salon's folder unless one is there; where it then lies,
/// seen from a file so many folders below the salon's. Empty after an error.
std::string schema_from(const std::string& root, std::string_view kind, std::size_t below,
                        Workshop&);
}  // namespace furnish
