#include "sheet/book_tabs.h"

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

namespace furnish {
namespace {
// Printers leave about 4 mm at the edges white (common practice, no source): a tab reaches past
// that, the letter stands clear of it, and all of it in the narrowest margin of a sheet, 10 mm.
constexpr Length tab_width = Length::mm(8.4), unprinted = Length::mm(4.3), most_tab = 20_mm,
                 top = 13_mm, number_inset = 10_mm, number_above_edge = Length::mm(4.8);
constexpr double letter_points = 13, least_letter_points = 7, number_points = 9;

std::shared_ptr<const ShapedLine> line(const std::string& text, Face face, double points, Role role,
                                       TextShaper& shaper) {
  return shaper
      .shape({{text, face, role, TypeSize::at_least(points)}}, Length::mm(100), Breaking::never)
      ->lines.front();
}
}  // namespace

void add_tab(Frame& page, const BookTab& tab, TextShaper& shaper) {
  const Size size = page.size;
  if (!tab.letter.empty()) {
    const Length each = std::min(most_tab, (size.height - top * 2) / static_cast<int>(tab.places));
    const Length left = tab.right ? size.width - tab_width : Length{};
    const Rect area{{left, top + each * static_cast<int>(tab.place)}, {tab_width, each}};
    page.marks.emplace_back(FillMark{area, Ink::text});
    const Length room = tab_width - unprinted;
    auto letter = line(tab.letter, Face::bold, letter_points, Role::label, shaper);
    for (double points = letter_points; letter->width() > room && points > least_letter_points;) {
      letter = line(tab.letter, Face::bold, --points, Role::label, shaper);
    }
    const Length from = tab.right ? left : unprinted;
    const Rect ink = letter->ink();
    const Point baseline{from + (room - letter->width()) / 2,
                         area.top() + (each - ink.size.height) / 2 - ink.top()};
    page.marks.emplace_back(TextMark{baseline, letter, Ink::paper, "label"});
  }
  auto number = line(tab.number, Face::semibold, number_points, Role::foot, shaper);
  const Length x = tab.right ? size.width - number_inset - number->width() : number_inset;
  page.marks.emplace_back(
      TextMark{{x, size.height - number_above_edge}, std::move(number), Ink::text, "foot"});
}

std::string roman(std::size_t n) {
  constexpr std::array<std::pair<std::size_t, std::string_view>, 13> signs{{{1000, "m"},
                                                                            {900, "cm"},
                                                                            {500, "d"},
                                                                            {400, "cd"},
                                                                            {100, "c"},
                                                                            {90, "xc"},
                                                                            {50, "l"},
                                                                            {40, "xl"},
                                                                            {10, "x"},
                                                                            {9, "ix"},
                                                                            {5, "v"},
                                                                            {4, "iv"},
                                                                            {1, "i"}}};
  std::string out;
  for (const auto& [worth, sign] : signs) {
    for (; n >= worth; n -= worth) out += sign;
  }
  return out;
}
}  // namespace furnish
