#pragma once

#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "app/inputs.h"
#include "output/disk.h"

namespace furnish {

/// Something that was said of a sheet when it was made, as it is shown on a terminal.
struct SaidBefore {
  std::string once;  ///< as in Diagnostic
  std::string text;
};
/// A sheet that was made, or that there was none to make, and what it was made from.
struct MadeSheet {
  std::string pet, what;  ///< the pet's file, and which of its sheets: "card pdf"
  std::string day;        ///< the day that was taken for today
  std::string shared;     ///< the mark of what all sheets of a run are made from
  std::string days;       ///< that of the days that book this pet
  std::vector<Input> inputs;
  struct File {
    std::string path, mark;
  };
  std::vector<File> files;  ///< as they were written
  std::vector<SaidBefore> said;
};

/// sheets/.made: what the sheets of a salon were made from. Plain text, a line a sheet, with a
/// seal. One that is missing, of another version or that somebody wrote on is as good as empty.
class MadeRecord {
 public:
  MadeRecord() = default;
  /// The text of such a file.
  explicit MadeRecord(std::string text);
  MadeRecord(const MadeRecord&) = delete;
  MadeRecord& operator=(const MadeRecord&) = delete;

  std::optional<MadeSheet> find(std::string_view pet, std::string_view what) const;
  void put(const MadeSheet&);
  /// How a day's file was found when it was read: whether it is good, nothing about it being said.
  std::optional<bool> day_was_good(const std::string& path, const std::string& mark) const;
  void put_day(const std::string& path, const std::string& mark, bool good);
  /// Whether there is anything new.
  bool changed() const { return changed_; }
  /// Its text, of that day's sheets alone: those of another will not be asked for again.
  std::string text(std::string_view day) const;
  /// Whether a file begins as these do, however it goes on: it may give way also where it is
  /// spoilt.
  static bool begins(std::string_view bytes);

 private:
  std::string text_;
  std::unordered_map<std::string_view, std::string_view> lines_;  ///< by pet and what
  struct ByKey {
    using is_transparent = void;
    bool operator()(std::string_view, std::string_view) const;
  };
  std::set<std::string, ByKey> fresh_;       ///< lines
  std::map<std::string, std::string> days_;  ///< by path: mark, and how it is
  bool changed_ = false;
};
}  // namespace furnish
