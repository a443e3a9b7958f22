#pragma once

#include <map>
#include <memory>
#include <optional>
#include <set>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "app/made_record.h"
#include "app/options.h"
#include "app/salon_folder.h"
#include "base/files.h"
#include "output/disk.h"

namespace furnish {

/// What all sheets of a salon are made from beside the pets' own files, as it was when the run
/// began.
struct SalonInputs {
  std::string shared;                        ///< the mark of all of it but the days
  std::map<std::string, std::string> marks;  ///< by path: its TOML files, days, the list of pets
  /// The mark of the days that a pet's sheets may hang on: those that name it, those that have
  /// faults, and today's where it books a pet that is not there.
  std::string days_about(const std::string& pet) const;

  struct DayFile {
    std::string path, mark;
    bool about_all = false;
  };
  std::vector<DayFile> days;
  std::unordered_map<std::string, std::vector<std::size_t>> named;  ///< days by words in quotes
};
/// `data`: the folder of fonts/ and styles/. Days are read as TOML only if the record does not know
/// them.
SalonInputs salon_inputs(const Options&, Date today, const std::string& root,
                         const std::string& data, const Files&, MadeRecord&);

/// What stands in sheets/.made, held against what is there now. A sheet is as it was made if
/// nothing changed of what it was made from, or of its files since; in doubt it is not.
class MadeBefore {
 public:
  /// Looks at the salons of these pets. Where sheets go elsewhere than to their sheets/, or into
  /// one file, nothing is ever as it was made.
  MadeBefore(const Options&, Date today, const std::string& data, const Files&, const Disk&,
             std::span<const PetPath>);

  /// Whether it was made on that day at all.
  bool knows(const PetPath&) const;
  /// The sheet of a pet, if making it would change nothing. May be asked in many threads.
  std::optional<MadeSheet> unchanged(const PetPath&) const;
  /// What was read for a pet, for remember(); empty if it cannot be told what that was. May be
  /// asked in many threads.
  std::optional<std::vector<Input>> inputs(const PetPath&, InputFiles&) const;
  /// A sheet that was made well, and nothing said but what is given.
  void remember(const PetPath&, std::vector<Input>, std::vector<MadeSheet::File>,
                std::vector<SaidBefore>);
  /// Something of a salon's own was told, which no record of a pet's sheet has: no more is
  /// remembered of this run.
  void give_up() { sure_ = false; }
  void write() const;

 private:
  struct Salon {
    MadeRecord record;
    SalonInputs inputs;
    explicit Salon(std::string text) : record(std::move(text)) {}
  };
  std::string record_path(const std::string& root) const;
  std::string what() const;

  const Options& options_;
  std::string day_;
  const Files& files_;
  const Disk& disk_;
  bool sure_ = true;
  std::map<std::string, std::unique_ptr<Salon>> salons_;  ///< by root
};
}  // namespace furnish
