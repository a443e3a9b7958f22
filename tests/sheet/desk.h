#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "app/workshop.h"
#include "base/files.h"
#include "sheet/sheet.h"

namespace furnish::test {

/// The day of the demo salon.
inline constexpr Date demo_day = std::chrono::sys_days(std::chrono::year(2026) / 11 / 24);

/// Files that are held in memory beside those of the disk, which are named from its root.
class WithShippedStyles final : public Files {
 public:
  explicit WithShippedStyles(std::map<std::string, std::string> files) : own_(std::move(files)) {}
  FileContent read_up_to(const std::string& path, std::size_t most) const override;
  bool exists(const std::string& path) const override;
  FolderContent list(const std::string& folder) const override;

 private:
  MemoryFiles own_;
  DiskFiles disk_;
};

/// A pet with all that its sheets are made from.
using Kennel = Case;

/// A salon's folder and the program's own workshop: what it reads, plans and sets is what a person
/// who asks for the sheet gets.
class Desk {
 public:
  /// Files by their paths in the folder: "salon.toml", "pets/rex.toml". Styles are the shipped
  /// ones.
  explicit Desk(std::map<std::string, std::string> files);
  /// A folder on the disk.
  explicit Desk(const std::string& folder);

  std::vector<std::string> pets() const;  ///< keys, sorted
  /// Fails the test, with what was said, if the pet or a visit cannot be read.
  Kennel kennel(const std::string& key = "rex", Date today = demo_day);
  SheetInput input(const Kennel&, std::string_view paper = "A5",
                   const SheetKind& kind = kinds::card) const;
  /// From now on sheets are in this language and the salon's units, whoever reads them.
  void speak(const std::string& language);
  SheetVoice voice();
  std::optional<Sheet> card(const Kennel&, std::string_view paper = "A5");
  std::optional<Sheet> style(const Kennel&, std::string_view paper = "A4");
  /// Of the last visit up to the kennel's day. Empty if there was none.
  std::optional<Sheet> note(const Kennel&, Audience, std::string_view paper = "A4");
  std::optional<Sheet> care(const Kennel&, std::string_view paper = "A4");
  /// Of the demo salon's day.
  std::optional<Sheet> day(std::string_view paper = "A4");
  /// Of the seven days from that on.
  std::optional<Sheet> week(std::string_view paper = "A4");
  /// The pages at the front of a book of all pets, each with a page of its own.
  std::vector<Sheet> index(std::string_view paper = "A4");

  const Salon& salon() const { return folder_->salon(); }
  const DiagnosticSink& sink() const { return shop_->sink(); }
  std::string said() const;  ///< all that was reported, as text
  bool says(std::string_view code) const;

 private:
  Desk(std::unique_ptr<const Files>, std::string root);
  std::optional<Sheet> made(const Kennel&, const SheetMaker&, std::string_view paper);

  std::unique_ptr<const Files> files_;
  std::unique_ptr<Options> options_;
  std::unique_ptr<Workshop> shop_;
  SalonFolder* folder_;
};

/// A salon with one pet, `rex`; `salon` is what salon.toml says, which may be nothing.
Desk desk(const std::string& pet, const std::string& salon = {});
/// samples/NAME
std::string sample(std::string_view name);

/// All text of a page in reading order, a line of it a line.
std::string text_of(const Frame&);
/// Without white space of any kind: a line break on the page takes the place of a space.
std::string without_space(std::string_view);
/// True if the page says it, however its lines are broken.
bool says(const Frame&, std::string_view what);
}  // namespace furnish::test
