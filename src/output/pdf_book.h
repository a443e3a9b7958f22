#pragma once

#include <cstddef>
#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/diagnostic.h"
#include "output/part_drawer.h"
#include "output/pdf.h"
#include "page/frame.h"

namespace furnish {

/// A page without anything to read that stands behind parts of the body until each has a multiple
/// of so many pages, as sides of paper; it is drawn once.
struct BookFiller {
  std::size_t multiple = 2;
  bool last_too = false;  ///< the last part as well
  Frame page;
};
/// What is known of a book only when all its parts came.
struct BookEnd {
  std::span<const OutlineEntry> outline{};  ///< of pages of the body, without fillers
  std::span<const std::string> names{};     ///< of what was carried, in that order; no two alike
  std::optional<BookFiller> filler{};
};

/// A PDF of very many pages, written while they are made: it takes the memory of one part. Parts
/// may differ in language. All share their fonts, which stand in the file once; each part is as
/// to_pdf() makes it, and so is the whole (PDF/UA-1, PDF/A-3A).
class PdfBook {
 public:
  /// Takes the file's next bytes; false if it could not.
  using Take = std::function<bool(std::string_view)>;
  explicit PdfBook(Take);
  ~PdfBook();
  PdfBook(const PdfBook&) = delete;
  PdfBook& operator=(const PdfBook&) = delete;

  enum class Where : std::uint8_t { body, front };
  /// Pages behind those that came before, and what travels with them. Front matter stands before
  /// the body, whenever it is added. False iff an error was reported.
  bool add(std::span<const Frame> pages, const DocumentInfo& part, std::span<const Attachment>,
           Where, DiagnosticSink&);
  /// The same of a part that was drawn elsewhere; its fonts come by take_fonts(), from the one who
  /// drew it, before parts of another.
  bool take(const BookPart&, Where, DiagnosticSink&);
  bool take_fonts(const BookPart&, DiagnosticSink&);
  /// A file that travels with the whole, and has its name when it ends.
  bool carry(const Attachment&, const DocumentInfo& part, DiagnosticSink&);
  /// Pages of the body so far, without fillers.
  std::size_t pages() const;
  /// The end of the file, and what the whole says of itself. Front matter is numbered i, ii, …, the
  /// body from 1. False iff an error was reported.
  bool finish(const DocumentInfo&, const BookEnd&, DiagnosticSink&);

 private:
  class Writer;
  std::unique_ptr<Writer> writer_;
};
}  // namespace furnish
