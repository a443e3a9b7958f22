#pragma once

#include <string>
#include <vector>

#include "page/alerts.h"
#include "sheet/roles.h"

namespace furnish {

/// What can hurt, for the sides of a card that its alerts are not on: of each but notices its
/// first sentence, gravest first, in one strong line under the gravest's signal word. What is too
/// much for about two lines, of cautions on a small paper for one, is counted: "+3". None is ever
/// cut: of one that is too long stands `elsewhere`, where it is read. Null if there is none.
BlockPtr hurt_line(const std::vector<AlertEntry>&, PaperClass, const std::string& elsewhere);
}  // namespace furnish
