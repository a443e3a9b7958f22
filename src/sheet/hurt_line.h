#pragma once

#include <vector>

#include "page/alerts.h"
#include "sheet/roles.h"

namespace furnish {

/// What can hurt, for the sides of a card that its alerts are not on: of each but notices its
/// first sentence, gravest first, in one strong line under the gravest's signal word. What is too
/// much for about two lines, of cautions on a small paper for one, is counted: "+3". Null if there
/// is none.
BlockPtr hurt_line(const std::vector<AlertEntry>&, PaperClass);
}  // namespace furnish
