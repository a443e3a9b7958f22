#pragma once

#include <map>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "app/options.h"
#include "app/salon_folder.h"
#include "base/diagnostic.h"
#include "model/pet.h"
#include "page/shaper.h"
#include "plan/plan_words.h"
#include "sheet/sheet.h"

namespace furnish {

/// In whose words and units sheets are said. Each voice is made once.
class Voices {
 public:
  /// Keeps references to both.
  Voices(const Options&, DiagnosticSink&);

  /// The language that was asked for, else on a page for everyone the owner's, else the salon's.
  /// One that was asked for must have words; where the owner's or the salon's has none, a warning
  /// says so, and the sheet is in the next of them, in English at the last. The units that were
  /// asked for, else those of the region that the language of another reader than the salon names,
  /// else the salon's. Empty after an error.
  std::optional<SheetVoice> voice(FontSet&, SalonFolder&, const Pet&, Audience reader);

  /// The texts of a language as a salon says them. Null after an error: a catalogue is faulty.
  /// pre: the salon's library has the language.
  std::unique_ptr<Words> words(SalonFolder&, const std::string& language);
  /// The words of the salon's own language; the voices keep them. Null if it has none, or after an
  /// error.
  const Words* salon_words(SalonFolder&);
  /// What plans and checks say at a terminal, whatever the sheets speak: the shipped English, in
  /// the salon's units. Empty after an error. The voices keep the words.
  std::optional<PlanWords> plain(SalonFolder&);
  /// Whether a language has a catalogue; if not, that is told once, with the language that is used
  /// `instead` (empty: none).
  bool has_words(SalonFolder&, const std::string& language, Severity, SourceSpan asked_at,
                 const std::string& instead);
  /// Languages without a catalogue are reported anew, as said once (Diagnostic::once).
  void forget_told() { unknown_.clear(); }

 private:
  struct Voice {
    std::string root, language;
    Units units;
    std::unique_ptr<Words> words;  ///< null after an error
    ReaderLocale locale;
    TextShaper shaper;
  };
  std::optional<std::string> language_of(SalonFolder&, const Pet&, Audience reader);
  const Options& options_;
  DiagnosticSink& sink_;
  std::vector<std::unique_ptr<Voice>> voices_;
  std::map<std::string, std::unique_ptr<Words>> salon_words_;  ///< by the salon's folder
  std::unique_ptr<Words> plain_;                               ///< made when first asked for
  std::set<std::string> unknown_;  ///< languages without a catalogue that were told
};
}  // namespace furnish
