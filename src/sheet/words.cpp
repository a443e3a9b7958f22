#include "sheet/words.h"

#include <unicode/locid.h>
#include <unicode/msgfmt.h>

#include <stdexcept>

namespace furnish {

struct Words::Locale {
  icu::Locale locale;
};

Words::Words(const std::string& language)
    : locale_(std::make_unique<Locale>(Locale{icu::Locale(language.c_str())})) {}
Words::~Words() = default;

std::string Words::say(Phrase phrase, const std::vector<WordArgument>& arguments) const {
  const std::string_view pattern = english(phrase);
  if (pattern.find('{') == std::string_view::npos) return std::string(pattern);
  UErrorCode code = U_ZERO_ERROR;
  const icu::MessageFormat format(
      icu::UnicodeString::fromUTF8({pattern.data(), static_cast<std::int32_t>(pattern.size())}),
      locale_->locale, code);
  std::vector<icu::Formattable> values;
  for (const WordArgument& argument : arguments) {
    if (const auto* text = std::get_if<std::string>(&argument)) {
      values.emplace_back(icu::UnicodeString::fromUTF8(*text));
    } else {
      values.emplace_back(static_cast<std::int32_t>(std::get<int>(argument)));
    }
  }
  icu::UnicodeString out;
  icu::FieldPosition ignored;
  format.format(values.data(), static_cast<std::int32_t>(values.size()), out, ignored, code);
  // A pattern that ICU refuses is a fault of our own table; the tests say every phrase once.
  if (U_FAILURE(code)) throw std::logic_error("phrase " + std::string(pattern));
  std::string text;
  out.toUTF8String(text);
  return text;
}
}  // namespace furnish
