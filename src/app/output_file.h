#pragma once

#include <optional>
#include <set>
#include <span>
#include <string>
#include <vector>

#include "app/console.h"
#include "app/options.h"
#include "app/sheet_maker.h"
#include "app/workshop.h"
#include "output/pdf.h"
#include "output/write.h"
#include "page/frame.h"

namespace furnish {

/// Why no sheet is written to a path that ends so.
inline constexpr const char* toml_is_a_persons =
    "a sheet is never written over a file that a person wrote (.toml)";

/// False, with an error, where the output that was asked for is a person's file by its name.
bool may_be_written(const Options&, DiagnosticSink&);

/// True of "sheets/", and of a folder that is there.
bool is_folder(const std::string& path);

/// Where sheets of a run go: the file or folder that was asked for, else the sheets/ of the salon.
class SheetPlace {
 public:
  explicit SheetPlace(const Options&);
  /// The folder that has to be there; empty: the one that one stands in, or the file's own.
  std::string folder(const std::string& root) const;
  /// Not after its pet, in a folder.
  bool named_by_person() const { return one_file_; }
  /// "sheets/marlow-card.pdf"
  std::string path(const std::string& name, const std::string& root) const;

 private:
  const Options& options_;
  bool one_file_;
};

/// A finished sheet, or several of them, as it goes to a file.
struct Sides {
  const std::vector<Frame>& frames;
  const DocumentInfo& info;
  const PdfExtras& extras;
  std::string name;  ///< "marlow-card"
};
/// The files that a sheet becomes.
struct SheetFiles {
  std::string name;
  std::vector<FileToWrite> sides;   ///< one; of a png or svg one a side, "marlow-card-2.png"
  std::vector<FileToWrite> beside;  ///< under the first one's name, with endings of their own
  std::size_t count = 1;            ///< of the sheet's sides
  std::string title;                ///< the bytes that say it in each of a png's or svg's sides
  bool whole = true;                ///< false: a side after the first could not be made
};
/// False, with an error, where a font could not be read meanwhile: what was kept of earlier pages
/// may lack its text too.
bool no_text_lacks(Workshop&, const DocumentInfo&, DiagnosticSink&);
/// With their seals, in the format that was asked for. Empty iff an error was reported.
std::optional<SheetFiles> files_of(const Sides&, std::span<const SideFile> beside, const Options&,
                                   const std::string& path, DiagnosticSink&);

/// Writes sheets, and tells of each file. Folders are made when first needed.
class SheetWriter {
 public:
  /// Keeps references to all.
  SheetWriter(const Options& options, Workshop& shop, Console& console)
      : options_(options), shop_(shop), console_(console), place_(options) {}
  const SheetPlace& place() const { return place_; }
  /// Gives the first file of a sheet. Empty iff an error was reported. `root`: the salon's folder.
  std::optional<std::string> write(const Sides&, const std::string& root);
  /// The same of a sheet that is about no pet.
  std::optional<std::string> write(const Sheet&, std::string name, const std::string& root);
  struct Wrote {
    std::string path;
    bool beside = true;  ///< false: what lies beside it could not be written, which was reported
  };
  /// The same of files that are made already. One of several leaves the safety of its name to
  /// confirm().
  std::optional<Wrote> write(SheetFiles&, const std::string& root, bool one_of_several = false);
  /// Makes the names of all that was written as one of several safe.
  void confirm();
  /// Makes the folder for a salon's sheets ready. False iff an error was reported.
  bool have_folder(const std::string& root);

 private:
  bool write_file(FileToWrite&, bool one_of_several);
  bool write_others(SheetFiles&, bool one_of_several);

  const Options& options_;
  Workshop& shop_;
  Console& console_;
  SheetPlace place_;
  std::string made_;                   ///< the folder that is ready for this run's sheets
  std::set<std::string> unconfirmed_;  ///< folders
};
}  // namespace furnish
