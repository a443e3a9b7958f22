#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "spec/client_list.h"
#include "spec/context.h"

namespace furnish {

/// The pets that a salon's folder has, as far as it takes to tell whether one of a list is among
/// them. Files are looked at for their marks alone; they are read as TOML only where that does not
/// answer.
class KnownPets {
 public:
  /// `complete` is false after an error: then it is not known what is there.
  KnownPets(const ReadContext&, const std::string& root, bool& complete);

  /// The line by which a file says of which line of a list it was made, for its head.
  static std::string mark_line(std::string_view list, const ClientPet&);

  enum class Likeness : std::uint8_t { none, perhaps, same };
  struct Found {
    Likeness likeness = Likeness::none;
    std::string file;
  };
  /// The same by its mark, whatever a person made of the file since; or else by name and owner,
  /// unless that file was made of one of `others`, the marks of the list's pets. Perhaps the same
  /// is one of that name and owner with another number, or without an owner.
  Found find(const ClientPet&, const std::set<std::string>& others);

  /// A name for its file that none has and none was given: the pet's, or with the owner's last
  /// name, or with a number. Empty if nothing of the name can be one.
  std::string free_name(const ClientPet&);

 private:
  struct Details {
    std::string owner, phone, mark, file;
  };
  void read_details();

  const ReadContext& context_;
  std::string folder_;
  std::vector<std::string> files_;
  std::map<std::string, std::string> by_mark_, mark_of_;
  std::set<std::string> names_;  ///< of files, in plain letters, as some systems tell them apart
  bool details_read_ = false;
  std::multimap<std::string, Details> by_name_;
};
}  // namespace furnish
