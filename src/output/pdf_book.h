#pragma once

#include <cstddef>
#include <cstdint>
#include <functional>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/diagnostic.h"
#include "output/pdf.h"
#include "page/frame.h"

namespace furnish {

/// Where a link of a book's part leads that is to open one of the book's pages: the `n`th, from 0,
/// of those that are no front matter.
std::string book_page(std::size_t n);

/// A PDF of very many pages, written while they are made: it takes the memory of one part. Parts
/// may differ in language. All share their fonts, which stand in the file once; each part is as
/// to_pdf() makes it, and so is the whole, of the same standard.
class PdfBook {
 public:
  /// Takes the file's next bytes; false if it could not.
  using Take = std::function<bool(std::string_view)>;
  explicit PdfBook(Take, PdfStandard = PdfStandard::ua1);
  ~PdfBook();
  PdfBook(const PdfBook&) = delete;
  PdfBook& operator=(const PdfBook&) = delete;

  enum class Where : std::uint8_t { body, front };
  /// Pages behind those that came before, and what travels with them. Front matter stands before
  /// the body, whenever it is added. False iff an error was reported.
  bool add(std::span<const Frame> pages, const DocumentInfo& part, std::span<const Attachment>,
           Where, DiagnosticSink&);
  /// Pages of the body so far.
  std::size_t pages() const;
  /// The end of the file: what the whole says of itself, and the outline, whose pages are the
  /// body's. Front matter is numbered i, ii, …, the body from 1. False iff an error was reported.
  bool finish(const DocumentInfo&, std::span<const OutlineEntry>, DiagnosticSink&);

 private:
  class Writer;
  std::unique_ptr<Writer> writer_;
};
}  // namespace furnish
