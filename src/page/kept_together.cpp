#include "page/kept_together.h"

#include <glib.h>

#include <string_view>

namespace furnish {
namespace {
bool one_of(char32_t c, std::u32string_view all) {
  return all.find(c) != std::u32string_view::npos;
}

/// A digit of any script, or a fraction.
bool ends_number(char32_t c) {
  if (c < 0x80) return c >= '0' && c <= '9';
  const GUnicodeType type = g_unichar_type(c);
  return type == G_UNICODE_DECIMAL_NUMBER || type == G_UNICODE_OTHER_NUMBER;
}
}  // namespace

bool kept_together(char32_t before, char32_t after, Keeping kept) {
  if (kept == Keeping::nothing) return false;
  if (one_of(before, U"+×±−≈~<>≤≥#№«·")) return true;
  if (one_of(after, U"+×±≈<>≤≥:;!?»%°")) return true;
  if (ends_number(before) && (g_unichar_isalpha(after) || ends_number(after))) return true;
  return before == U':' && kept == Keeping::labels;
}
}  // namespace furnish
