#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "base/diagnostic.h"
#include "output/pdf.h"

namespace furnish {

/// What is taken out of a PDF: sheets carry files of a few kilobytes.
struct AttachmentBounds {
  std::size_t file = std::size_t{4} * 1024 * 1024;  ///< bytes of one attachment, unpacked
  std::size_t count = 20'000;  ///< a salon's book carries two a pet
  /// Bytes that all filters together may unpack, where a file that weighs little keeps them busy
  /// for long.
  std::size_t unpacked = std::size_t{64} * 1024 * 1024;
  /// Memory that libqpdf may take, for a file that unpacks to far more than it weighs. It holds
  /// this thread alone.
  std::size_t memory = std::size_t{512} * 1024 * 1024;
};

/// The files attached to a PDF (its EmbeddedFiles), by name, as they were put in: checked against
/// their checksum where there is one. None without attachments. After an error ("not-a-pdf",
/// "pdf-broken", "pdf-encrypted", "attachment-broken", "attachment-too-large") none either: what
/// can only be read in part is not handed out. Never throws, whatever the bytes.
std::vector<Attachment> attachments_of(const std::string& pdf_bytes, DiagnosticSink&,
                                       const AttachmentBounds& = {});
}  // namespace furnish
