#include "desk/page_files.h"

#include <array>
#include <utility>

#include "desk/page_bytes.h"

namespace furnish::desk {
namespace {
constexpr std::array<std::pair<std::string_view, std::string_view>, 5> types{
    {{".html", "text/html; charset=utf-8"},
     {".css", "text/css; charset=utf-8"},
     {".js", "text/javascript; charset=utf-8"},
     {".svg", "image/svg+xml"},
     {".json", "application/json"}}};
}  // namespace

std::optional<PageFile> page_file(std::string_view name) {
  for (const PageBytes& file : page_bytes()) {
    if (file.name != name) continue;
    for (const auto& [ending, type] : types) {
      // The bytes of a text may be looked at as characters.
      if (name.ends_with(ending))
        return PageFile{type, {reinterpret_cast<const char*>(file.bytes), file.size}};
    }
  }
  return std::nullopt;
}
}  // namespace furnish::desk
