#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/desk_shop.h"
#include "app/sheet_maker.h"
#include "desk/salon.h"

namespace furnish {

struct SheetToPrint {
  PetPath pet;
  const SheetMaker* sheet;
  std::string visit;          ///< "2026-11-24"; empty: the pet as it stands
  std::string language = {};  ///< empty: as it is usual
};

/// All in one PDF, each on paper of its own, sealed as every sheet is; `on` another day than today.
/// Sheets that cannot be made are what stands against it: none is left out unsaid.
desk::Printed print_sheets(DeskShop&, const std::vector<SheetToPrint>&,
                           std::optional<Date> on = std::nullopt);
/// The sheet of a day for the wall.
desk::Printed print_whole_day(DeskShop&, Date);
}  // namespace furnish
