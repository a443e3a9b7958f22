#pragma once

#include <span>
#include <string>
#include <string_view>

#include "base/diagnostic.h"

namespace furnish {

// What to write for what stands at a fault: in its hint for people, and as TOML beside it.

/// "write …" with a remark behind it; `written` is TOML. Nothing to write is no offer.
void offer(Diagnostic&, const std::string& written, std::string_view remark = {});
/// "write \"…\"" of words as they may be shown and as they are meant.
void offer_words(Diagnostic&, const std::string& shown, std::string_view meant);
inline void offer_words(Diagnostic& fault, const std::string& words) {
  offer_words(fault, words, words);
}
/// "did you mean 'a' or 'b'?"
void offer_meant(Diagnostic&, std::span<const std::string_view> words);
inline void offer_meant(Diagnostic& fault, std::string_view word) {
  offer_meant(fault, {&word, 1});
}
/// "write 'a' or 'b'".
void offer_choice(Diagnostic&, std::span<const std::string_view> words);
/// A hint that offers nothing in particular.
void only_tell(Diagnostic&, std::string hint);
}  // namespace furnish
