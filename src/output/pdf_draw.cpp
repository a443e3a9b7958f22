#include "output/pdf_draw.h"

#include <cairo-pdf.h>
#include <fmt/format.h>

#include <algorithm>
#include <string_view>
#include <vector>

#include "output/cairo_handle.h"
#include "output/painter.h"
#include "output/structure.h"

namespace furnish {
namespace {
bool opens(const Frame& page, std::string_view id) {
  return std::ranges::any_of(page.marks, [&](const Mark& mark) {
    const auto* tag = std::get_if<OpenTag>(&mark);
    return tag != nullptr && tag->id == id;
  });
}

/// Names that are unique in the document: an id belongs to its page, and a link looks on its own
/// page first.
TagNames names_on(std::size_t page, std::span<const Frame> pages, std::vector<Squares>* codes) {
  return {.place = [=](std::string_view id) { return place_name(page, id); },
          .target =
              [=](std::string_view id) {
                if (opens(pages[page], id)) return place_name(page, id);
                const auto found = std::ranges::find_if(
                    pages, [&](const Frame& other) { return opens(other, id); });
                return place_name(static_cast<std::size_t>(found - pages.begin()), id);
              },
          .codes = codes};
}

void set_metadata(cairo_surface_t* surface, const DocumentInfo& info) {
  const auto set = [&](cairo_pdf_metadata_t key, const std::string& text) {
    if (!text.empty()) cairo_pdf_surface_set_metadata(surface, key, text.c_str());
  };
  set(CAIRO_PDF_METADATA_TITLE, info.title);
  set(CAIRO_PDF_METADATA_SUBJECT, info.subject);
  set(CAIRO_PDF_METADATA_CREATOR, "furnish");
  // Always, or the moment of the run would get into the file.
  set(CAIRO_PDF_METADATA_CREATE_DATE, info.date + "T00:00:00Z");
}

void add_outline(cairo_surface_t* surface, std::span<const OutlineEntry> outline) {
  std::vector<int> parents{CAIRO_PDF_OUTLINE_ROOT};  // one for each depth
  for (const OutlineEntry& entry : outline) {
    parents.resize(entry.depth + 1);
    const std::string target = fmt::format("page={} pos=[0 0]", entry.page + 1);
    parents.push_back(cairo_pdf_surface_add_outline(surface, parents.back(), entry.title.c_str(),
                                                    target.c_str(), CAIRO_PDF_OUTLINE_FLAG_OPEN));
  }
}

cairo_status_t draw_pages(cairo_surface_t* surface, std::span<const Frame> pages,
                          std::vector<Squares>* codes) {
  const CairoContext context(cairo_create(surface));
  cairo_t* cr = context.get();
  for (std::size_t i = 0; i < pages.size() && cairo_status(cr) == CAIRO_STATUS_SUCCESS; ++i) {
    const PageSize size = in_points(pages[i].size);
    cairo_pdf_surface_set_size(surface, size.width, size.height);
    const TagNames names = names_on(i, pages, codes);
    paint(pages[i], cr, &names);
    cairo_show_page(cr);
  }
  return cairo_status(cr);
}
}  // namespace

std::optional<std::string> draw_pdf(std::span<const Frame> pages, const DocumentInfo& info,
                                    std::span<const OutlineEntry> outline, DiagnosticSink& sink,
                                    std::vector<Squares>* codes) {
  std::string bytes;
  const PageSize first = in_points(pages.front().size);
  const CairoSurface surface(
      cairo_pdf_surface_create_for_stream(append_to_string, &bytes, first.width, first.height));
  // From 1.5 on newer cairos write their objects into streams, where DrawnPdf does not look.
  cairo_pdf_surface_restrict_to_version(surface.get(), CAIRO_PDF_VERSION_1_4);
  set_metadata(surface.get(), info);
  cairo_status_t status = draw_pages(surface.get(), pages, codes);
  // With a context in error, an outline makes cairo 1.16 crash as it finishes: so add it last.
  if (status == CAIRO_STATUS_SUCCESS) {
    add_outline(surface.get(), outline);
    cairo_surface_finish(surface.get());
    status = cairo_surface_status(surface.get());
  }
  if (status == CAIRO_STATUS_SUCCESS) return bytes;
  sink.error("pdf-failed", {},
             fmt::format("the PDF could not be drawn: {}", cairo_status_to_string(status)));
  return std::nullopt;
}
}  // namespace furnish
