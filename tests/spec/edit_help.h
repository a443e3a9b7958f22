#pragma once

#include <algorithm>
#include <string>
#include <string_view>

#include "spec/edit.h"

namespace furnish::test {

/// "alert/0/text": keys and places of elements.
inline EditPath path(std::string_view words) {
  EditPath out;
  while (!words.empty()) {
    const std::size_t end = std::min(words.find('/'), words.size());
    const std::string step(words.substr(0, end));
    if (step.find_first_not_of("0123456789") == std::string::npos) {
      out.emplace_back(std::stoul(step));
    } else {
      out.emplace_back(step);
    }
    words.remove_prefix(std::min(end + 1, words.size()));
  }
  return out;
}

inline EditValue words(std::string text) {
  return {std::move(text)};
}
inline EditValue whole(std::int64_t number) {
  return {number};
}
inline EditValue all_of(std::initializer_list<std::string> texts) {
  EditList out;
  for (const std::string& text : texts) out.push_back({text});
  return {std::move(out)};
}
inline EditValue table_of(std::initializer_list<EditEntry> entries) {
  return {EditTable(entries)};
}
}  // namespace furnish::test
