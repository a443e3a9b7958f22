#include "output/svg.h"

#include <cairo-svg.h>
#include <fmt/format.h>

#include <map>
#include <string_view>

#include "output/cairo_handle.h"
#include "output/check_page.h"
#include "output/painter.h"
#include "output/pdf_metadata.h"

namespace furnish {
namespace {
cairo_status_t draw(const Frame& page, std::string& bytes) {
  const PageSize size = in_points(page.size);
  const CairoSurface surface(
      cairo_svg_surface_create_for_stream(append_to_string, &bytes, size.width, size.height));
  {
    const CairoContext context(cairo_create(surface.get()));
    paint(page, context.get());
    if (const auto status = cairo_status(context.get()); status != CAIRO_STATUS_SUCCESS)
      return status;
  }
  cairo_surface_finish(surface.get());
  return cairo_surface_status(surface.get());
}

/// Cairo numbers the surfaces of a whole run, and puts the numbers into the file: of its own, and
/// of each photo where it is defined and where it is used. Here they are counted from 1 in each
/// file.
std::string renumbered(std::string_view svg) {
  constexpr std::string_view quote = "\"", names[] = {"surface", "image", "#image"};
  std::map<std::string_view, std::size_t> numbers;
  std::string out;
  std::size_t copied = 0;
  for (std::size_t at = svg.find(quote); at != svg.npos; at = svg.find(quote, at)) {
    ++at;
    for (const std::string_view name : names) {
      if (!svg.substr(at).starts_with(name)) continue;
      const std::size_t begin = at + name.size(), end = svg.find(quote, begin);
      const std::string_view old = svg.substr(begin, end - begin);
      const std::size_t own = numbers.try_emplace(old, numbers.size() + 1).first->second;
      out += svg.substr(copied, begin - copied);
      out += std::to_string(own);
      copied = end;
    }
  }
  return out += svg.substr(copied);
}

/// Title, description and language, which cairo does not write.
void describe(std::string& svg, const DocumentInfo& info) {
  const std::size_t root = svg.find("<svg ");
  if (root == std::string::npos) return;
  std::string words = "\n" + svg_title(info);
  if (!info.subject.empty()) words += fmt::format("\n<desc>{}</desc>", xml_escaped(info.subject));
  svg.insert(svg.find('>', root) + 1, words);
  svg.insert(root + 5, fmt::format("xml:lang=\"{}\" ", xml_escaped(info.language)));
}
}  // namespace

std::optional<std::string> to_svg(const Frame& page, const DocumentInfo& info,
                                  DiagnosticSink& sink) {
  if (!check_page(page, sink)) return std::nullopt;
  std::string bytes;
  if (const cairo_status_t status = draw(page, bytes); status != CAIRO_STATUS_SUCCESS) {
    sink.error("picture-failed", {},
               fmt::format("the picture could not be drawn: {}", cairo_status_to_string(status)));
    return std::nullopt;
  }
  bytes = renumbered(bytes);
  describe(bytes, info);
  return bytes;
}

std::string svg_title(const DocumentInfo& info) {
  return fmt::format("<title>{}</title>", xml_escaped(info.title));
}
}  // namespace furnish
