#pragma once

// The readers of a salon's files. Each reports every fault of its file and then gives nothing;
// faults of other files do not count, warnings neither. What comes back is complete: bounds are
// kept, words are looked up, defaults are in. The `_text` twins take the text instead of a path to
// read; `path` is then only a name for messages, and for the key that the file's name gives.
#include "spec/day_reader.h"
#include "spec/pet_reader.h"
#include "spec/salon_reader.h"
#include "spec/visit_reader.h"
