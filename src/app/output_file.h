#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/console.h"
#include "app/options.h"
#include "app/workshop.h"
#include "output/pdf.h"
#include "page/frame.h"

namespace furnish {

/// Why no sheet is written to a path that ends so.
inline constexpr const char* toml_is_a_persons =
    "a sheet is never written over a file that a person wrote (.toml)";

/// True of "sheets/", and of a folder that is there.
bool is_folder(const std::string& path);
/// A finished sheet, or several of them, as it goes to a file.
struct Sides {
  const std::vector<Frame>& frames;
  const DocumentInfo& info;
  const PdfExtras& extras;
  std::string name;  ///< "marlow-card"
};
/// Writes sheets in the format that was asked for, with its seal, to where was asked for, else to
/// the sheets/ of the salon, which is made once a run.
class SheetWriter {
 public:
  /// Keeps references to all.
  SheetWriter(const Options& options, Workshop& shop, Console& console)
      : options_(options), shop_(shop), console_(console) {}
  /// Of a png or an svg each side after the first goes to a file of its own, "marlow-card-2.png".
  /// Tells the files, and gives the first. Empty iff an error was reported. `root`: the salon's
  /// folder.
  std::optional<std::string> write(const Sides&, const std::string& root);
  /// Where a sheet of a name goes; the folder is made. Empty iff an error was reported.
  std::optional<std::string> place(const std::string& name, const std::string& root);

 private:
  std::optional<std::string> encoded(const std::vector<Frame>&, const DocumentInfo&,
                                     const PdfExtras&);
  bool write_file(const std::string& path, const std::string& bytes);
  bool write_others(const Sides&, const std::string& first);

  const Options& options_;
  Workshop& shop_;
  Console& console_;
  std::string made_;  ///< the folder that is ready for this run's sheets
};
}  // namespace furnish
