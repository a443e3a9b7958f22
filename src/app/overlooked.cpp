#include "app/overlooked.h"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <map>
#include <set>
#include <system_error>
#include <vector>

#include "app/salon_folder.h"
#include "base/date.h"
#include "base/text.h"

namespace furnish {
namespace {
namespace fs = std::filesystem;

struct Entry {
  std::string name;
  bool folder = false;
};

/// By name; nothing where there is no folder.
std::vector<Entry> entries(const std::string& folder) {
  std::vector<Entry> out;
  std::error_code fault;
  for (fs::directory_iterator at(folder.empty() ? "." : folder, fault), end; !fault && at != end;
       at.increment(fault)) {
    std::error_code ignored;
    out.push_back({at->path().filename().string(), at->is_directory(ignored)});
  }
  std::ranges::sort(out, {}, &Entry::name);
  return out;
}

/// A name that would be read but for its ending; with the ending that is read.
std::string meant_name(const std::string& name) {
  const std::string lower = lower_ascii(name);
  for (const std::string_view wrong : {".toml.txt", ".toml.toml", ".tml", ".toml", ".toml~"}) {
    if (!lower.ends_with(wrong) || (wrong == ".toml" && name.ends_with(".toml"))) continue;
    if (wrong == ".toml~") continue;  // an editor's own copy
    return name.substr(0, name.size() - wrong.size()) + ".toml";
  }
  return {};
}

class Look {
 public:
  Look(std::string root, DiagnosticSink& sink) : root_(std::move(root)), sink_(sink) {}

  void run() {
    endings("");
    for (const char* const folder : {"pets", "styles", "days"}) endings(folder);
    capitals();
    visits();
  }

 private:
  Diagnostic& warn(const std::string& path, std::string message) {
    return sink_.warning("overlooked", {}, fmt::format("{}: {}", path, std::move(message)));
  }

  void endings(const std::string& folder) {
    const std::string in = folder.empty() ? root_ : path_in(root_, folder);
    for (const Entry& entry : entries(in)) {
      if (entry.folder || entry.name.starts_with(".")) continue;
      const std::string meant = meant_name(entry.name);
      if (meant.empty()) continue;
      // What ends so is read after all, as "rex.toml", which nobody means.
      const bool read = !folder.empty() && entry.name.ends_with(".toml");
      warn(path_in(in, entry.name), read ? fmt::format("is read under the name \"{}\"",
                                                       entry.name.substr(0, entry.name.size() - 5))
                                         : "is not read")
          .hint = fmt::format("name it {}", meant);
    }
  }

  /// Of pets whose names are the same on a disk that knows no capitals.
  void capitals() {
    const std::string in = path_in(root_, "pets");
    std::map<std::string, std::string> seen;
    for (const Entry& entry : entries(in)) {
      if (entry.folder || !entry.name.ends_with(".toml")) continue;
      pets_.push_back(entry.name.substr(0, entry.name.size() - 5));
      const auto [first, fresh] = seen.try_emplace(plain_letters(entry.name), entry.name);
      if (!fresh) {
        warn(path_in(in, entry.name),
             fmt::format("differs from {} by its capitals or accents only", first->second))
            .hint = "one pet has one file";
      }
    }
  }

  void visits() {
    const std::string in = path_in(root_, "visits");
    std::set<std::string> visited;
    std::vector<std::string> ghosts;
    for (const Entry& entry : entries(in)) {
      if (!entry.folder) {
        beside(in, entry.name);
        continue;
      }
      endings(path_in("visits", entry.name));
      visited.insert(entry.name);
      if (std::ranges::find(pets_, entry.name) == pets_.end()) ghosts.push_back(entry.name);
    }
    for (const std::string& ghost : ghosts) {
      Diagnostic& said =
          warn(path_in(in, ghost), fmt::format("there is no pet '{}' in pets/", ghost));
      // A pet without visits is the likeliest to have been renamed.
      std::vector<std::string_view> without;
      for (const std::string& pet : pets_) {
        if (!visited.contains(pet)) without.push_back(pet);
      }
      if (const auto near = nearest(ghost, without, 3)) {
        said.hint = fmt::format("if it was renamed: furnish rename {} {}", ghost, *near);
      } else if (without.size() == 1) {
        said.hint = fmt::format("if it was renamed: furnish rename {} {}", ghost, without.front());
      }
    }
  }

  /// visits/marlow-2026-11-24.toml, or a date without a pet.
  void beside(const std::string& in, const std::string& name) {
    if (!lower_ascii(name).ends_with(".toml")) return;
    std::string pet = "PET";
    for (const std::string& one : pets_) {
      if (name.starts_with(one)) pet = one;
    }
    std::string date = "YYYY-MM-DD";
    for (std::size_t i = 0; i + 10 <= name.size(); ++i) {
      if (parse_date(std::string_view(name).substr(i, 10))) date = name.substr(i, 10);
    }
    warn(path_in(in, name), "a visit lies in the folder of its pet").hint =
        fmt::format("move it to {}", path_in(path_in(in, pet), date + ".toml"));
  }

  std::string root_;
  DiagnosticSink& sink_;
  std::vector<std::string> pets_;
};
}  // namespace

void tell_overlooked(const std::string& root, DiagnosticSink& sink) {
  Look(root, sink).run();
}
}  // namespace furnish
