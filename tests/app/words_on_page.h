#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace furnish::test {

/// A word as poppler places it, in points from the top left.
struct PlacedWord {
  std::string text;
  double left, top, right, bottom;
};
struct PlacedPage {
  double width = 0, height = 0;
  std::vector<PlacedWord> words;
};

/// From the output of `pdftotext -bbox-layout`.
std::vector<PlacedPage> placed_pages(const std::string& xml);

/// "word: what is wrong" for each word that is off the page, in the `free_top` points at its top,
/// or over another word. Poppler's boxes are as high as the font's ascent and descent (1.024 and
/// 0.4 em for ours), so those of close lines meet; what counts is the part from the baseline up to
/// the top of capitals (0.66 em), and half a point of it. Arabic words, whose family is another,
/// are passed over: the frame's own ink is held to the page in tests of the sheets.
std::vector<std::string> misplaced(const PlacedPage&, double free_top);
}  // namespace furnish::test
