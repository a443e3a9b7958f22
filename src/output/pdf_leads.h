#pragma once

#include <qpdf/QPDFObjectHandle.hh>

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace furnish {

/// Pages of a book that a page's links lead to, in their order; of those that stay in their part
/// none.
using Leads = std::vector<std::optional<std::size_t>>;

/// Makes the links of that page, in the part's PDF, name the pages that they are to lead to.
void lead_out(QPDFObjectHandle page, const Leads&);
/// The element that each page's own content begins with. A page without any has none.
std::map<QPDFObjGen, QPDFObjectHandle> first_on_pages(QPDFObjectHandle structure);
/// The book's page of such a name; none if it is a place in its part.
std::optional<std::size_t> left_for(const std::string& name);
}  // namespace furnish
