#pragma once

#include <optional>
#include <span>
#include <string>

#include "base/diagnostic.h"
#include "output/drawn_pdf.h"
#include "output/pdf.h"
#include "output/squares.h"
#include "page/frame.h"

namespace furnish {

/// Adds to what draw_pdf() made of `pages` the codes that it left, and all that its standard asks
/// for and cairo does not write, and the attachments; the outline is there already. Empty iff that
/// is not as cairo writes it, which is an error.
std::optional<std::string> finish_pdf(const std::string& drawn, std::span<const Frame> pages,
                                      const DocumentInfo&, const PdfExtras&, DiagnosticSink&,
                                      std::span<const Squares> codes = {});
/// The dictionary of the stream with an attachment's bytes.
PdfDict embedded_file(const Attachment&, const DocumentInfo&);
/// What an attachment is, or else its name.
const std::string& says_of(const Attachment&);
}  // namespace furnish
