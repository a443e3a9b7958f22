#include "sheet/readability.h"

#include <algorithm>
#include <cctype>

namespace furnish::test {
namespace {
bool is_letter(char c) {
  return std::isalpha(static_cast<unsigned char>(c)) != 0;
}
bool is_digit(char c) {
  return std::isdigit(static_cast<unsigned char>(c)) != 0;
}
bool is_vowel(char c) {
  return std::string_view("aeiouyAEIOUY").find(c) != std::string_view::npos;
}

int syllables(const std::string& word) {
  const auto digits = std::ranges::count_if(word, is_digit);
  int groups = static_cast<int>(digits);
  for (std::size_t i = 0; i < word.size(); ++i) {
    groups += is_vowel(word[i]) && (i == 0 || !is_vowel(word[i - 1]));
  }
  const std::size_t n = word.size();
  const bool ends_in_e = n > 2 && word[n - 1] == 'e' && !is_vowel(word[n - 2]);
  const bool ends_in_le = ends_in_e && word[n - 2] == 'l' && !is_vowel(word[n - 3]);
  const bool ends_in_ed = n > 3 && word.ends_with("ed") && word[n - 3] != 't' &&
                          word[n - 3] != 'd' && !is_vowel(word[n - 3]);
  if ((ends_in_e && !ends_in_le) || ends_in_ed) --groups;
  return std::max(groups, 1);
}
}  // namespace

double flesch_kincaid_grade(const TextCounts& counts) {
  const double words = counts.words;
  return 0.39 * words / counts.sentences + 11.8 * counts.syllables / words - 15.59;
}

std::vector<std::string> sentences(std::string_view text) {
  std::vector<std::string> out;
  std::string one;
  for (std::size_t i = 0; i < text.size(); ++i) {
    one += text[i];
    const bool ends = std::string_view(".!?").find(text[i]) != std::string_view::npos &&
                      (i + 1 == text.size() || text[i + 1] == ' ');
    if (!ends && i + 1 < text.size()) continue;
    const std::size_t first = one.find_first_not_of(' ');
    if (std::ranges::any_of(one, is_letter)) out.push_back(one.substr(first));
    one.clear();
  }
  return out;
}

TextCounts count(std::string_view sentence) {
  TextCounts out{1, 0, 0};
  std::string word;
  const auto end = [&] {
    if (std::ranges::any_of(word, [](char c) { return is_letter(c) || is_digit(c); })) {
      ++out.words;
      out.syllables += syllables(word);
    }
    word.clear();
  };
  for (const char c : sentence) {
    const bool other = static_cast<unsigned char>(c) >= 0x80;  // of a letter of another script
    if (is_letter(c) || is_digit(c) || c == '\'' || other) {
      if (!other) word += c;
    } else {
      end();
    }
  }
  end();
  return out;
}
}  // namespace furnish::test
