#include "output/part_drawer.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <string_view>
#include <utility>

#include "output/pdf_draw.h"
#include "output/shared_type.h"

namespace furnish {
namespace {
/// Of the id of a link that leaves its part.
constexpr std::string_view page_prefix = "page:";
/// Where links go meanwhile.
constexpr const char* own_page = "own-page";

std::optional<std::size_t> page_of(std::string_view id) {
  if (!id.starts_with(page_prefix)) return std::nullopt;
  std::size_t out = 0;
  std::from_chars(id.data() + page_prefix.size(), id.data() + id.size(), out);
  return out;
}

/// Ties links that leave their part to the title of their own page, and gives where all are to
/// lead.
std::vector<std::optional<std::size_t>> tied(Frame& page) {
  std::vector<std::optional<std::size_t>> out;
  for (Mark& mark : page.marks) {
    auto* const link = std::get_if<LinkMark>(&mark);
    if (link == nullptr) continue;
    out.push_back(page_of(link->id));
    if (out.back()) link->id = own_page;
  }
  if (std::ranges::none_of(out, [](const auto& lead) { return lead.has_value(); })) return out;
  for (Mark& mark : page.marks) {
    auto* const tag = std::get_if<OpenTag>(&mark);
    if (tag == nullptr || !tag->id.empty() || tag->role != Structure::title) continue;
    tag->id = own_page;
    break;
  }
  return out;
}
}  // namespace

std::string book_page(std::size_t n) {
  return fmt::format("{}{}", page_prefix, n);
}

PartDrawer::PartDrawer(PdfStandard standard)
    : standard_(standard), type_(std::make_unique<SharedType>()) {}
PartDrawer::~PartDrawer() = default;

std::optional<BookPart> PartDrawer::draw(std::span<const Frame> pages, const DocumentInfo& info,
                                         std::span<const Attachment> files, DiagnosticSink& sink) {
  for (const Frame& page : pages) type_->meet(page);
  std::vector<Frame> all{type_->page()};
  all.insert(all.end(), pages.begin(), pages.end());
  BookPart out{{}, info.language, {}};
  for (Frame& page : all) out.leads.push_back(tied(page));
  auto bytes = to_pdf(all, info, {{}, {files.begin(), files.end()}, standard_}, Codes::paths, sink);
  if (!bytes) return std::nullopt;
  out.bytes = *std::move(bytes);
  return out;
}

std::optional<BookPart> PartDrawer::fonts(const DocumentInfo& info, DiagnosticSink& sink,
                                          bool carries) const {
  const std::vector<Frame> type{type_->page()};
  PdfExtras extras{{}, {}, standard_};
  if (carries) extras.attachments.push_back({"any", "", "application/toml", "any"});
  auto bytes = to_pdf(type, info, extras, sink);
  if (!bytes) return std::nullopt;
  return BookPart{*std::move(bytes), info.language, {}};
}
}  // namespace furnish
