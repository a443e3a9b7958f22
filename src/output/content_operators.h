#pragma once

#include <cstddef>
#include <string_view>

namespace furnish {

/// Goes from operator to operator of a content stream (ISO 32000-1, 7.8.2), past their operands.
/// libqpdf's token filter does the same, but makes an object of every number: 3 ms for a card.
/// pre: no inline images, which nothing here makes.
class ContentOperators {
 public:
  explicit ContentOperators(std::string_view content) : content_(content) {}

  /// Empty at the end.
  std::string_view next();
  /// Just past the last operator.
  std::size_t position() const { return at_; }

 private:
  std::string_view word();
  void skip_string();
  void skip_hex_string();

  std::string_view content_;
  std::size_t at_ = 0;
};
}  // namespace furnish
