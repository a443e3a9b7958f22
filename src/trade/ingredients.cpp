#include "trade/ingredients.h"

#include <algorithm>
#include <array>
#include <span>
#include <utility>

#include "base/text.h"
#include "trade/phrases.h"

namespace furnish {
namespace {
constexpr std::size_t shortest_beginning = 3;

/// Before these a thing named ends and another begins.
constexpr std::array<std::string_view, 14> between{
    "or",   "with", "any",  "anything", "everything", "all",  "the",
    "most", "some", "both", "products", "containing", "like", "especially"};
/// After these a sentence is about something else.
constexpr std::array<std::string_view, 32> ends{
    "so",     "use",   "uses", "used", "using", "only",  "wash",  "bathe",
    "bathed", "rinse", "try",  "is",   "are",   "was",   "has",   "had",
    "in",     "when",  "if",   "from", "since", "which", "gives", "causes",
    "makes",  "fine",  "ok",   "okay", "safe",  "likes", "take",  "give"};

bool in(std::span<const std::string_view> list, std::string_view word) {
  return std::ranges::find(list, word) != list.end();
}

using Words = std::vector<std::string>;
Words words_of(std::string_view text) {
  Words out;
  for (Clause& clause : read_clauses(plain_letters(text))) {
    for (FreeWord& word : clause) out.push_back(std::move(word.text));
  }
  return out;
}

std::string_view singular(std::string_view word) {
  const bool plural = word.size() > shortest_beginning && word.ends_with('s');
  return plural ? word.substr(0, word.size() - 1) : word;
}

bool same_word(std::string_view unwanted, std::string_view contained) {
  unwanted = singular(unwanted);
  contained = singular(contained);
  if (contained.starts_with(unwanted)) return true;
  return contained.size() >= shortest_beginning && unwanted.starts_with(contained);
}

/// True if the words of `inner` stand one after another in `outer`.
template <typename Same>
bool within(const Words& inner, const Words& outer, Same same) {
  return !inner.empty() && !std::ranges::search(outer, inner, same).empty();
}
}  // namespace

bool names_ingredient(std::string_view product_name, std::string_view unwanted) {
  return within(
      words_of(unwanted), words_of(product_name),
      [](const std::string& own, const std::string& other) { return same_word(other, own); });
}

bool same_ingredient(std::string_view unwanted, std::string_view contained) {
  return names_ingredient(contained, unwanted) ||
         within(words_of(contained), words_of(unwanted), same_word);
}

std::vector<std::string> told_allergies(std::string_view text) {
  std::vector<std::string> out;
  std::string item;
  const auto flush = [&] {
    if (!item.empty()) out.push_back(std::exchange(item, {}));
  };
  /// False where the list is at its end.
  const auto listed = [&](std::span<const FreeWord> words) {
    for (const FreeWord& word : words) {
      if (word.denied || in(ends, word.text)) return false;
      if (in(between, word.text)) {
        flush();
      } else {
        item += (item.empty() ? "" : " ") + word.text;
      }
    }
    flush();
    return true;
  };
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find_first_of(".;:!?()\n", at), text.size());
    bool open = false;
    for (const Clause& clause : read_clauses(text.substr(at, end - at))) {
      std::span<const FreeWord> rest = clause;
      for (std::size_t i = 0; i + 1 < clause.size(); ++i) {
        constexpr std::array<std::string_view, 3> said{"allergic", "allergy", "allergies"};
        if (!in(said, clause[i].text) || clause[i + 1].text != "to") continue;
        open = !clause[i].denied;
        rest = rest.subspan(i + 2);
        break;
      }
      open = open && listed(rest);
      flush();
    }
    at = end + 1;
  }
  return out;
}
}  // namespace furnish
