#include "spec/offer.h"

#include <fmt/format.h>

#include "spec/toml_text.h"
#include "spec/values.h"

namespace furnish {
namespace {
void take(Diagnostic& fault, std::span<const std::string_view> words) {
  fault.instead.clear();
  for (const std::string_view word : words) fault.instead.push_back(toml_text::quoted(word));
}
}  // namespace

void offer(Diagnostic& fault, const std::string& written, std::string_view remark) {
  if (written.empty()) return;
  fault.hint = fmt::format("write {}{}", written, remark);
  fault.instead = {written};
}
void offer_words(Diagnostic& fault, const std::string& shown, std::string_view meant) {
  if (shown.empty()) return;
  fault.hint = fmt::format("write \"{}\"", shown);
  take(fault, {&meant, 1});
}
void offer_meant(Diagnostic& fault, std::span<const std::string_view> words) {
  fault.hint = fmt::format("did you mean {}?", quoted_list(words));
  take(fault, words);
}
void offer_choice(Diagnostic& fault, std::span<const std::string_view> words) {
  fault.hint = fmt::format("write {}", quoted_list(words));
  take(fault, words);
}
void only_tell(Diagnostic& fault, std::string hint) {
  fault.hint = std::move(hint);
  fault.instead.clear();
}
}  // namespace furnish
