#include "app/distinct_names.h"

#include <fmt/format.h>

#include <filesystem>
#include <map>
#include <set>
#include <system_error>
#include <utility>

namespace furnish {
namespace {
namespace fs = std::filesystem;

/// The last folder of a path, whatever it is called by: "." has a name too. Empty if it has none.
std::string folder_name(const std::string& path) {
  std::error_code fault;
  const fs::path whole = fs::weakly_canonical(fs::absolute(path, fault), fault);
  return fault ? std::string() : whole.filename().string();
}

std::string folder_of(const NameWanted& one) {
  if (!one.root.empty()) return folder_name(one.root);
  const fs::path folder = fs::path(one.pet_file).parent_path();
  return folder_name(folder.empty() ? "." : folder.string());
}

/// "rex-2.toml" for "rex.toml".
std::string numbered(const std::string& name, int number) {
  const fs::path path(name);
  return fmt::format("{}-{}{}", path.stem().string(), number, path.extension().string());
}
}  // namespace

std::string same_name(const std::vector<PetPath>& pets, bool one_folder) {
  std::map<std::pair<std::string, std::string>, fs::path> seen;
  for (const PetPath& pet : pets) {
    const fs::path file = fs::path(pet.file).lexically_normal();
    const auto [first, is_new] =
        seen.try_emplace({one_folder ? "" : pet.root, file.stem().string()}, file);
    if (!is_new && first->second != file) return first->second.string() + " and " + pet.file;
  }
  return {};
}

std::vector<std::string> distinct_names(const std::vector<NameWanted>& wanted) {
  std::map<std::string, std::set<std::string>> pets_by_name;
  for (const NameWanted& one : wanted) pets_by_name[one.name].insert(one.pet_file);
  std::set<std::string> taken;
  for (const auto& [name, pets] : pets_by_name) {
    if (pets.size() == 1) taken.insert(name);
  }
  std::map<std::pair<std::string, std::string>, std::string> given;
  std::vector<std::string> out;
  for (const NameWanted& one : wanted) {
    std::string& name = given[{one.name, one.pet_file}];
    if (name.empty() && pets_by_name[one.name].size() == 1) name = one.name;
    if (name.empty()) {
      const std::string folder = folder_of(one);
      const std::string longer = folder.empty() ? one.name : folder + "-" + one.name;
      name = longer;
      for (int number = 2; !taken.insert(name).second; ++number) name = numbered(longer, number);
    }
    out.push_back(name);
  }
  return out;
}
}  // namespace furnish
