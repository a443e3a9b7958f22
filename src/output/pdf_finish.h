#pragma once

#include <qpdf/QPDFObjectHandle.hh>

#include <optional>
#include <span>
#include <string>

#include "base/diagnostic.h"
#include "output/pdf.h"
#include "page/frame.h"

namespace furnish {

/// Adds to what draw_pdf() made of `pages` all that PDF/UA-1 (ISO 14289-1) and PDF/A-3A (ISO
/// 19005-3) ask for and cairo does not write, and the attachments. Empty iff libqpdf failed, which
/// is an error.
std::optional<std::string> finish_pdf(const std::string& drawn, std::span<const Frame> pages,
                                      const DocumentInfo&, std::span<const Attachment>,
                                      DiagnosticSink&);
/// What says of a file that it is attached, by its name, with its content.
QPDFObjectHandle embedded_file(QPDF&, const Attachment&, const DocumentInfo&);
}  // namespace furnish
