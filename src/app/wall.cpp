#include "app/wall.h"

#include "app/output_file.h"
#include "sheet/rules.h"

namespace furnish {

Exit print_rules(const Options& options, Workshop& shop, Console& console) {
  if (!may_be_written(options, shop.sink())) {
    console.show_reports();
    return Exit::usage;
  }
  SalonFolder& folder = shop.folder(options.root());
  // A wall that lacks a rule is worse than the old page.
  const bool readable = folder.good() && !folder.salon().unknown(SalonPart::rules);
  const auto paper = readable ? shop.paper(folder.salon(), shop.sink()) : std::optional<Paper>();
  const auto voice = paper ? shop.voice(folder, Pet{}, shop.sink()) : std::nullopt;
  const auto sheet =
      voice ? make_rules(folder.salon(), *paper, shop.today(), *voice, shop.sink()) : std::nullopt;
  console.show_reports();
  if (!sheet) return Exit::faults;
  SheetWriter writer(options, shop, console);
  const auto path = writer.write(*sheet, std::string(kinds::rules.name), folder.root());
  return path ? Exit::ok : Exit::faults;
}
}  // namespace furnish
