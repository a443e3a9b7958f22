#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace furnish::test {

struct TextCounts {
  int sentences = 0, words = 0, syllables = 0;
  TextCounts& operator+=(const TextCounts& other) {
    sentences += other.sentences;
    words += other.words;
    syllables += other.syllables;
    return *this;
  }
};

/// 0.39 words/sentences + 11.8 syllables/words - 15.59 (Kincaid and others, 1975).
double flesch_kincaid_grade(const TextCounts&);
/// Cut after . ! and ? that a space or the end follows; a piece without a letter is none.
std::vector<std::string> sentences(std::string_view text);
/// English words are runs of letters, digits and apostrophes. Syllables are groups of vowels, less
/// a silent e at the end, at least one a word; a number has one for each digit. Counters differ.
TextCounts count(std::string_view sentence);
}  // namespace furnish::test
