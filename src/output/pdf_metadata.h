#pragma once

#include <string>

#include "page/frame.h"

namespace furnish {

/// The document about itself in XMP (ISO 16684-1), with the claims to PDF/UA-1 and PDF/A-3A and, as
/// PDF/A has no word for the first, its description (ISO 19005-3, 6.6.2.3.2).
std::string xmp_packet(const DocumentInfo&, const std::string& producer);

/// `text` with the marks of XML escaped, and without characters that XML 1.0 forbids.
std::string xml_escaped(std::string_view text);
}  // namespace furnish
