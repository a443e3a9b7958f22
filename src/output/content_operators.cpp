#include "output/content_operators.h"

#include <algorithm>
#include <array>

namespace furnish {
namespace {
enum class Sign : unsigned char { regular, space, delimiter };

/// What each byte is (ISO 32000-1, tables 1 and 2).
constexpr auto signs = [] {
  std::array<Sign, 256> out{};
  for (const char c : {'\0', '\t', '\n', '\f', '\r', ' '})
    out[static_cast<unsigned char>(c)] = Sign::space;
  for (const char c : {'(', ')', '<', '>', '[', ']', '{', '}', '/', '%'})
    out[static_cast<unsigned char>(c)] = Sign::delimiter;
  return out;
}();
constexpr Sign sign_of(char c) {
  return signs[static_cast<unsigned char>(c)];
}

/// Neither a number nor one of the three words that are values.
bool is_operator(std::string_view word) {
  const bool number = word.find_first_not_of("+-.0123456789") == std::string_view::npos;
  return !number && word != "true" && word != "false" && word != "null";
}
}  // namespace

/// A string in brackets, in which brackets come in pairs unless a backslash stands before them.
void ContentOperators::pass_string() {
  for (int open = 0; at_ < content_.size(); ++at_) {
    const char c = content_[at_];
    if (c == '\\') ++at_;
    if (c == '(') ++open;
    if (c == ')' && --open == 0) break;
  }
  at_ = std::min(at_ + 1, content_.size());
}

std::string_view ContentOperators::next() {
  const auto end_of_regular = [&](std::size_t from) {
    while (from < content_.size() && sign_of(content_[from]) == Sign::regular) ++from;
    return from;
  };
  const auto past = [&](std::string_view ends) {
    return std::min(content_.find_first_of(ends, at_), content_.size() - 1) + 1;
  };
  while (at_ < content_.size()) {
    const char c = content_[at_];
    switch (sign_of(c)) {
      case Sign::space:
        ++at_;
        break;
      case Sign::regular: {
        const std::size_t begin = at_;
        at_ = end_of_regular(begin);
        const std::string_view word = content_.substr(begin, at_ - begin);
        if (is_operator(word)) return word;
        break;
      }
      case Sign::delimiter:
        if (c == '(') {
          pass_string();
        } else if (c == '/') {
          at_ = end_of_regular(at_ + 1);
        } else if (c == '%') {
          at_ = past("\r\n");
        } else if (c == '<' && content_.substr(at_, 2) != "<<") {
          at_ = past(">");
        } else {
          at_ += c == '<' ? 2 : 1;  // of ">>" the second is passed like the first
        }
        break;
    }
  }
  return {};
}
}  // namespace furnish
