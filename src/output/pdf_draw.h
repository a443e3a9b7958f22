#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "base/diagnostic.h"
#include "output/pdf.h"
#include "output/squares.h"
#include "page/frame.h"

namespace furnish {

/// The pages as cairo writes them: tagged, with outline and links, but short of what finish_pdf()
/// adds. With `codes`, these take the codes that it is to draw. Empty iff cairo failed, which is an
/// error. pre: checked pages, info and outline.
std::optional<std::string> draw_pdf(std::span<const Frame> pages, const DocumentInfo&,
                                    std::span<const OutlineEntry>, DiagnosticSink&,
                                    std::vector<Squares>* codes = nullptr);

/// How a file has a code that a phone reads: as a form of its own, or as a path in the page, which
/// a book packs smaller.
enum class Codes : std::uint8_t { forms, paths };
/// to_pdf(), with codes in that way.
std::optional<std::string> to_pdf(std::span<const Frame> pages, const DocumentInfo&,
                                  const PdfExtras&, Codes, DiagnosticSink&);
}  // namespace furnish
