#pragma once

#include <optional>
#include <string>

#include "model/pet.h"
#include "model/salon.h"
#include "model/visit.h"
#include "spec/context.h"

namespace furnish {

/// visits/PET/YYYY-MM-DD.toml, or YYYY-MM-DD-2.toml for a second visit of the day; the date inside
/// must be that of the name. With a pet, a visit before its birth is a fault. A visit in the future
/// is the caller's to judge: a reader does not know what day it is.
std::optional<Visit> read_visit(const ReadContext&, const std::string& path, const Salon* salon,
                                const Pet* pet);
std::optional<Visit> read_visit_text(const ReadContext&, std::string path, std::string text,
                                     const Salon* salon, const Pet* pet);
}  // namespace furnish
