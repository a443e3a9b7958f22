#pragma once

#include <span>

#include "output/pdf_rules.h"

namespace furnish::test {
std::span<const PdfRule> structure_rules();  ///< of the structure tree
std::span<const PdfRule> content_rules();    ///< of pages, fonts and annotations
std::span<const PdfRule> two_rules();        ///< of PDF 2.0 alone
}  // namespace furnish::test
