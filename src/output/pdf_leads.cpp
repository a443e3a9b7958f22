#include "output/pdf_leads.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <string_view>

#include "output/pdf_book.h"

namespace furnish {
namespace {
using Handle = QPDFObjectHandle;
/// Of the id of a link that leaves its part.
constexpr std::string_view page_prefix = "page:";
/// Of the name of its place, until it is copied: names of cairo's begin with a page's number.
constexpr char leaving = '@';
/// Where links go meanwhile.
constexpr const char* own_page = "own-page";

std::optional<std::size_t> page_of(std::string_view id) {
  if (!id.starts_with(page_prefix)) return std::nullopt;
  std::size_t out = 0;
  std::from_chars(id.data() + page_prefix.size(), id.data() + id.size(), out);
  return out;
}

}  // namespace

Leads tied(Frame& page) {
  Leads out;
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

std::string book_page(std::size_t n) {
  return fmt::format("{}{}", page_prefix, n);
}

std::optional<std::size_t> left_for(const std::string& name) {
  if (name.empty() || name.front() != leaving) return std::nullopt;
  return std::stoul(name.substr(1));
}

void lead_out(Handle page, const Leads& leads) {
  Handle annotations = page.getKey("/Annots");
  for (std::size_t i = 0; annotations.isArray() && i < leads.size(); ++i) {
    if (!leads[i]) continue;
    Handle link = annotations.getArrayItem(static_cast<int>(i));
    const Handle to = Handle::newString(leaving + std::to_string(*leads[i]));
    if (link.hasKey("/A")) {
      link.getKey("/A").replaceKey("/D", to);
      link.getKey("/A").replaceKey("/SD", to);
    } else {
      link.replaceKey("/Dest", to);
    }
  }
}
}  // namespace furnish
