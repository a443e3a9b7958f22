#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

namespace furnish {

/// An operator that makes a path (ISO 32000-1, table 59), with 'r' for "re", and its operands in
/// points; "v" and "y" are read as the "c" that they stand for.
struct Step {
  char op;
  std::array<double, 6> at{};
  double x() const { return at[ends_at()]; }
  double y() const { return at[ends_at() + 1]; }

 private:
  std::size_t ends_at() const { return op == 'c' ? 4U : op == 'v' || op == 'y' ? 2U : 0U; }
};
using Path = std::vector<Step>;
/// How many operands an operator has.
std::size_t operands_of(char op);

/// An operator that makes no path, with its operands, and the path that was made before it.
struct ContentItem {
  Path path;
  std::string_view word, all;  ///< of the content
  double width = 1;            ///< of the line with which it would be drawn
  bool dashed = false, butt = true;

  bool paints() const;   ///< fills or strokes its path
  bool changes() const;  ///< only says in what colour, or with what line, is drawn from here on
};
/// All of a page's content, which is to outlive them; the last has no word.
std::vector<ContentItem> content_items(std::string_view content);

constexpr double tenths = 10, hundredths = 100;
/// A number as short as it can be in parts of one.
void append(std::string& out, double number, double parts);
/// Each on a line of its own; where there are curves, or it may be coarse, in tenths of a point,
/// else in hundredths.
void append(std::string& out, const Path&, bool coarse = false);
bool has_curves(const Path&);
}  // namespace furnish
