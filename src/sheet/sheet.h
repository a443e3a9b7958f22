#pragma once

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "base/date.h"
#include "base/diagnostic.h"
#include "base/paper.h"
#include "model/audience.h"
#include "model/pet.h"
#include "model/salon.h"
#include "model/visit.h"
#include "page/compose.h"
#include "page/photograph.h"
#include "plan/plan.h"
#include "sheet/kind.h"
#include "sheet/reader_locale.h"
#include "sheet/words.h"

namespace furnish {

/// What every sheet about one pet is made from. References must outlive the sheet's making.
struct SheetInput {
  const SheetKind& kind;
  const Salon& salon;
  const Pet& pet;
  const Plan& plan;
  std::optional<Booking> booking;  ///< of the day
  Date today;
  Paper paper;
  const Visit* latest = nullptr;       ///< the last visit on or before today, if there was one
  std::vector<const Visit*> visits{};  ///< all of them on or before today, oldest first
  std::span<const Visit> told{};       ///< all, whatever became of them
  std::string trim_code{};             ///< the trim as text for a QR code; empty: no code
  /// "pets/rex.toml:12" of a place in a file, to print beside each part; empty: not asked for.
  std::function<std::string(const SourceSpan&)> source{};
  std::string arrangement{};  ///< the layout to take if it fits, as others of a set have it
  PhotographPtr portrait{};   ///< the pet's own photo; null: none, or none that can be shown
  /// False: a visit's file has faults, and what it holds is missing on the sheet, which says so.
  bool all_visits = true;
};

class OtherLanguages;

/// In whose words and units, and set by whom. All three are of one language.
struct SheetVoice {
  const Words& words;
  const ReaderLocale& locale;
  TextShaper& shaper;
  /// BCP 47, of what the salon's people write; empty: the page's.
  std::string_view salon_language{};
  /// The salon's own words, by which its stock phrases are known; null: only English ones are.
  const Words* salon_words = nullptr;
  /// Of an owner's page: gathers what stands there in another language. Null: nothing is marked.
  OtherLanguages* others = nullptr;
  /// Whose words places and finishes are called by.
  Audience reader = Audience::staff;
};

/// What a sheet is written from.
struct SheetDesk {
  const SheetInput& input;
  const SheetVoice& voice;
};

/// A finished page and what it says about itself.
struct Sheet {
  ComposedPage page;
  DocumentInfo info;
};
}  // namespace furnish
