#pragma once

#include <string>
#include <vector>

#include "app/salon_folder.h"

namespace furnish {

/// A file that wants a name: "rex.toml", of the pet in `pet_file`, whose salon is `root` ("" if it
/// is in none).
struct NameWanted {
  std::string name, pet_file, root;
};

/// "x/pets/rex.toml and y/pets/rex.toml": two files whose sheets would go by one name to one place;
/// empty if there are none. `one_folder`: all go to one, else each to its salon's.
std::string same_name(const std::vector<PetPath>&, bool one_folder);

/// A name for each, in order: the one it wants, unless another pet's file wants it too. Then the
/// folder of the salon, or of a pet in none, goes before it: "lantern-street-rex.toml"; and where
/// that is not enough, a number behind: "lantern-street-rex-2.toml". What is wanted twice for one
/// pet is one file, with one name.
std::vector<std::string> distinct_names(const std::vector<NameWanted>&);
}  // namespace furnish
