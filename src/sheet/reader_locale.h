#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/date.h"
#include "base/measures.h"

namespace furnish {

/// The units of the region that a language names ("es-US"); empty if it names none.
std::optional<Units> usual_units(const std::string& language);

/// How one reader writes dates, times, numbers and lists (ICU's data). For use by one thread.
class ReaderLocale {
 public:
  /// `language` is BCP 47, such as "en-GB"; one that ICU does not know falls back to English.
  ReaderLocale(const std::string& language, Units units);
  ~ReaderLocale();
  ReaderLocale(const ReaderLocale&) = delete;
  ReaderLocale& operator=(const ReaderLocale&) = delete;

  const std::string& language() const { return language_; }
  Units units() const { return units_; }
  /// Between whole numbers and their parts: "." or ",".
  const std::string& decimal_sign() const;
  /// "24 November 2026"
  std::string long_date(Date) const;
  /// "Tuesday 19 January"; the year is added if it is not that of `from`.
  std::string day_and_month(Date, Date from) const;
  /// "24 Nov 2026", for the axis of a chart.
  std::string short_date(Date) const;
  /// "24 Nov"; the year is added if it is not that of `from`.
  std::string short_day(Date, Date from) const;
  /// "Tue 24", for the head of a column.
  std::string weekday_and_day(Date) const;
  /// "11:45" or "11:45 AM"
  std::string time(TimeOfDay) const;
  /// "English" for "en-GB", as it stands in a sentence.
  std::string language_name(const std::string& tag) const;
  /// "a, b and c"; "a, b or c".
  std::string list(const std::vector<std::string>&) const;
  std::string either(const std::vector<std::string>&) const;

 private:
  struct Formats;
  std::string language_;
  Units units_;
  std::unique_ptr<Formats> formats_;
};
}  // namespace furnish
