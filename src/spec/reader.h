#pragma once

#include <optional>
#include <string>

#include "model/pet.h"
#include "model/salon.h"
#include "model/visit.h"
#include "spec/context.h"
#include "spec/style_library.h"

namespace furnish {

// The readers of a salon's files. Each reports every fault of its file and then gives nothing;
// faults of other files do not count, warnings neither. What comes back is complete: bounds are
// kept, words are looked up, defaults are in. The `_text` twins take the text instead of a path to
// read; `path` is then only a name for messages, and for the key that the file's name gives.

/// salon.toml: the salon's own ways over default_salon().
std::optional<Salon> read_salon(const ReadContext&, const std::string& path);
std::optional<Salon> read_salon_text(const ReadContext&, std::string path, std::string text);
/// What holds where there is no salon.toml.
Salon default_salon();

/// pets/PET.toml with its style and products looked up, trim and finish resolved. `salon` is null
/// outside any salon's folder; then, and where a salon lists no products, a product's word is its
/// name.
std::optional<Pet> read_pet(const ReadContext&, const std::string& path, const Salon* salon,
                            StyleLibrary&);
std::optional<Pet> read_pet_text(const ReadContext&, std::string path, std::string text,
                                 const Salon* salon, StyleLibrary&);

/// visits/PET/YYYY-MM-DD.toml, or YYYY-MM-DD-2.toml for a second visit of the day; the date inside
/// must be that of the name. With a pet, a visit before its birth is a fault. A visit in the future
/// is the caller's to judge: a reader does not know what day it is.
std::optional<Visit> read_visit(const ReadContext&, const std::string& path, const Salon* salon,
                                const Pet* pet);
std::optional<Visit> read_visit_text(const ReadContext&, std::string path, std::string text,
                                     const Salon* salon, const Pet* pet);

/// days/YYYY-MM-DD.toml; the date inside must be that of the name. Whether its pets exist is the
/// caller's to find out: `Booking::pet` has the place to point at.
std::optional<Day> read_day(const ReadContext&, const std::string& path);
std::optional<Day> read_day_text(const ReadContext&, std::string path, std::string text);
}  // namespace furnish
