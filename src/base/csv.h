#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace furnish {

/// One value of a line, and where it begins and ends in the text, with its quotes.
struct CsvCell {
  std::string text;
  std::size_t begin = 0, end = 0;
};

/// What is wrong with how a list is written: where the value begins, and where it goes wrong.
struct CsvFault {
  std::size_t begin = 0, at = 0;
  std::string_view message, hint;
};

/// A line of a list; it goes over several lines of the text where its values have ends of lines in
/// quotes.
struct CsvLine {
  std::vector<CsvCell> cells;
  std::size_t begin = 0;
  bool good = true;  ///< else one of the faults lies in it, and its cells are not to be trusted
};

struct CsvList {
  std::vector<CsvLine> lines;  ///< without those of which nothing can be seen
  std::vector<CsvFault> faults;
};

/// A list as RFC 4180 has it, with another separator than the comma where one is given, and with
/// any ends of lines. Wider in two points: blanks may stand around the quotes of a value, and a
/// quote inside a value that does not begin with one is a letter like others (5" tall).
CsvList parse_csv(std::string_view utf8, char separator);

/// Which of comma, semicolon and tab divides the values: the one by which most of the first lines
/// have as many values as the line before; of equals the one that makes more of them.
char csv_separator(std::string_view utf8);
}  // namespace furnish
