#include "page/direction.h"

#include <algorithm>
#include <array>

#include "base/text.h"

namespace furnish {
namespace {
constexpr std::array<std::string_view, 12> languages{"ar", "arc", "ckb", "dv", "fa", "he",
                                                     "ks", "ps",  "sd",  "ug", "ur", "yi"};
constexpr std::array<std::string_view, 5> scripts{"arab", "hebr", "nkoo", "syrc", "thaa"};
constexpr std::size_t script_letters = 4;

template <typename List>
bool in(const List& list, std::string_view word) {
  return std::ranges::find(list, word) != list.end();
}
}  // namespace

bool right_to_left(std::string_view tag) {
  const std::string lower = lower_ascii(tag);
  const std::string_view all(lower);
  const std::string_view language = all.substr(0, all.find('-'));
  std::string_view rest = all.substr(std::min(all.size(), language.size() + 1));
  const std::string_view script = rest.substr(0, rest.find('-'));
  const bool has_script = script.size() == script_letters &&
                          std::ranges::all_of(script, [](char c) { return c >= 'a' && c <= 'z'; });
  return has_script ? in(scripts, script) : in(languages, language);
}
}  // namespace furnish
