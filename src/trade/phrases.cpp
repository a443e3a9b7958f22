#include "trade/phrases.h"

#include <algorithm>
#include <array>
#include <utility>

#include "base/text.h"

namespace furnish {
namespace {
constexpr std::array<std::string_view, 17> negations{
    "no",   "not",  "never",   "without", "avoid",     "avoids", "dont",    "doesnt", "cannot",
    "cant", "wont", "instead", "neither", "forbidden", "banned", "nothing", "skip"};
constexpr std::array<std::string_view, 3> joints{"and", "but", "then"};
constexpr std::array<std::string_view, 5> after_not{"used", "allowed", "tolerated", "wanted",
                                                    "please"};

bool in(std::span<const std::string_view> list, std::string_view word) {
  return std::ranges::find(list, word) != list.end();
}
bool negates(std::string_view word) {
  return in(negations, word);
}

bool letter(char c) {
  const auto u = static_cast<unsigned char>(c);
  return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || u >= 0x80;
}

/// Words and breaks (empty strings), in lower case; apostrophes drop out, hyphens are spaces.
std::vector<std::string> tokens(std::string_view text) {
  std::string low = lower_ascii(text);
  for (const std::string_view mark : {"’", "'"}) {
    for (auto at = low.find(mark); at != std::string::npos; at = low.find(mark)) {
      low.erase(at, mark.size());
    }
  }
  std::vector<std::string> out;
  std::string word;
  const auto flush = [&] {
    if (!word.empty()) out.push_back(std::exchange(word, {}));
  };
  for (const char c : low) {
    if (letter(c)) {
      word += c;
      continue;
    }
    flush();
    if (std::string_view(",;.:()/\n").find(c) != std::string_view::npos) out.emplace_back();
  }
  flush();
  return out;
}

void deny_all(Clause& clause) {
  for (FreeWord& word : clause) word.denied = true;
}

/// "… never", "… not used": takes back the whole clause.
bool ends_denied(const Clause& clause) {
  const std::size_t n = clause.size();
  if (n > 0 && negates(clause[n - 1].text)) return true;
  return n > 1 && clause[n - 2].text == "not" && in(after_not, clause[n - 1].text);
}

void apply_negations(Clause& clause, Clause* before) {
  bool denied = false;
  for (FreeWord& word : clause) {
    word.denied = denied;
    denied = denied || negates(word.text);
  }
  if (!ends_denied(clause)) return;
  const bool alone = std::ranges::all_of(
      clause, [](const FreeWord& w) { return negates(w.text) || in(after_not, w.text); });
  deny_all(alone && before != nullptr ? *before : clause);
}

bool same_word(std::string_view word, std::string_view wanted) {
  if (!word.starts_with(wanted)) return false;
  const std::string_view rest = word.substr(wanted.size());
  return rest.empty() || rest == "s" || rest == "es";
}

std::vector<std::string> words_of(std::string_view phrase) {
  std::vector<std::string> words = tokens(phrase);
  std::erase(words, std::string());
  return words;
}

template <typename Match, typename Accept>
bool find_words(std::span<const Clause> text, const std::vector<std::string>& wanted, Match match,
                Accept accept) {
  if (wanted.empty()) return false;
  for (const Clause& clause : text) {
    for (std::size_t i = 0; i + wanted.size() <= clause.size(); ++i) {
      const bool here = std::ranges::equal(
          std::span(clause).subspan(i, wanted.size()), wanted,
          [&](const FreeWord& w, const std::string& want) { return match(w.text, want); });
      if (here && accept(clause[i + wanted.size() - 1])) return true;
    }
  }
  return false;
}

template <typename Match, typename Accept>
bool find_phrase(std::string_view text, std::string_view phrase, Match match, Accept accept) {
  return find_words(read_clauses(text), words_of(phrase), match, accept);
}

bool stands(const FreeWord& word) {
  return !word.denied;
}
}  // namespace

std::vector<std::string_view> sentences_in(std::string_view text) {
  constexpr std::string_view points = ".!?;";
  std::vector<std::string_view> out;
  std::size_t from = 0;
  for (std::size_t i = 0; i <= text.size(); ++i) {
    const bool over = i == text.size();
    const bool point = !over && points.find(text[i]) != std::string_view::npos;
    if (!over && !(point && (i + 1 == text.size() || text[i + 1] == ' '))) continue;
    if (const std::string_view one = trimmed(text.substr(from, i - from)); !one.empty()) {
      out.push_back(one);
    }
    from = i + 1;
  }
  return out;
}

std::vector<Clause> read_clauses(std::string_view text) {
  std::vector<Clause> out;
  Clause clause;
  const auto close = [&] {
    if (clause.empty()) return;
    apply_negations(clause, out.empty() ? nullptr : &out.back());
    out.push_back(std::exchange(clause, {}));
  };
  for (std::string& token : tokens(text)) {
    if (token.empty() || in(joints, token)) {
      close();
    } else {
      clause.push_back({std::move(token), false});
    }
  }
  close();
  return out;
}

bool affirms(std::string_view text, std::string_view phrase) {
  return find_phrase(text, phrase, same_word, stands);
}

PhraseList::PhraseList(std::span<const std::string_view> phrases) {
  for (const std::string_view phrase : phrases) phrases_.push_back(words_of(phrase));
}

std::optional<std::size_t> PhraseList::first_affirmed(std::string_view text) const {
  const std::vector<Clause> clauses = read_clauses(text);
  for (std::size_t i = 0; i < phrases_.size(); ++i) {
    if (find_words(clauses, phrases_[i], same_word, stands)) return i;
  }
  return std::nullopt;
}

bool denies(std::string_view text, std::string_view phrase) {
  return find_phrase(text, phrase, same_word, [](const FreeWord& w) { return w.denied; });
}
bool mentions(std::string_view text, std::string_view phrase) {
  const auto begins = [](std::string_view word, std::string_view want) {
    return word.starts_with(want);
  };
  return find_phrase(text, phrase, begins, [](const FreeWord&) { return true; });
}
}  // namespace furnish
