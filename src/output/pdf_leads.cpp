#include "output/pdf_leads.h"

namespace furnish {
namespace {
using Handle = QPDFObjectHandle;
/// Of the name of its place, until it is copied: names of cairo's begin with a page's number.
constexpr char leaving = '@';

void find_first(Handle element, std::map<QPDFObjGen, Handle>& found) {
  Handle page = element.getKey("/Pg"), kids = element.getKey("/K");
  if (page.isDictionary()) found.try_emplace(page.getObjGen(), element);
  const auto below = kids.isArray() ? kids.getArrayAsVector() : std::vector<Handle>{kids};
  for (Handle kid : below) {
    if (kid.isDictionary() && kid.hasKey("/S")) find_first(kid, found);
  }
}
}  // namespace

std::map<QPDFObjGen, Handle> first_on_pages(Handle structure) {
  std::map<QPDFObjGen, Handle> found;
  find_first(structure, found);
  return found;
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
