#include "output/photo_exif.h"

#include <libexif/exif-data.h>

#include <memory>
#include <string>

namespace furnish {
int exif_orientation(std::string_view block) {
  constexpr std::size_t most = 0xFFFF;  // of a segment of a JPEG, which is where it comes from
  if (block.empty()) return 1;
  // The library wants it as a JPEG has it.
  std::string named("Exif\0\0", 6);
  named += block.substr(0, most);
  const std::unique_ptr<ExifData, decltype(&exif_data_unref)> exif(
      exif_data_new_from_data(reinterpret_cast<const unsigned char*>(named.data()),
                              static_cast<unsigned>(named.size())),
      exif_data_unref);
  if (!exif) return 1;
  const ExifEntry* const entry =
      exif_content_get_entry(exif->ifd[EXIF_IFD_0], EXIF_TAG_ORIENTATION);
  if (entry == nullptr || entry->format != EXIF_FORMAT_SHORT || entry->size < 2) return 1;
  const int value = exif_get_short(entry->data, exif_data_get_byte_order(exif.get()));
  return value >= 1 && value <= 8 ? value : 1;
}
}  // namespace furnish
