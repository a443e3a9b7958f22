#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "base/diagnostic.h"
#include "output/pdf_standard.h"
#include "page/frame.h"

namespace furnish {

/// A line of the outline that readers show beside the pages.
struct OutlineEntry {
  std::string title;
  std::size_t page = 0;   ///< from 0
  std::size_t depth = 0;  ///< 0 at the top; at most one deeper than the entry before
};

/// A file that travels inside the PDF, as the source the page was made from.
struct Attachment {
  std::string name;  ///< a plain file name: "marlow.toml"
  std::string bytes;
  std::string media_type = "application/toml";  ///< registered with IANA
  std::string says;                             ///< what it is, for a person
};

struct PdfExtras {
  std::vector<OutlineEntry> outline;
  std::vector<Attachment> attachments;
  PdfStandard standard = PdfStandard::ua1;
};

/// The pages as one PDF that meets the standard that is asked for. Pages may differ in size. A link leads to
/// its id on the same page, else to the first page that has it. Same input, same bytes, in any
/// locale and time zone. Empty iff an error was reported: no pages, a page that check_page()
/// refuses, a link or an outline entry that leads nowhere, bad info, or a failure of the libraries.
std::optional<std::string> to_pdf(std::span<const Frame> pages, const DocumentInfo& info,
                                  const PdfExtras& extras, DiagnosticSink& sink);
}  // namespace furnish
