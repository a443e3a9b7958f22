#include "app/wall.h"

#include "app/output_file.h"
#include "base/text.h"
#include "sheet/rules.h"

namespace furnish {

Exit print_rules(const Options& options, Workshop& shop, Console& console) {
  if (lower_ascii(options.output).ends_with(".toml")) {
    shop.sink().error("usage", {}, toml_is_a_persons);
    console.show_reports();
    return Exit::usage;
  }
  SalonFolder& folder = shop.folder(options.salon.empty() ? "." : options.salon);
  const auto paper =
      folder.good() ? shop.paper(folder.salon(), shop.sink()) : std::optional<Paper>();
  const auto voice = paper ? shop.voice(folder, Pet{}, shop.sink()) : std::nullopt;
  const auto sheet =
      voice ? make_rules(folder.salon(), *paper, shop.today(), *voice, shop.sink()) : std::nullopt;
  console.show_reports();
  if (!sheet) return Exit::faults;
  const std::vector<Frame> frames = sides(sheet->page);
  PdfExtras extras;
  if (frames.size() > 1) extras.outline.push_back({sheet->info.title, 0, 0});
  SheetWriter writer(options, shop, console);
  const auto path =
      writer.write({frames, sheet->info, extras, std::string(kinds::rules.name)}, folder.root());
  return path ? Exit::ok : Exit::faults;
}
}  // namespace furnish
