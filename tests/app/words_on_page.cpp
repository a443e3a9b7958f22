#include "app/words_on_page.h"

#include <algorithm>
#include <regex>

namespace furnish::test {

std::vector<PlacedPage> placed_pages(const std::string& xml) {
  static const std::regex piece(
      R"re(<page width="([0-9.]+)" height="([0-9.]+)">|<word xMin="([-0-9.]+)" yMin="([-0-9.]+)" xMax="([-0-9.]+)" yMax="([-0-9.]+)">([^<]*)</word>)re");
  std::vector<PlacedPage> pages;
  for (std::sregex_iterator it(xml.begin(), xml.end(), piece), end; it != end; ++it) {
    const auto number = [&](std::size_t group) { return std::stod((*it)[group].str()); };
    if ((*it)[1].matched) {
      pages.push_back({number(1), number(2), {}});
    } else if (!pages.empty()) {
      pages.back().words.push_back({(*it)[7], number(3), number(4), number(5), number(6)});
    }
  }
  return pages;
}

namespace {
double baseline(const PlacedWord& word) {
  return word.bottom - (word.bottom - word.top) * 0.4 / 1.424;
}
double capitals_top(const PlacedWord& word) {
  return word.top + (word.bottom - word.top) * (1.024 - 0.66) / 1.424;
}
}  // namespace

namespace {
/// Set in a family whose ascent is higher than ours; the frame's own ink is looked at elsewhere.
bool is_arabic(const std::string& word) {
  return std::ranges::any_of(word, [](char c) {
    const auto byte = static_cast<unsigned char>(c);
    return byte >= 0xD8 && byte <= 0xDB;  // U+0600 to U+06FF
  });
}
}  // namespace

std::vector<std::string> misplaced(const PlacedPage& page, double free_top) {
  std::vector<std::string> out;
  const auto& words = page.words;
  for (std::size_t i = 0; i < words.size(); ++i) {
    const PlacedWord& a = words[i];
    if (is_arabic(a.text)) continue;
    if (a.left < 0 || a.top < 0 || a.right > page.width || a.bottom > page.height) {
      out.push_back(a.text + ": off the page");
    }
    if (capitals_top(a) < free_top) out.push_back(a.text + ": where the clip is");
    for (std::size_t j = 0; j < i; ++j) {
      const PlacedWord& b = words[j];
      if (is_arabic(b.text)) continue;
      const double wide = std::min(a.right, b.right) - std::max(a.left, b.left),
                   high = std::min(baseline(a), baseline(b)) -
                          std::max(capitals_top(a), capitals_top(b));
      if (wide > 0.5 && high > 0.5) out.push_back(a.text + ": over " + b.text);
    }
  }
  return out;
}
}  // namespace furnish::test
