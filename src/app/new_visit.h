#pragma once

#include "app/console.h"
#include "app/options.h"
#include "app/workshop.h"

namespace furnish {

/// `furnish new visit PET...`: a form in the salon's visits/PET/ named by the day; a second one of
/// a day is DATE-2.toml and so on. What is there is never written over.
Exit new_visits(const Options&, Workshop&, Console&);
}  // namespace furnish
