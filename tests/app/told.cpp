#include "app/told.h"

#include <variant>

#include "page/shaped_line.h"
#include "sheet/desk.h"

namespace furnish::test {
std::string all_of(const Frame& frame) {
  std::string out = text_of(frame);
  for (const Mark& mark : frame.marks) {
    if (const auto* tag = std::get_if<OpenTag>(&mark)) out += tag->alt + tag->id;
    if (const auto* link = std::get_if<LinkMark>(&mark)) out += link->says + link->id;
  }
  return without_space(out);
}

std::string all_of(const Made& made) {
  std::string out = made.name + made.sheet.info.title + made.sheet.info.subject;
  for (const Frame& side : sides(made.sheet.page)) out += all_of(side);
  for (const Attachment& file : made.files) out += file.name + file.bytes;
  for (const SideFile& file : made.beside) out += file.bytes;
  return out;
}
}  // namespace furnish::test
