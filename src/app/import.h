#pragma once

#include "app/console.h"
#include "app/options.h"
#include "app/workshop.h"

namespace furnish {

/// `import CLIENTS.csv`: what its columns are, the first pets as they would become, and what cannot
/// be used; with --write new files in pets/, for those that are not there yet.
Exit import_list(const Options&, Workshop&, Console&);
/// `new pet --from CLIENTS.csv NAME...`: templates with what the list knows. False iff an error was
/// reported.
bool new_pets_from_list(const Options&, Workshop&, Console&);
}  // namespace furnish
