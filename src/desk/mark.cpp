#include "desk/mark.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>

namespace furnish::desk {
std::string mark_of(std::string_view text) {
  std::uint64_t hash = 14695981039346656037ULL;
  for (const char c : text) {
    hash ^= static_cast<unsigned char>(c);
    hash *= 1099511628211ULL;
  }
  return fmt::format("{:016x}-{:x}", hash, text.size());
}

std::string GivenTexts::give(const std::string& text) {
  std::string mark = mark_of(text);
  const auto known = std::ranges::find(texts_, mark, [](const auto& one) { return one.first; });
  if (known != texts_.end()) texts_.erase(known);
  texts_.emplace_back(mark, text);
  if (texts_.size() > most) texts_.pop_front();
  return mark;
}

const std::string* GivenTexts::find(std::string_view mark) const {
  const auto known = std::ranges::find(texts_, mark, [](const auto& one) { return one.first; });
  return known == texts_.end() ? nullptr : &known->second;
}
}  // namespace furnish::desk
