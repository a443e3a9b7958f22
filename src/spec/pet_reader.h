#pragma once

#include <optional>
#include <string>

#include "model/pet.h"
#include "model/salon.h"
#include "spec/context.h"
#include "spec/style_library.h"

namespace furnish {

/// pets/PET.toml with its style and products looked up, trim and finish resolved. `salon` is null
/// outside any salon's folder; then, and where a salon lists no products, a product's word is its
/// name.
std::optional<Pet> read_pet(const ReadContext&, const std::string& path, const Salon* salon,
                            StyleLibrary&);
std::optional<Pet> read_pet_text(const ReadContext&, std::string path, std::string text,
                                 const Salon* salon, StyleLibrary&);
}  // namespace furnish
