#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/options.h"
#include "app/salon_folder.h"
#include "base/diagnostic.h"
#include "output/attachments.h"
#include "plan/plan.h"
#include "sheet/sheet.h"
#include "spec/context.h"

namespace furnish {

/// A pet with all that is worked out for it on a day.
struct Case {
  SalonFolder* folder;
  Pet pet;
  std::vector<Visit> visits;  ///< oldest first
  bool all_visits = true;     ///< false: a visit's file has faults, and is not among them
  Plan plan;
  Date today;
  PetBookings bookings{};  ///< from today on
  /// False: a day's file, of today or later, has faults, or it is perhaps this pet that today's
  /// books by a name that is not there. What that leaves open the plan says.
  bool all_bookings = true;
  const Salon& salon() const { return folder->salon(); }
  std::optional<Booking> booking() const { return folder->booking(pet, today); }
};

/// A file that is written beside a sheet, under the sheet's name with its own ending.
struct SideFile {
  std::string ending, bytes;
};
/// A sheet, the name of its file ("marlow-card"), what travels inside its PDF, and what lies beside
/// it.
struct Made {
  Sheet sheet;
  std::string name;
  std::vector<Attachment> files;
  std::vector<SideFile> beside{};
};

/// How a case is to be made into a sheet.
struct SheetOrder {
  const SheetKind& kind;
  const Options& options;
  Paper paper;
  SheetVoice voice;
  ReadContext context;        ///< where files of the case are read, and where faults go
  std::string arrangement{};  ///< see SheetInput
};

/// A sheet that can be asked for: its kind, and what makes it of a case. Empty iff an error was
/// reported.
struct SheetMaker {
  const SheetKind& kind;
  std::optional<Made> (*make)(const Case&, const SheetOrder&);
  bool calendar_beside = false;  ///< an .ics lies beside it
};
namespace sheets {
extern const SheetMaker card, style, note, owner_note, care;
}  // namespace sheets

/// What a sheet about the pet as it stands on the day is made from.
SheetInput sheet_input(const Case&, const SheetKind&, const Paper&);
/// The visit that was asked for, else the last up to the day; null if there is none.
const Visit* chosen_visit(const Case&, const Options&);
/// What travels inside a sheet's PDF, so that the sheet can be turned back into a file.
Attachment pet_file(const Pet&);
}  // namespace furnish
