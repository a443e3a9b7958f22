#pragma once

#include <qpdf/InputSource.hh>
#include <qpdf/QPDFTokenizer.hh>

#include <cstddef>
#include <memory>
#include <string_view>

namespace furnish {

/// Goes from operator to operator of a content stream (ISO 32000-1, 7.8.2), past their operands, by
/// libqpdf's tokenizer. Its parser and its token filters do the same, but make an object of every
/// number, and take eight times as long.
/// pre: no inline images, which nothing here makes.
class ContentOperators {
 public:
  explicit ContentOperators(std::string_view content);

  /// Good until the next call; empty at the end.
  std::string_view next();
  /// Just past the last operator.
  std::size_t position() const;

 private:
  QPDFTokenizer tokenizer_;
  QPDFTokenizer::Token token_;
  std::shared_ptr<InputSource> input_;
};
}  // namespace furnish
