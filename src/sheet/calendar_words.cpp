#include "sheet/calendar_words.h"

#include <unicode/calendar.h>
#include <unicode/dtfmtsym.h>
#include <unicode/locid.h>

#include <memory>
#include <stdexcept>

namespace furnish {
namespace {
std::string utf8(const icu::UnicodeString& text) {
  std::string out;
  text.toUTF8String(out);
  return out;
}

icu::Locale locale_of(const std::string& language) {
  UErrorCode code = U_ZERO_ERROR;
  icu::Locale locale = icu::Locale::forLanguageTag(language, code);
  const bool unknown = U_FAILURE(code) || std::string_view(locale.getLanguage()).empty();
  return unknown ? icu::Locale::getEnglish() : locale;
}
}  // namespace

CalendarWords calendar_words(const std::string& language) {
  const icu::Locale locale = locale_of(language);
  UErrorCode code = U_ZERO_ERROR;
  const icu::DateFormatSymbols symbols(locale, "gregorian", code);
  const std::unique_ptr<icu::Calendar> calendar(icu::Calendar::createInstance(locale, code));
  CalendarWords out;
  // ICU counts weekdays from 1, Sunday; its arrays have an empty name before it.
  const auto weekdays = [&](icu::DateFormatSymbols::DtWidthType width,
                            std::array<std::string, 7>& names) {
    std::int32_t count = 0;
    const icu::UnicodeString* found =
        symbols.getWeekdays(count, icu::DateFormatSymbols::STANDALONE, width);
    for (std::size_t i = 0; i < names.size() && count == 8; ++i) names[i] = utf8(found[i + 1]);
  };
  weekdays(icu::DateFormatSymbols::ABBREVIATED, out.weekdays);
  weekdays(icu::DateFormatSymbols::NARROW, out.narrow_weekdays);
  std::int32_t count = 0;
  const icu::UnicodeString* months = symbols.getMonths(count, icu::DateFormatSymbols::STANDALONE,
                                                       icu::DateFormatSymbols::ABBREVIATED);
  for (std::size_t i = 0; i < out.months.size() && static_cast<std::int32_t>(i) < count; ++i) {
    out.months[i] = utf8(months[i]);
  }
  const auto first = calendar ? calendar->getFirstDayOfWeek(code) : UCAL_MONDAY;
  if (U_FAILURE(code)) throw std::logic_error("ICU has no calendar for " + language);
  out.first = std::chrono::weekday(static_cast<unsigned>(first) - 1);
  return out;
}
}  // namespace furnish
