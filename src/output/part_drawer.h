#pragma once

#include <cstddef>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "base/diagnostic.h"
#include "output/pdf.h"
#include "page/frame.h"

namespace furnish {
class SharedType;

/// Where a link of a book's part leads that is to open one of the book's pages: the `n`th, from 0,
/// of those that are no front matter.
std::string book_page(std::size_t n);

/// Pages of a long PDF that were drawn and finished as a PDF of their own, behind a page of the
/// type that they share with other parts.
struct BookPart {
  std::string bytes;
  std::string language;
  /// For each of its pages, that of type too: pages of the book that its links lead to, in their
  /// order; of those that stay in their part none.
  std::vector<std::vector<std::optional<std::size_t>>> leads;
  /// Behind which of its pages, counted from 1, a sheet ends that stands by itself; none: all of it
  /// is one thing.
  std::vector<std::size_t> ends{};
};

/// Draws parts that share their fonts. For one thread, whose faces all the pages are set in.
class PartDrawer {
 public:
  PartDrawer();
  ~PartDrawer();
  PartDrawer(const PartDrawer&) = delete;
  PartDrawer& operator=(const PartDrawer&) = delete;
  /// As to_pdf() makes it. Empty iff an error was reported.
  std::optional<BookPart> draw(std::span<const Frame> pages, const DocumentInfo&,
                               std::span<const Attachment>, DiagnosticSink&);
  /// The page of type alone: its fonts are those of all parts that were drawn.
  std::optional<BookPart> fonts(const DocumentInfo&, DiagnosticSink&) const;

 private:
  std::unique_ptr<SharedType> type_;
};
}  // namespace furnish
