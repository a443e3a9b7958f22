#include "sheet/reader_locale.h"

#include <unicode/dcfmtsym.h>
#include <unicode/dtptngen.h>
#include <unicode/listformatter.h>
#include <unicode/locid.h>
#include <unicode/smpdtfmt.h>
#include <unicode/timezone.h>
#include <unicode/ulocdata.h>

#include <array>
#include <map>
#include <stdexcept>

#include "sheet/pieces.h"

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

/// Where a language's usual form is another than ICU's: a time that is read out, a date that goes
/// on after a preposition or an article ("el martes 22 de diciembre"). From memory; of native
/// readers.
struct OwnForm {
  std::string_view language, skeleton, pattern;
};
constexpr std::array own_forms{
    OwnForm{"fr", "jmm", "H\u00A0'h'\u00A0mm"},
    OwnForm{"es", "MMMMEEEEd", "EEEE d 'de' MMMM"},
    OwnForm{"es", "yMMMMEEEEd", "EEEE d 'de' MMMM 'de' y"},
    OwnForm{"vi", "yMMMMd", "d MMMM 'năm' y"},
    OwnForm{"vi", "MMMMEEEEd", "EEEE, 'ngày' d MMMM"},
    OwnForm{"vi", "yMMMMEEEEd", "EEEE, 'ngày' d MMMM 'năm' y"},
};

/// What the first of a month has after its number: "1er décembre", "1º de setembro"; else empty.
std::string_view first_of_month(const icu::Locale& locale) {
  const std::string_view language(locale.getLanguage()), country(locale.getCountry());
  if (language == "fr") return "er";
  return language == "pt" && country != "PT" ? "º" : "";
}

/// A pattern with `mark` after its day.
UnicodeString marked(const UnicodeString& pattern, std::string_view mark) {
  UnicodeString out;
  bool quoted = false, done = false;
  for (std::int32_t i = 0; i < pattern.length(); ++i) {
    quoted ^= pattern[i] == u'\'';
    out += pattern[i];
    if (quoted || done || pattern[i] != u'd') continue;
    done = true;
    out += UnicodeString::fromUTF8("'" + std::string(mark) + "'");
  }
  return out;
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
  std::string format(const char* skeleton, Date day, TimeOfDay time = {}) {
    const UDate date = icu_date(day, time);
    const std::string_view mark = std::chrono::year_month_day(day).day() == std::chrono::day(1)
                                      ? first_of_month(locale)
                                      : std::string_view();
    auto& formatter = made[std::string(skeleton) + std::string(mark)];
    if (!formatter) {
      UnicodeString pattern = pattern_of(skeleton);
      if (!mark.empty()) pattern = marked(pattern, mark);
      formatter = std::make_unique<icu::SimpleDateFormat>(pattern, locale, code);
      require(code);
      formatter->adoptTimeZone(icu::TimeZone::getGMT()->clone());
    }
    UnicodeString out;
    return utf8(formatter->format(date, out));
  }

  UnicodeString pattern_of(const char* skeleton) {
    for (const OwnForm& form : own_forms) {
      if (form.language == locale.getLanguage() && form.skeleton == skeleton) {
        return UnicodeString::fromUTF8(std::string(form.pattern));
      }
    }
    UnicodeString out = patterns->getBestPattern(UnicodeString(skeleton), code);
    require(code);
    // An ordinal's full stop ends no sentence: "13. Okt." stays on one line, as "13 Oct" does.
    return out.findAndReplace(u"d. ", u"d.\u00A0");
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
  return formats_->format("yMMMMd", day);
}

std::string ReaderLocale::day_and_month(Date day, Date from) const {
  return formats_->format(same_year(day, from) ? "MMMMEEEEd" : "yMMMMEEEEd", day);
}

std::string ReaderLocale::short_day(Date day, Date from) const {
  return formats_->format(same_year(day, from) ? "MMMd" : "yMMMd", day);
}

std::string ReaderLocale::short_date(Date day) const {
  return formats_->format("yMMMd", day);
}

std::string ReaderLocale::weekday_and_day(Date day) const {
  return formats_->format("EEEd", day);
}

std::string ReaderLocale::time(TimeOfDay time) const {
  // Its "AM" goes with it wherever a line ends.
  return without_breaks(formats_->format("jmm", Date{}, time));
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
