#include "desk/mark.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/fnv.h"

namespace furnish::desk {
std::string mark_of(std::string_view text) {
  return fmt::format("{:016x}-{:x}", fnv(fnv_basis, text), text.size());
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
