#pragma once

#include <array>
#include <functional>
#include <map>
#include <set>
#include <span>
#include <string>
#include <vector>

#include "output/drawn_pdf.h"
#include "page/frame.h"

namespace furnish {

/// What one element of the structure tree says in words; what it has nothing of is empty.
struct ElementTexts {
  std::string drawn_as;         ///< "Span", as cairo wrote it
  std::string type;             ///< "Strong", as in the file
  std::string alt;              ///< what stands for a figure, or is to be written into a blank
  std::string place;            ///< its name, where links may lead to it
  std::string language;         ///< if it is another than that of the document
  std::string read;             ///< its text as it is read, where it runs from right to left
  bool tick = false;            ///< of a blank: a box to tick, and no line
  int columns = 1;              ///< of a cell
  bool bullets = false;         ///< of a list
  bool number = false;          ///< of a label
  std::array<double, 4> box{};  ///< of a figure: left, bottom, right, top in points of the page
};

struct StructureTexts {
  std::vector<ElementTexts> elements;           ///< in the order of the tree
  std::vector<std::vector<std::string>> links;  ///< where they lead, for each page
};
StructureTexts structure_texts(std::span<const Frame> pages);

/// Elements that are asked for again.
struct KnownElements {
  std::map<std::string, int, std::less<>> places;  ///< where links lead, by names as in the file
  std::set<int> numbers;                           ///< labels of list items that are numbers
};

/// Objects of the elements below one, in order; content and references to annotations left out.
std::vector<int> elements_below(DrawnPdf&, const PdfDict& element);

/// Adds to the structure tree what cairo has no attribute for: Alt and BBox of figures, Scope of
/// table heads, ColSpan of cells, Role and Desc of blanks to fill in, ID of notes (ISO
/// 14289-1, 7.3, 7.5, 7.18.4 and 7.9), ListNumbering of points (ISO 32000-1, 14.8.5.5), ActualText
/// of signs, Lang of what is in another language than the document (7.2), ActualText of what runs
/// from right to left, whose glyphs stand in the file from left to right (ISO 32000-1, 14.9.4). The
/// tree is as cairo made it of the same pages. Throws std::runtime_error if it is not.
KnownElements complete_structure(DrawnPdf&, const StructureTexts&);
}  // namespace furnish
