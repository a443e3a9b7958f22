#include "output/content_operators.h"

#include <algorithm>

namespace furnish {
namespace {
constexpr std::string_view word_ends("\0\t\n\f\r ()<>[]{}/%", 16);

bool is_operator(std::string_view word) {
  const char c = word.front();
  return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || c == '\'' || c == '"';
}
}  // namespace

std::string_view ContentOperators::next() {
  while (at_ < content_.size()) {
    switch (content_[at_]) {
      case '(':
        skip_string();
        break;
      case '<':
        skip_hex_string();
        break;
      case '/':
        ++at_;
        word();
        break;
      case '%':
        at_ = std::min(content_.find_first_of("\r\n", at_), content_.size());
        break;
      default:
        if (word_ends.find(content_[at_]) != std::string_view::npos) {
          ++at_;
        } else if (const std::string_view found = word(); is_operator(found)) {
          return found;
        }
    }
  }
  return {};
}

std::string_view ContentOperators::word() {
  const std::size_t begin = at_;
  at_ = std::min(content_.find_first_of(word_ends, at_), content_.size());
  return content_.substr(begin, at_ - begin);
}

void ContentOperators::skip_string() {
  int depth = 0;
  for (; at_ < content_.size(); ++at_) {
    const char c = content_[at_];
    if (c == '\\') {
      ++at_;
    } else if (c == '(') {
      ++depth;
    } else if (c == ')' && --depth == 0) {
      break;
    }
  }
  at_ = std::min(at_ + 1, content_.size());
}

void ContentOperators::skip_hex_string() {
  const bool dictionary = content_.substr(at_, 2) == "<<";
  const std::size_t end = dictionary ? at_ + 1 : std::min(content_.find('>', at_), content_.size());
  at_ = std::min(end + 1, content_.size());
}
}  // namespace furnish
