#include "spec/photo_path.h"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>

#include "spec/offer.h"

namespace furnish {
namespace {
/// In quotes, a path's \r or \t is no r or t behind a backslash: told as what it was.
bool report_backslashes(Fields& fields, const PhotoKey& key) {
  const TomlEntry* const entry = fields.find(key);
  const auto* const text =
      entry == nullptr ? nullptr : std::get_if<std::string>(&entry->node.value);
  if (text == nullptr) return false;
  constexpr std::string_view controls = "\b\t\n\f\r", letters = "btnfr";
  std::string mended;
  for (const char c : *text) {
    const std::size_t at = controls.find(c);
    mended += at == std::string_view::npos ? std::string(1, c) : std::string{'/', letters[at]};
  }
  if (mended == *text) return false;
  offer_words(
      fields.sink().error("photo-path", entry->node.span, "folders of a path are divided by /"),
      mended);
  return true;
}
}  // namespace

std::optional<Located<std::string>> read_photo_path(Fields& fields, const PhotoKey& key,
                                                    const Salon* salon) {
  if (report_backslashes(fields, key)) return std::nullopt;
  auto path = fields.text(key);
  if (!path) return std::nullopt;
  if (path->value.find('\\') != std::string::npos) {
    std::string slashes = path->value;
    std::ranges::replace(slashes, '\\', '/');
    offer_words(fields.sink().error("photo-path", path->span, "folders of a path are divided by /"),
                slashes);
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
