#pragma once

#include <cstdint>
#include <string_view>
#include <vector>

#include "base/geometry.h"
#include "base/paper.h"
#include "model/audience.h"
#include "model/salon.h"
#include "page/type.h"

namespace furnish {

/// Whether a sheet is about a visit: `sometimes`, if there was one.
enum class AboutVisit : std::uint8_t { never, sometimes, always };

/// A kind of sheet: whose it is, and how it lies on its paper.
struct SheetKind {
  std::string_view name;  ///< what its files are called: "note-owner"
  std::string_view noun;  ///< what messages call it: "style sheet"
  /// Who reads it, in whose language: `staff` is the salon's own, `everyone` an owner's page, which
  /// shows, attaches and encodes nothing that is for staff.
  Audience reader;
  Paper PaperSettings::*paper;  ///< which of the salon's it is printed on
  AboutVisit about;             ///< of a visit: it waits until each visit's file can be read
  Insets margins;
  std::vector<TypeRole> (*roles)(const Paper&, const ReadingDistances&);
};

namespace kinds {
extern const SheetKind card, style, note, owner_note, care, day, rules, list, book;
}  // namespace kinds
}  // namespace furnish
