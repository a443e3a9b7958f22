#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "app/options.h"
#include "app/salon_folder.h"
#include "app/voices.h"
#include "base/diagnostic.h"
#include "base/files.h"
#include "output/attachments.h"
#include "page/fonts.h"
#include "plan/plan.h"
#include "sheet/sheet.h"

namespace furnish {

/// What one run works with: files, faults, fonts, the salons it has met. Pets of one salon share
/// their salon's folder, and all sheets share the fonts.
class Workshop {
 public:
  Workshop(const Options&, const Files&);

  const ReadContext& context() const { return context_; }
  SourceSet& sources() { return sources_; }
  DiagnosticSink& sink() { return sink_; }
  Date today() const { return today_; }

  /// The pets that were asked for, or all of the salon. An unknown name is reported and left out,
  /// and `complete` becomes false.
  std::vector<PetPath> pets(bool& complete);
  /// The salon's folder of a root, opened once.
  SalonFolder& folder(const std::string& root);
  Voices& voices() { return voices_; }
  /// Fonts, opened when first asked for; null after an error.
  FontSet* fonts();

  /// A pet with all that is worked out for it.
  struct Case {
    SalonFolder* folder;
    Pet pet;
    std::vector<Visit> visits;
    bool all_visits = true;  ///< false: a visit's file has faults, and is not among them
    Plan plan;
  };
  /// Reads a pet and works its plan out. Empty iff an error was reported. What is said of the pet
  /// goes to the sink that is given, so that each pet may have its own and all are told in order;
  /// what is said of its salon, whose files are read once, goes to that of the run.
  std::optional<Case> open(const PetPath&, DiagnosticSink&);
  /// A file that is written beside a sheet, under the sheet's name with its own ending.
  struct SideFile {
    std::string ending, bytes;
  };
  /// A sheet, the name of its file ("marlow-card"), what travels inside its PDF, and what lies
  /// beside it.
  struct Made {
    Sheet sheet;
    std::string name;
    std::vector<Attachment> files;
    std::vector<SideFile> beside;
  };
  /// True if a note is asked for and the pet has no such visit.
  bool nothing_to_note(const Case&) const;
  /// The sheet of a case that the command asks for. Empty iff an error was reported, there or to
  /// the run.
  std::optional<Made> sheet(const Case&, DiagnosticSink&);

 private:
  /// The visit that `note` is about; null if there is none.
  const Visit* chosen_visit(const Case&) const;
  /// The visit that `care` is about; null if that is one of today of which nothing is on file.
  const Visit* visit_cared_for(const Case&) const;
  void report_no_visit(const Case&, DiagnosticSink&) const;
  std::optional<Made> note(const Case&, const Paper&, const SheetVoice&, DiagnosticSink&);
  std::optional<Made> care(const Case&, const Paper&, const SheetVoice&, DiagnosticSink&);
  /// The case as its owner may know it: pet and visits without what is for staff, and a plan that
  /// knows no more than they do.
  Case for_owner(const Case&) const;
  /// What travels inside a sheet's PDF, so that the sheet can be turned back into a file.
  static Attachment pet_file(const Pet&);
  /// What the sheet is printed on: asked for, or the salon's usual. Empty after an error.
  std::optional<Paper> paper(const Salon&, DiagnosticSink&) const;

  const Options& options_;
  const Files& files_;
  SourceSet sources_;
  DiagnosticSink sink_;
  ReadContext context_;
  Date today_;
  std::string data_;
  std::map<std::string, std::unique_ptr<SalonFolder>> folders_;
  std::unique_ptr<FontSet> fonts_;
  bool fonts_asked_ = false;
  std::unique_ptr<TextShaper> shaper_;
  Voices voices_;
};
}  // namespace furnish
