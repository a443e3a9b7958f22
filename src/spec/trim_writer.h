#pragma once

#include <string>
#include <utility>
#include <vector>

#include "model/trim.h"
#include "spec/toml_text.h"

namespace furnish {

/// What an entry says, as keys and values: `blade = "10"`, `lay = "against"`. What the reader takes
/// for granted is left out: #30 under a comb, the lay of the coat. `why` is for visits, not here.
std::vector<std::pair<std::string, std::string>> entry_fields(
    const TrimEntry&, toml_text::Form = toml_text::Form::plain);

/// Adds a trim to `[trim]`, by the keys it was read from, in the order of their file, where those
/// still say it; else place by place.
void write_trim(const TrimRules&, toml_text::Section&);
}  // namespace furnish
