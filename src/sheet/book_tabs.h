#pragma once

#include <cstddef>
#include <string>

#include "page/frame.h"
#include "page/shaper.h"

namespace furnish {

/// A page's tab in the register at the edge of a book, and its number.
struct BookTab {
  std::string letter;      ///< empty: no tab
  std::size_t place = 0;   ///< of the letters that the book has, from 0
  std::size_t places = 1;  ///< how many those are
  std::string number;      ///< as printed: "17", "iv"
  bool right = true;       ///< at the right edge, as on the front of a sheet of paper
};

/// Adds tab and number in the margins: black, with the letter in white, lower for each letter, so
/// that the edge of a closed book shows where each begins.
void add_tab(Frame&, const BookTab&, TextShaper&);
/// "iv" of 4. pre: 0 < n < 4000
std::string roman(std::size_t n);
}  // namespace furnish
