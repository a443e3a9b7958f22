#pragma once

#include <cstdint>

namespace furnish {

/// Which standards a PDF is made to and claims: PDF/UA-1 (ISO 14289-1) and PDF/A-3A (ISO 19005-3),
/// of PDF 1.7; or PDF/UA-2 (ISO 14289-2), WTPDF 1.0 for reuse and for accessibility, and PDF/A-4
/// (ISO 19005-4), of PDF 2.0. No file can claim both.
enum class PdfStandard : std::uint8_t { ua1, ua2 };
}  // namespace furnish
