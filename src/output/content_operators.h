#pragma once

#include <cstddef>
#include <string_view>

namespace furnish {

/// Goes from operator to operator of a content stream (ISO 32000-1, 7.2.3 and 7.8.2), past their
/// operands, which it only steps over.
/// pre: no inline images, which nothing here makes.
class ContentOperators {
 public:
  /// Keeps the view.
  explicit ContentOperators(std::string_view content) : content_(content) {}

  /// Part of the content; empty at its end.
  std::string_view next();
  /// Just past the last operator.
  std::size_t position() const { return at_; }

 private:
  void pass_string();
  std::string_view content_;
  std::size_t at_ = 0;
};
}  // namespace furnish
