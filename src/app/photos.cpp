#include "app/photos.h"

#include <fmt/format.h>

#include <filesystem>
#include <memory>
#include <system_error>
#include <utility>

#include "app/salon_folder.h"
#include "output/photo.h"

namespace furnish {
namespace {
namespace fs = std::filesystem;

/// True if the path, with every link followed, stays in the folder.
bool stays_in(const std::string& folder, const std::string& path, const Files& files) {
  std::error_code fault;
  const fs::path inside = files.place(path),
                 whole = fs::weakly_canonical(fs::absolute(folder.empty() ? "." : folder), fault);
  if (fault || inside.empty()) return true;  // a path that leads nowhere: reading it says so
  const fs::path rest = inside.lexically_relative(whole);
  return !rest.empty() && *rest.begin() != "..";
}
}  // namespace

PhotoFolder::PhotoFolder(const std::string& root, const Salon& salon, const ReadContext& context)
    : root_(root), anywhere_(salon.photos_anywhere), context_(context) {}

std::string PhotoFolder::folder_of(const SourceSpan& named) const {
  if (!root_.empty() || named.file >= context_.sources.size()) return root_;
  return fs::path(context_.sources.at(named.file).path()).parent_path().string();
}

PhotographPtr PhotoFolder::load(const Located<std::string>& path) {
  const std::string folder = folder_of(path.span), file = path_in(folder, path.value);
  if (!anywhere_ && !stays_in(folder, file, context_.files)) {
    context_.sink.warning("photo-path", path.span, "the photo is a link out of the salon's folder")
        .hint = "copy it into photos/, or set photos_anywhere = true under [salon] in salon.toml";
    return nullptr;
  }
  FileContent content = context_.files.read_up_to(file, most_photo_bytes);
  if (!content.bytes) {
    context_.sink
        .warning("photo-missing", path.span,
                 fmt::format("the photo '{}' cannot be read: {}", path.value, content.fault))
        .hint = fmt::format("it is looked for at {}", file);
    return nullptr;
  }
  auto photo = open_photograph(path.value, *std::move(content.bytes), path.span, context_.sink);
  return photo ? std::make_shared<const Photograph>(*std::move(photo)) : nullptr;
}

PhotographPtr PhotoFolder::portrait(const Pet& pet) {
  return pet.photo.empty() ? nullptr : load({pet.photo, pet.photo_span});
}

std::vector<PhotographPtr> PhotoFolder::of(const Visit& visit) {
  std::vector<PhotographPtr> out;
  for (const Photo& photo : visit.photos) out.push_back(load(photo.file));
  return out;
}
}  // namespace furnish
