#include "output/content_operators.h"

#include <qpdf/BufferInputSource.hh>

#include <string>

namespace furnish {
namespace {
constexpr const char* name = "content";  // in messages of the library's, which nobody sees
}

ContentOperators::ContentOperators(std::string_view content)
    : input_(std::make_shared<BufferInputSource>(name, std::string(content))) {
  tokenizer_.allowEOF();
}

std::string_view ContentOperators::next() {
  constexpr bool bad_too = true;  // what is no token is passed over like an operand
  do {
    token_ = tokenizer_.readToken(input_, name, bad_too);
    if (token_.getType() == QPDFTokenizer::tt_eof) return {};
  } while (token_.getType() != QPDFTokenizer::tt_word);
  return token_.getRawValue();
}

std::size_t ContentOperators::position() const {
  return static_cast<std::size_t>(input_->tell());
}
}  // namespace furnish
