#pragma once

#include <algorithm>
#include <memory>
#include <mutex>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "app/hand_over.h"
#include "app/inputs.h"
#include "app/options.h"
#include "app/output_file.h"
#include "app/sheet_files.h"
#include "app/workshop.h"
#include "base/diagnostic.h"
#include "page/frame.h"

namespace furnish {

/// What came of a pet whose sheet was asked for.
struct SheetWork {
  bool good = true;
  std::optional<Done> done;         ///< empty: there is none to be made, or not all is good
  std::optional<SheetFiles> files;  ///< empty also where all pets share one file
  DiagnosticSink making, encoding;  ///< what was said, of the two in turn
};

/// A workshop for one thread, which notes what it reads.
struct Bench {
  /// Of the same day as the run's.
  Bench(const Options& options, Workshop& run)
      : asked(options), reading(run.context().files), shop(asked, reading, run.disk()) {
    asked.on = run.today();
  }
  Bench(const Bench&) = delete;
  Bench& operator=(const Bench&) = delete;
  Options asked;
  InputFiles reading;
  Workshop shop;
};
/// The benches of a run, which may be those of the next too as long as nothing changed but pets and
/// their visits.
class Benches {
 public:
  /// Keeps the reference: the workshop that tells what they said.
  explicit Benches(Workshop& run) : taken(run), run_(run) {}
  /// Before threads ask for theirs.
  void lay_out(std::size_t threads) { all_.resize(std::max(threads, all_.size())); }
  /// A thread's own, set up when it is first asked for.
  Bench& of(std::size_t thread, const Options&);
  HandOver taken;
  /// That sheets hang on which were left as they are.
  std::set<std::string> photos;

 private:
  Workshop& run_;
  std::vector<std::unique_ptr<Bench>> all_;
  std::unique_ptr<FontSet> fonts_;  ///< that hold their faces while threads use them
  std::once_flag held_;
};

/// Makes a pet's sheet, and the files that it becomes unless it goes together with others. What is
/// said of the salon goes to the shop's own sink. `to`: a file for all, or the folder for each.
SheetWork make_sheet(const PetPath&, const Options&, Workshop&, const SheetPlace& to);

/// The pages of some sheets: their own sides, or those of a larger one on which they stand. Empty
/// after an error.
std::optional<std::vector<Frame>> pages_of(std::vector<std::vector<Frame>> sheets, const Options&,
                                           const Salon&, DiagnosticSink&);
}  // namespace furnish
