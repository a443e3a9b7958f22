#pragma once

#include "app/console.h"
#include "app/options.h"
#include "app/workshop.h"

namespace furnish {

/// `book`: every pet's card, style sheet and last note in one PDF, with an index, an outline and a
/// register at its edge. A pet that cannot be read is in the index, with the reason.
Exit print_book(const Options&, Workshop&, Console&);
}  // namespace furnish
