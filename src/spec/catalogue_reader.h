#pragma once

#include <cstddef>
#include <optional>
#include <string>

#include "base/files.h"
#include "model/catalogue.h"
#include "spec/context.h"

namespace furnish {

/// Arabic takes two bytes a letter, and a catalogue is all that a program says.
inline constexpr std::size_t largest_catalogue = 4 * Files::largest;

/// styles/words/LANGUAGE.toml. `english` has every section and key there is; null while English
/// itself is read. A catalogue may leave texts out. Empty after a fault: the file's name is no
/// language tag, a section or key that English does not have (with the nearest), a text that is not
/// words. Whether a text is a good pattern is for those who say it.
std::optional<Catalogue> read_catalogue(const ReadContext&, const std::string& path,
                                        const Catalogue* english);
}  // namespace furnish
