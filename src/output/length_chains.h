#pragma once

#include <string_view>

namespace furnish {

/// Whether a PDF's streams say of each other how long they are, in a chain. Such a length is a
/// number, by itself or as an object of its own (ISO 32000-1, 7.3.8.2); libqpdf follows a chain
/// object by object, each deeper in its stack, which is done with after some thousands.
bool has_length_chains(std::string_view pdf);
}  // namespace furnish
