#include "sheet/reader_locale.h"

#include <unicode/dcfmtsym.h>
#include <unicode/dtptngen.h>
#include <unicode/listformatter.h>
#include <unicode/locid.h>
#include <unicode/smpdtfmt.h>
#include <unicode/timezone.h>
#include <unicode/ulocdata.h>

#include <map>
#include <stdexcept>

namespace furnish {
namespace {
using icu::UnicodeString;

/// ICU without its data is a broken installation, not a fault of a person's file.
void require(UErrorCode code) {
  if (U_FAILURE(code)) throw std::runtime_error(std::string("ICU: ") + u_errorName(code));
}

std::string utf8(const UnicodeString& text) {
  std::string out;
  text.toUTF8String(out);
  return out;
}

UDate icu_date(Date day, TimeOfDay time = {}) {
  const auto ms =
      std::chrono::duration_cast<std::chrono::milliseconds>(day.time_since_epoch() + time);
  return static_cast<UDate>(ms.count());
}

bool same_year(Date a, Date b) {
  return std::chrono::year_month_day(a).year() == std::chrono::year_month_day(b).year();
}
}  // namespace

std::optional<Units> usual_units(const std::string& language) {
  UErrorCode code = U_ZERO_ERROR;
  const icu::Locale locale = icu::Locale::forLanguageTag(language, code);
  if (U_FAILURE(code) || std::string_view(locale.getCountry()).empty()) return std::nullopt;
  const UMeasurementSystem system = ulocdata_getMeasurementSystem(locale.getName(), &code);
  require(code);
  // Those who measure in the British way cut hair and weigh dogs in metric units.
  return system == UMS_US ? Units::us : Units::metric;
}

struct ReaderLocale::Formats {
  explicit Formats(const std::string& language)
      : locale(icu::Locale::forLanguageTag(language, code)) {
    if (U_FAILURE(code) || std::string_view(locale.getLanguage()).empty()) {
      code = U_ZERO_ERROR;
      locale = icu::Locale::getEnglish();
    }
    // Measures, blades and phone numbers have these digits, so dates and times do.
    if (std::string_view(locale.getName()).find('@') == std::string_view::npos) {
      locale = icu::Locale((std::string(locale.getName()) + "@numbers=latn").c_str());
    }
    require(code);
    const icu::DecimalFormatSymbols symbols(locale, code);
    require(code);
    decimal = utf8(symbols.getConstSymbol(icu::DecimalFormatSymbols::kDecimalSeparatorSymbol));
    patterns.reset(icu::DateTimePatternGenerator::createInstance(locale, code));
    require(code);
  }

  /// The locale's own form of a skeleton such as "yMMMMd". The calendar is always the Gregorian
  /// one, and times are those of the file: no zone is applied.
  std::string format(const char* skeleton, UDate date) {
    auto& formatter = made[skeleton];
    if (!formatter) {
      const UnicodeString pattern = patterns->getBestPattern(UnicodeString(skeleton), code);
      require(code);
      formatter = std::make_unique<icu::SimpleDateFormat>(pattern, locale, code);
      require(code);
      formatter->adoptTimeZone(icu::TimeZone::getGMT()->clone());
    }
    UnicodeString out;
    return utf8(formatter->format(date, out));
  }

  std::string joined(const std::vector<std::string>& items, UListFormatterType type) {
    const std::unique_ptr<icu::ListFormatter> formatter(
        icu::ListFormatter::createInstance(locale, type, ULISTFMT_WIDTH_WIDE, code));
    require(code);
    std::vector<UnicodeString> texts;
    for (const std::string& item : items) texts.push_back(UnicodeString::fromUTF8(item));
    UnicodeString out;
    formatter->format(texts.data(), static_cast<std::int32_t>(texts.size()), out, code);
    require(code);
    return utf8(out);
  }

  UErrorCode code = U_ZERO_ERROR;
  icu::Locale locale;
  std::string decimal;
  std::unique_ptr<icu::DateTimePatternGenerator> patterns;
  std::map<std::string, std::unique_ptr<icu::SimpleDateFormat>> made;
};

ReaderLocale::ReaderLocale(const std::string& language, Units units)
    : language_(language), units_(units), formats_(std::make_unique<Formats>(language)) {}
ReaderLocale::~ReaderLocale() = default;

const std::string& ReaderLocale::decimal_sign() const {
  return formats_->decimal;
}

std::string ReaderLocale::long_date(Date day) const {
  return formats_->format("yMMMMd", icu_date(day));
}

std::string ReaderLocale::day_and_month(Date day, Date from) const {
  return formats_->format(same_year(day, from) ? "MMMMEEEEd" : "yMMMMEEEEd", icu_date(day));
}

std::string ReaderLocale::short_day(Date day, Date from) const {
  return formats_->format(same_year(day, from) ? "MMMd" : "yMMMd", icu_date(day));
}

std::string ReaderLocale::short_date(Date day) const {
  return formats_->format("yMMMd", icu_date(day));
}

std::string ReaderLocale::time(TimeOfDay time) const {
  return formats_->format("jmm", icu_date(Date{}, time));
}

std::string ReaderLocale::language_name(const std::string& tag) const {
  UErrorCode code = U_ZERO_ERROR;
  const icu::Locale named = icu::Locale::forLanguageTag(tag, code);
  if (U_FAILURE(code)) return tag;
  UnicodeString out;
  return utf8(named.getDisplayLanguage(formats_->locale, out));
}

std::string ReaderLocale::list(const std::vector<std::string>& items) const {
  return formats_->joined(items, ULISTFMT_TYPE_AND);
}

std::string ReaderLocale::either(const std::vector<std::string>& items) const {
  return formats_->joined(items, ULISTFMT_TYPE_OR);
}
}  // namespace furnish
