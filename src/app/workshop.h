#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "app/options.h"
#include "app/salon_folder.h"
#include "app/sheet_maker.h"
#include "app/voices.h"
#include "base/diagnostic.h"
#include "base/files.h"
#include "output/disk.h"
#include "page/fonts.h"
#include "plan/day_checks.h"

namespace furnish {

/// Today where the computer stands, unless the options name a day, so that a run can be repeated.
Date local_today(const Options&);

/// What one run works with: files, faults, fonts, the salons it has met. Pets of one salon share
/// their salon's folder, and all sheets share the fonts.
class Workshop {
 public:
  Workshop(const Options&, const Files&, const Disk& = system_disk());

  const ReadContext& context() const { return context_; }
  SourceSet& sources() { return sources_; }
  DiagnosticSink& sink() { return sink_; }
  /// Where all that is written goes.
  /// One with these options that reads other files, and has read nothing yet.
  std::unique_ptr<Workshop> beside(const Files& files) const {
    return std::make_unique<Workshop>(options_, files, disk_);
  }
  const Disk& disk() { return disk_; }
  Date today() const { return today_; }

  /// The pets that were asked for, or all of the salon. An unknown name is reported and left out,
  /// and `complete` becomes false.
  std::vector<PetPath> pets(bool& complete);
  /// The salon's folder of a root, opened once.
  SalonFolder& folder(const std::string& root);
  Voices& voices() { return voices_; }
  /// The folder with fonts/ and styles/; empty if it was not found.
  const std::string& data_folder() const { return data_; }
  /// Fonts, opened when first asked for; null after an error.
  FontSet* fonts();

  /// Reads a pet and works its plan out, for today or another day. Empty iff an error was reported.
  /// What is said of the pet goes to the sink that is given, so that each pet may have its own and
  /// all are told in order; what is said of its salon, whose files are read once, goes to that of
  /// the run.
  std::optional<Case> open(const PetPath& path, DiagnosticSink& sink) {
    return open(path, today_, sink);
  }
  std::optional<Case> open(const PetPath&, Date, DiagnosticSink&);
  /// The same without holding it against the day's other bookings.
  std::optional<Case> work_out(const PetPath&, Date, DiagnosticSink&);
  /// True if the sheet that is asked for is only of visits, and the pet has no such visit.
  bool nothing_to_show(const Case&) const;
  /// The sheet of a case that is asked for, arranged like others of its set if one is named and it
  /// fits so. Empty iff an error was reported, there or to the run.
  std::optional<Made> sheet(const Case&, DiagnosticSink&, std::string arrangement = {});
  /// The same of a sheet that is named here.
  std::optional<Made> sheet(const Case&, const SheetMaker&, DiagnosticSink&,
                            std::string arrangement = {});
  /// In whose words that is said and by whom it is set; what is said of its type goes to the sink.
  /// Empty iff an error was reported.
  std::optional<SheetVoice> voice(SalonFolder&, const Pet&, DiagnosticSink&);

  /// What the sheet is printed on: asked for, or the salon's usual. Empty after an error.
  std::optional<Paper> paper(const Salon&, DiagnosticSink&) const;
  std::optional<Paper> paper(const Salon&, const SheetKind&, DiagnosticSink&) const;

 private:
  /// Those of the day's bookings, in time order, each once.
  std::vector<PetPath> booked_pets(bool& complete);
  /// Says what cannot go as the day is booked; a person is told once of what two pets share.
  void hold_against_day(Case&, DiagnosticSink&);

  const Options& options_;
  const Files& files_;
  const Disk& disk_;
  SourceSet sources_;
  DiagnosticSink sink_;
  ReadContext context_;
  Date today_;
  std::string data_;
  std::map<std::string, std::unique_ptr<SalonFolder>> folders_;
  std::unique_ptr<FontSet> fonts_;
  bool fonts_asked_ = false;
  Voices voices_;
};
}  // namespace furnish
