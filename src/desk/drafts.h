#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>

#include "desk/salon.h"
#include "output/disk.h"

namespace furnish::desk {

/// Changes that are not saved yet, so that a crash or a closed lid loses next to none: one file of
/// the person's own for each, which nobody else may read.
class Drafts {
 public:
  using Json = nlohmann::ordered_json;
  /// A file of drafts is one of those that a page sent.
  static constexpr std::size_t largest = std::size_t{1} * 1024 * 1024, most = 64;

  /// `folder` is made when first written to; empty: nothing is kept. Keeps the reference.
  Drafts(std::string folder, const Disk& disk);

  /// Keeps a draft in place of that file's last, or forgets it where there is nothing in it. Empty,
  /// or why it could not be kept.
  std::string keep(const FileId&, const Json& draft);
  void forget(const FileId&);
  /// All that are kept, in no particular order; what cannot be read as one is left out.
  Json all() const;

 private:
  std::string path_of(const FileId&) const;
  std::string folder_;
  const Disk& disk_;
};

/// Where the drafts of a salon's folder lie: ${XDG_STATE_HOME:-~/.local/state}/furnish/desk/HASH.
/// Empty if the person has no such place.
std::string drafts_folder(const std::string& salon_root);
}  // namespace furnish::desk
