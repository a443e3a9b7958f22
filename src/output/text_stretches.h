#pragma once

#include "output/structure.h"

namespace furnish {

/// Gives the words of an element that are in another language or stand out from the rest elements
/// of their own, which may go on from one line to the next: a listener's program changes its voice
/// there (ISO 14289-1, 7.2). All of it in one language makes that the element's. Nothing changes
/// where the element holds others.
void part_stretches(Element&);
}  // namespace furnish
