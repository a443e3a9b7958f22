#pragma once

#include <string>
#include <string_view>

#include "sheet/card_rows.h"
#include "sheet/desk.h"

namespace furnish::test {

inline std::string text_of(const std::vector<TextSpan>& spans) {
  std::string out;
  for (const TextSpan& span : spans) out += span.text;
  return out;
}

/// The row under a label: its text, its points a line each with "* " before what differs, its lines
/// for a hand as "____ label". Empty if the card has no such row.
inline std::string row_of(Desk& table, const Kennel& kennel, std::string_view label) {
  std::string out;
  const SheetInput input = table.input(kennel);
  for (const SheetRow& row : card_rows({input, table.voice()})) {
    if (row.label != label) continue;
    out += text_of(row.text);
    for (const SheetRow::Point& point : row.points) {
      if (!out.empty()) out += '\n';
      out += (point.differs ? "* " : "") + text_of(point.text);
    }
    for (const std::string& hand : row.hand_lines) {
      if (!out.empty()) out += '\n';
      out += "____ " + hand;
    }
  }
  return out;
}
}  // namespace furnish::test
