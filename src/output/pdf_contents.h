#pragma once

#include <map>
#include <string>
#include <vector>

#include "output/pdf_part.h"

namespace furnish {
struct SharedShape;

/// Writes what pages of a long PDF's parts draw, as compactly as it can be.
class PdfContents {
 public:
  explicit PdfContents(PdfObjects& out) : out_(out) {}
  /// Of pages of a part; what is drawn more than once is an object of its own, which their
  /// resources name. The pages, once copied, have them.
  void put(QPDF&, const std::vector<QPDFObjectHandle>& pages, PdfPart&);

 private:
  std::vector<QPDFObjectHandle> put_shapes(QPDF&, const std::vector<SharedShape>&, PdfPart&);
  int number_of(const SharedShape&);

  PdfObjects& out_;
  std::map<std::string, int> of_many_;  ///< shapes that all parts share, by their content
};
}  // namespace furnish
