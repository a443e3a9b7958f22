#pragma once

#include <optional>
#include <span>
#include <string>

#include "base/diagnostic.h"
#include "output/pdf.h"
#include "page/frame.h"

class QPDF;
class QPDFObjectHandle;

namespace furnish {

/// Adds to what draw_pdf() made of `pages` all that its standard asks for and cairo does not write,
/// and the attachments; the outline is there already. Empty iff libqpdf failed, which is an error.
std::optional<std::string> finish_pdf(const std::string& drawn, std::span<const Frame> pages,
                                      const DocumentInfo&, const PdfExtras&, DiagnosticSink&);
/// What says of a file that it is attached, by its name, with its content.
QPDFObjectHandle embedded_file(QPDF&, const Attachment&, const DocumentInfo&);
}  // namespace furnish
