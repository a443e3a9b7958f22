#pragma once

#include <array>
#include <span>
#include <string_view>

namespace furnish {

/// A bundled family for letters that the main one lacks; opened when the first of them comes.
struct ScriptFamily {
  std::string_view family;
  std::span<const char* const> files;
  bool (*has)(char32_t);
  char32_t letter;  ///< one that it has
};
/// Unicode's blocks of Arabic letters.
inline bool is_arabic(char32_t c) {
  return (c >= 0x600 && c <= 0x6FF) || (c >= 0x750 && c <= 0x77F) || (c >= 0x8A0 && c <= 0x8FF) ||
         (c >= 0xFB50 && c <= 0xFDFF) || (c >= 0xFE70 && c <= 0xFEFE);
}
inline constexpr std::array arabic_files{"Vazirmatn-Regular.ttf", "Vazirmatn-SemiBold.ttf",
                                         "Vazirmatn-Bold.ttf"};
inline constexpr std::array script_families{
    ScriptFamily{"Vazirmatn", arabic_files, is_arabic, U'\u0627'}};
}  // namespace furnish
