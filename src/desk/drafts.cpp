#include "desk/drafts.h"

#include <fmt/format.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <nlohmann/json.hpp>
#include <system_error>
#include <utility>

#include "desk/mark.h"
#include "output/make_folder.h"
#include "output/write.h"

namespace furnish::desk {
namespace {
namespace fs = std::filesystem;

/// Files of drafts in a folder; none where there is none.
std::vector<fs::path> files_in(const std::string& folder) {
  std::vector<fs::path> out;
  std::error_code fault;
  for (fs::directory_iterator it(folder, fault), end; !fault && it != end; it.increment(fault)) {
    if (it->path().extension() == ".json") out.push_back(it->path());
  }
  return out;
}
}  // namespace

Drafts::Drafts(std::string folder, const Disk& disk) : folder_(std::move(folder)), disk_(disk) {}

std::string Drafts::path_of(const FileId& file) const {
  return fmt::format("{}/{}.json", folder_, mark_of(file.kind + "/" + file.id));
}

std::string Drafts::keep(const FileId& file, const Json& draft) {
  const bool edits = draft.contains("edits") && !draft["edits"].empty();
  if (!edits && !draft.contains("text")) {
    forget(file);
    return {};
  }
  if (folder_.empty()) return "there is no folder for drafts";
  const std::string path = path_of(file), bytes = draft.dump();
  std::error_code ignored;
  if (bytes.size() > largest || (!fs::exists(path, ignored) && files_in(folder_).size() >= most)) {
    return "there is more that is not saved than can be kept";
  }
  DiagnosticSink said;
  if (make_private_folder(folder_, said, disk_) && write_private(path, bytes, said, disk_)) {
    return {};
  }
  return said.all().back().message;
}

void Drafts::forget(const FileId& file) {
  if (!folder_.empty()) disk_.unlink(path_of(file).c_str());
}

Drafts::Json Drafts::all() const {
  Json out = Json::array();
  if (folder_.empty()) return out;
  for (const fs::path& path : files_in(folder_)) {
    std::error_code fault;
    if (!fs::is_regular_file(path, fault) || fs::file_size(path, fault) > largest) continue;
    std::ifstream file(path, std::ios::binary);
    const std::string bytes(std::istreambuf_iterator<char>(file), {});
    Json draft = Json::parse(bytes, nullptr, false);
    if (draft.is_object()) out.push_back(std::move(draft));
  }
  return out;
}

std::string drafts_folder(const std::string& salon_root) {
  std::error_code fault;
  const fs::path salon = fs::canonical(salon_root, fault);
  if (fault) return {};
  const char* const state = std::getenv("XDG_STATE_HOME");
  const char* const home = std::getenv("HOME");
  fs::path base;
  if (state != nullptr && *state == '/') {
    base = state;
  } else if (home != nullptr && *home == '/') {
    base = fs::path(home) / ".local/state";
  } else {
    return {};
  }
  return base / "furnish/desk" / mark_of(salon.string());
}
}  // namespace furnish::desk
