#pragma once

#include <span>

#include "base/date.h"
#include "model/pet.h"
#include "model/salon.h"
#include "plan/bath.h"
#include "plan/drawer.h"
#include "plan/lengths.h"

namespace furnish {

class DiagnosticSink;

/// Warnings about what the files say that a plan can only work round: days in the future, a product
/// without its dilution, a slip in an allergen, a tool that nothing in the drawer can stand in for, a length that this
/// coat never has. Every one says what is done instead.
void check_input(const Salon&, const Pet&, const BathPlan&, std::span<const DrawerGap>,
                 std::span<const PartLength>, Date today, DiagnosticSink&);
}  // namespace furnish
