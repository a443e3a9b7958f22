#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "base/diagnostic.h"
#include "output/pdf.h"
#include "page/fonts.h"
#include "page/frame.h"
#include "page/shaper.h"

namespace furnish::test {

/// The bundled fonts and a shaper over them. Whatever they report fails the test.
class Type {
 public:
  Type();
  std::shared_ptr<const ShapedLine> line(std::string text, double points = 9,
                                         Face face = Face::regular);

  /// In lines at most `width` wide.
  std::vector<std::shared_ptr<const ShapedLine>> lines(std::string text, Length width);

 private:
  DiagnosticSink sink_;
  std::unique_ptr<FontSet> fonts_;
  std::unique_ptr<TextShaper> shaper_;
};

/// Places marks by hand, in millimetres.
class Composer {
 public:
  Composer(Type& type, Frame& frame) : type_(type), frame_(frame) {}
  void text(double x, double y, std::string text, double points = 9, Ink ink = Ink::text);
  void lines(double x, double y, std::string text, double width_mm);
  void rule(double x, double y, double to_x, double weight_mm, Ink ink = Ink::text);
  TagScope tag(Structure role, std::string alt = {}, std::string id = {}) {
    return TagScope(frame_, role, std::move(alt), std::move(id));
  }

 private:
  Type& type_;
  Frame& frame_;
};

/// An A5 page with each kind of mark and of structure: name, table, list, figure with hatching and
/// links, blanks to fill in, a note, and rules that belong to nothing.
Frame sample_page(Type&);
/// Words of the sample page in reading order, one string a text mark.
std::vector<std::string> sample_words();
/// As many marks as a full card has: 69 lines of text, 20 rows, 300 curves.
Frame full_page(Type&);

DocumentInfo sample_info();
Attachment sample_attachment();
/// The sample page on A5 and on A4, with an outline and an attachment.
std::string sample_pdf(Type&);

/// A disc: four curves.
Contour disc(Point centre, Length radius);
Contour box(Rect);
}  // namespace furnish::test
