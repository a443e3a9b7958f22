#pragma once

#include <map>
#include <memory>
#include <string>

#include "app/options.h"
#include "app/workshop.h"
#include "base/files.h"
#include "output/disk.h"

namespace furnish {

/// Other files with some texts in the place of theirs: a file as it is being changed, before it is
/// saved.
class OverlaidFiles final : public Files {
 public:
  /// Keeps the reference.
  explicit OverlaidFiles(const Files& below) : below_(below) {}
  void lay(std::string path, std::string text) { over_[std::move(path)] = std::move(text); }
  void clear() { over_.clear(); }

  FileContent read_up_to(const std::string& path, std::size_t most) const override;
  bool exists(const std::string& path) const override;
  FolderContent list(const std::string& folder) const override { return below_.list(folder); }

 private:
  const Files& below_;
  std::map<std::string, std::string> over_;
};

/// The workshop that a desk keeps warm: fonts, words, styles and the salon stay read from one look
/// to the next, and are read again when one of their files changed, or the day did.
class DeskShop {
 public:
  /// Keeps the references. `options`: of the command line.
  DeskShop(const Options& options, const Files&, const Disk&);

  /// To work with until the next call, with no text laid over.
  Workshop& shop();
  /// One of its own, as the options and what is laid over stand now, which has read nothing yet.
  std::unique_ptr<Workshop> apart() { return std::make_unique<Workshop>(options_, over_, disk_); }
  /// What is laid over here is seen by the shop, but not in what it has read already: the salon,
  /// styles, words, days.
  OverlaidFiles& over() { return over_; }
  /// What the shop's next sheet is: which, and of which visit.
  Options& options() { return options_; }
  /// "." of the folder that one stands in.
  const std::string& root() const { return root_; }
  const Files& files() const { return files_; }
  const Disk& disk() const { return disk_; }
  /// Something was changed that more than one pet is read with.
  void forget() { shop_.reset(); }

 private:
  const Files& files_;
  const Disk& disk_;
  const Options given_;
  Options options_;
  std::string root_;
  OverlaidFiles over_;
  std::unique_ptr<Workshop> shop_;
};
}  // namespace furnish
