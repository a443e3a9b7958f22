#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "spec/edit_splice.h"

namespace furnish {

/// Sections of the file, or of a table that has some (`[trim.ears]`), and where a new one goes: in
/// the order of the format, with an empty line before it where the file has them.
class SectionPlace {
 public:
  SectionPlace(const ParsedText&, const TableInfo* file, EditPath table);

  bool has_children() const;
  Splice child(const std::string& key, const EditTable&) const;
  /// `[[key]]`, as many as there are.
  Splice elements(const std::string& key, const EditList&) const;
  /// `[table]` itself, where headers below it only implied it; empty if none does.
  std::optional<Splice> opened(const std::vector<std::pair<std::string, std::string>>& rows) const;

 private:
  /// The blocks of one name.
  struct Group {
    std::string name;
    std::size_t first, last;  ///< lines: of its first header, and the last that belongs to it
  };
  std::vector<Group> groups() const;
  Splice placed(const std::string& key, const std::string& body) const;
  std::string header(const std::string& key) const;

  const ParsedText& parsed_;
  EditPath table_;
  const TableInfo* info_;
};
}  // namespace furnish
