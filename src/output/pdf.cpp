#include "output/pdf.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <string_view>

#include "base/date.h"
#include "base/text.h"
#include "output/check_page.h"
#include "output/pdf_draw.h"
#include "output/pdf_finish.h"

namespace furnish {
namespace {
void check_pages(std::span<const Frame> pages, DiagnosticSink& sink) {
  if (pages.empty()) sink.error("bad-page", {}, "a PDF needs at least one page");
  for (const Frame& page : pages) check_page(page, sink);
}

void check_links(std::span<const Frame> pages, DiagnosticSink& sink) {
  std::set<std::string_view> ids;
  for (const Frame& page : pages) {
    for (const Mark& mark : page.marks) {
      if (const auto* tag = std::get_if<OpenTag>(&mark)) ids.insert(tag->id);
    }
  }
  for (const Frame& page : pages) {
    for (const Mark& mark : page.marks) {
      const auto* link = std::get_if<LinkMark>(&mark);
      if (link != nullptr && !ids.contains(link->id)) {
        sink.error("dangling-link", {},
                   fmt::format("a link leads to '{}', which is on no page", link->id));
      }
    }
  }
}

void check_info(const DocumentInfo& info, DiagnosticSink& sink) {
  if (trimmed(info.title).empty()) sink.error("bad-info", {}, "a PDF needs a title");
  if (info.language.empty()) sink.error("bad-info", {}, "a PDF needs a language");
  if (!parse_date(info.date)) {
    sink.error("bad-info", {},
               fmt::format("a PDF needs a date such as 2026-11-24, not '{}'", info.date));
  }
  if (first_bad_utf8(info.title) || first_bad_utf8(info.subject)) {
    sink.error("bad-info", {}, "the title or subject of the PDF is not UTF-8");
  }
}

void check_outline(std::span<const OutlineEntry> outline, std::size_t pages, DiagnosticSink& sink) {
  std::size_t deepest = 0;
  for (const OutlineEntry& entry : outline) {
    if (entry.page >= pages || entry.depth > deepest || entry.title.empty() ||
        first_bad_utf8(entry.title)) {
      sink.error(
          "bad-outline", {},
          fmt::format("the outline's entry '{}' has no page, no parent or no title", entry.title));
    }
    deepest = entry.depth + 1;
  }
}

void check_attachments(std::span<const Attachment> attachments, DiagnosticSink& sink) {
  std::set<std::string_view> names;
  for (const Attachment& file : attachments) {
    if (file.name.empty() || file.name.find('/') != std::string::npos ||
        file.media_type.find('/') == std::string::npos || !names.insert(file.name).second) {
      sink.error(
          "bad-attachment", {},
          fmt::format("the attachment '{}' needs a plain file name of its own and a media type",
                      file.name));
    }
  }
}
}  // namespace

std::optional<std::string> to_pdf(std::span<const Frame> pages, const DocumentInfo& info,
                                  const PdfExtras& extras, DiagnosticSink& sink) {
  return to_pdf(pages, info, extras, Codes::forms, sink);
}

std::optional<std::string> to_pdf(std::span<const Frame> pages, const DocumentInfo& info,
                                  const PdfExtras& extras, Codes manner, DiagnosticSink& sink) {
  const std::size_t before = sink.error_count();
  check_pages(pages, sink);
  check_links(pages, sink);
  check_info(info, sink);
  check_outline(extras.outline, pages.size(), sink);
  check_attachments(extras.attachments, sink);
  if (sink.error_count() > before) return std::nullopt;

  std::vector<Squares> codes;
  const std::optional<std::string> drawn =
      draw_pdf(pages, info, extras.outline, sink, manner == Codes::forms ? &codes : nullptr);
  return drawn ? finish_pdf(*drawn, pages, info, extras, sink, codes) : std::nullopt;
}
}  // namespace furnish
