#pragma once

#include <string>
#include <string_view>

#include "output/pdf_standard.h"
#include "page/frame.h"

namespace furnish {

struct PdfClaims {
  PdfStandard standard = PdfStandard::ua1;
  bool carries_files = false;
};
/// The document about itself in XMP (ISO 16684-1), with the claims to its standards and, as PDF/A-3
/// has no word for PDF/UA-1, its description (ISO 19005-3, 6.6.2.3.2).
std::string xmp_packet(const DocumentInfo&, const std::string& producer, const PdfClaims&);

/// `text` with the marks of XML escaped, and without characters that XML 1.0 forbids.
std::string xml_escaped(std::string_view text);
}  // namespace furnish
