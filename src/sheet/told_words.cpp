#include "sheet/told_words.h"

#include <algorithm>
#include <array>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include "base/text.h"
#include "sheet/words.h"

namespace furnish {
namespace {
using WordList = std::vector<std::string>;

/// Signs beyond ASCII that stand between words: quotes, dashes, a hard space, Arabic points.
constexpr std::array<std::string_view, 10> unspoken_signs{"\u201C", "\u201D", "\u201E", "\u00AB",
                                                          "\u00BB", "\u2013", "\u2014", "\u2026",
                                                          "\u00A0", "\u202F"};
constexpr std::array<std::string_view, 5> other_points{"\u060C", "\u061B", "\u061F", "\u00BF",
                                                       "\u00A1"};

void put_for_all(std::string& text, std::string_view what, std::string_view by) {
  for (std::size_t at = 0; (at = text.find(what, at)) != std::string::npos; at += by.size()) {
    text.replace(at, what.size(), by);
  }
}

bool part_of_word(char c) {
  const auto code = static_cast<unsigned char>(c);
  return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '\'' || code >= 0x80U;
}

/// The words of each stretch between points and commas, in lower case.
std::vector<WordList> told_clauses(std::string_view text) {
  std::string plain = lower_ascii(text);
  put_for_all(plain, "\u2019", "'");
  for (const std::string_view sign : unspoken_signs) put_for_all(plain, sign, " ");
  for (const std::string_view point : other_points) put_for_all(plain, point, ",");
  std::vector<WordList> out(1);
  std::string word;
  for (const char c : plain + ",") {
    if (part_of_word(c)) {
      word += c;
      continue;
    }
    if (!word.empty()) out.back().push_back(uncapitalised(std::exchange(word, {})));
    if (std::string_view(".,;:!?").find(c) != std::string_view::npos) out.emplace_back();
  }
  return out;
}

/// "a bit|never": each entry's words.
std::vector<WordList> listed_words(const std::string& list) {
  std::vector<WordList> out;
  for (std::size_t at = 0; at < list.size();) {
    const std::size_t end = std::min(list.find('|', at), list.size());
    WordList words;
    for (std::size_t from = at; from < end;) {
      const std::size_t to = std::min(list.find(' ', from), end);
      if (to > from) words.push_back(list.substr(from, to - from));
      from = to + 1;
    }
    if (!words.empty()) out.push_back(std::move(words));
    at = end + 1;
  }
  return out;
}

bool fits_word(const std::string& said, std::string_view wanted) {
  if (!wanted.ends_with('*')) return said == wanted;
  return said.starts_with(wanted.substr(0, wanted.size() - 1));
}

/// Do an entry's words stand there, the first of them at `at`?
bool stands_at(const WordList& words, std::ptrdiff_t at, const WordList& entry) {
  const auto size = static_cast<std::ptrdiff_t>(entry.size());
  if (at < 0 || at + size > static_cast<std::ptrdiff_t>(words.size())) return false;
  return std::equal(entry.begin(), entry.end(), words.begin() + at,
                    [](const auto& a, const auto& b) { return fits_word(b, a); });
}

/// Does what takes a word back stand right before it or after it, or end with it ("a bit")?
bool not_meant(const WordList& words, std::ptrdiff_t first, std::ptrdiff_t last,
               const std::vector<WordList>& not_so) {
  return std::ranges::any_of(not_so, [&](const WordList& entry) {
    const auto size = static_cast<std::ptrdiff_t>(entry.size());
    return stands_at(words, first - size, entry) || stands_at(words, last + 1, entry) ||
           stands_at(words, last + 1 - size, entry);
  });
}

bool any_told(std::string_view text, const std::string& list, const std::string& takes_back) {
  const std::vector<WordList> wanted = listed_words(list), not_so = listed_words(takes_back);
  for (const WordList& words : told_clauses(text)) {
    for (std::ptrdiff_t i = 0; i < static_cast<std::ptrdiff_t>(words.size()); ++i) {
      for (const WordList& entry : wanted) {
        const auto last = i + static_cast<std::ptrdiff_t>(entry.size()) - 1;
        if (stands_at(words, i, entry) && !not_meant(words, i, last, not_so)) return true;
      }
    }
  }
  return false;
}

bool of_bite(const FreeText& text, const Words& words) {
  return tells_of_bite(text.value, words) ||
         std::ranges::any_of(
             text.others, [&](const FreeText::In& one) { return tells_of_bite(one.text, words); });
}

bool tells_itself(const Pet& pet, const Words& words) {
  return std::ranges::any_of(pet.alerts, [&](const Alert& one) {
    return of_bite(one.text, words) || of_bite(one.action, words);
  });
}

/// The first text of a visit that tells of one; null if none does.
const FreeText* telling_of_bite(const Visit& visit, const Words& words) {
  std::vector<const FreeText*> texts{&visit.came_in.behaviour, &visit.not_done};
  for (const Finding& one : visit.findings) texts.push_back(&one.what);
  const auto found =
      std::ranges::find_if(texts, [&](const FreeText* text) { return of_bite(*text, words); });
  return found == texts.end() ? nullptr : *found;
}
}  // namespace

bool tells_of_bite(std::string_view text, const Words& words) {
  return any_told(text, words.term("desk", "bite-words"), words.term("desk", "bite-not"));
}

std::optional<ToldBite> untold_bite(const Pet& pet, std::span<const Visit> visits,
                                    const Words& words, Date until) {
  if (tells_itself(pet, words)) return std::nullopt;
  const Visit* newest = nullptr;
  const FreeText* said = nullptr;
  for (const Visit& one : visits) {
    if (one.date.value > until) continue;
    const auto day = [](const Visit& visit) { return std::tuple(visit.date.value, visit.number); };
    if (newest != nullptr && day(one) <= day(*newest)) continue;
    const FreeText* const text = telling_of_bite(one, words);
    if (text == nullptr) continue;
    newest = &one;
    said = text;
  }
  if (said == nullptr) return std::nullopt;
  return ToldBite{*newest, *said};
}

bool asks_for_vet(std::string_view text, const Words& words) {
  return any_told(text, words.term("desk", "vet-words"), words.term("desk", "vet-not"));
}
}  // namespace furnish
