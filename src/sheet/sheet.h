#pragma once

#include <functional>
#include <optional>
#include <string>

#include "base/date.h"
#include "base/diagnostic.h"
#include "model/pet.h"
#include "model/salon.h"
#include "model/visit.h"
#include "page/compose.h"
#include "base/paper.h"
#include "page/photograph.h"
#include "plan/plan.h"
#include "sheet/reader_locale.h"
#include "sheet/words.h"

namespace furnish {

/// What every sheet about one pet is made from. References must outlive the sheet's making.
struct SheetInput {
  const Salon& salon;
  const Pet& pet;
  const Plan& plan;
  std::optional<Booking> booking;  ///< of the day
  Date today;
  Paper paper;
  const Visit* latest = nullptr;  ///< the last visit on or before today, if there was one
  std::string trim_code{};        ///< the trim as text for a QR code; empty: no code
  /// "pets/rex.toml:12" of a place in a file, to print beside each part; empty: not asked for.
  std::function<std::string(const SourceSpan&)> source{};
  PhotographPtr portrait{};  ///< the pet's own photo; null: none, or none that can be shown
};

/// In whose words and units, and with which fonts.
struct SheetVoice {
  const Words& words;
  const ReaderLocale& locale;
  TextShaper& shaper;
};

/// A finished page and what it says about itself.
struct Sheet {
  ComposedPage page;
  DocumentInfo info;
};

/// What a sheet's document says of itself, in the voice's language.
inline DocumentInfo document_info(const SheetVoice& voice, std::string title, Phrase subject,
                                  Date day) {
  return {std::move(title), voice.words.say(subject), voice.locale.language(), to_iso(day)};
}
}  // namespace furnish
