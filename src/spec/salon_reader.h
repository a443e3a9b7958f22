#pragma once

#include <optional>
#include <string>

#include "model/salon.h"
#include "spec/context.h"

namespace furnish {

/// salon.toml: the salon's own ways over default_salon(). Empty if it cannot be read at all. What
/// has faults is reported and left out, and `Salon::unread` names what matters of it.
std::optional<Salon> read_salon(const ReadContext&, const std::string& path);
std::optional<Salon> read_salon_text(const ReadContext&, std::string path, std::string text);
/// What holds where there is no salon.toml.
Salon default_salon();
}  // namespace furnish
