#pragma once

#include <string>
#include <vector>

#include "base/source.h"
#include "model/pet.h"
#include "model/salon.h"
#include "model/visit.h"
#include "page/photograph.h"
#include "spec/context.h"

namespace furnish {

/// Where the photos of one salon, or of a pet in none, are looked for.
class PhotoFolder {
 public:
  /// Paths are relative to `root`; of a pet in no salon ("") to the folder of the pet's own file.
  /// Unless the salon lets photos lie anywhere, a link that leads out of the folder is not
  /// followed.
  PhotoFolder(const std::string& root, const Salon&, const ReadContext&);

  /// A file of at most 32 MiB that holds a usable JPEG, PNG or WebP. Null after one warning at the
  /// path's place: "photo-missing", "photo-path", or one of open_photograph().
  PhotographPtr load(const Located<std::string>& path);
  /// The pet's own photo; null also if it has none.
  PhotographPtr portrait(const Pet&);
  /// A visit's photos in its order, as many as it names; null where one cannot be shown.
  std::vector<PhotographPtr> of(const Visit&);

 private:
  std::string folder_of(const SourceSpan& named) const;

  std::string root_;
  bool anywhere_;
  ReadContext context_;
};
}  // namespace furnish
