#pragma once

#include <cstdint>
#include <optional>

#include "base/source.h"
#include "spec/document.h"

namespace furnish {

/// The tree of a file that has nothing but headings and texts in plain quotes, as a catalogue of
/// words has: for nine hundred of them TOML's parser takes as long as all that belongs to one pet.
/// Empty if any line is anything else or is perhaps a fault: then the parser has to say what it is.
/// pre: scan_text() found no fault in it.
std::optional<TomlTable> plain_document(const SourceText&, std::uint32_t file);
}  // namespace furnish
