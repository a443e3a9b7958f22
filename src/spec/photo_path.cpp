#include "spec/photo_path.h"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>

namespace furnish {
std::optional<Located<std::string>> read_photo_path(Fields& fields, const PhotoKey& key,
                                                    const Salon* salon) {
  auto path = fields.text(key);
  if (!path) return std::nullopt;
  if (path->value.find('\\') != std::string::npos) {
    std::string slashes = path->value;
    std::ranges::replace(slashes, '\\', '/');
    fields.sink().error("photo-path", path->span, "folders of a path are divided by /").hint =
        fmt::format("write \"{}\"", slashes);
    return std::nullopt;
  }
  if (salon != nullptr && salon->photos_anywhere) return path;
  const auto normal = std::filesystem::path(path->value).lexically_normal();
  if (!normal.is_absolute() && *normal.begin() != "..") return path;
  fields.sink().error("photo-path", path->span, "the photo lies outside the salon's folder").hint =
      "copy it into photos/, or set photos_anywhere = true under [salon] in salon.toml";
  return std::nullopt;
}
}  // namespace furnish
