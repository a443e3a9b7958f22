#pragma once

#include <map>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "output/pdf.h"
#include "output/pdf_objects.h"

namespace furnish {

/// A page that is written: its object, its height in points, at which its top is, and the element
/// that its content begins with, where places are told by elements.
struct PageObject {
  int number = 0;
  double height = 0;
  int element = 0;
};
/// The top of a page, where a link or the outline leads, as PDF writes it.
std::string top_of(const PageObject&);
/// The same by its element.
std::string element_at_top(const PageObject&);

/// Writes the outline, everything in it closed, and gives its number; 0 if there is none.
int put_outline(PdfObjects&, std::span<const OutlineEntry>, std::span<const PageObject> pages);
/// A tree of names to objects, its leaves written (ISO 32000-1, 7.9.6). pre: names differ
std::string name_tree(PdfObjects&, std::vector<std::pair<std::string, int>>);
/// The same by numbers (7.9.7).
std::string number_tree(PdfObjects&, const std::map<int, int>&);
}  // namespace furnish
