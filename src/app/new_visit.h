#pragma once

#include <optional>
#include <string>

#include "app/console.h"
#include "app/options.h"
#include "app/workshop.h"

namespace furnish {

/// `furnish new visit PET...`: a form in the salon's visits/PET/ named by the day; a second one of
/// a day is DATE-2.toml and so on. What is there is never written over.
Exit new_visits(const Options&, Workshop&, Console&);
/// A visit of today as planned, in a file of its own. Its path; empty iff an error was reported.
std::optional<std::string> start_visit(const PetPath&, Workshop&);
}  // namespace furnish
