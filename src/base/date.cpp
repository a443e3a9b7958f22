#include "base/date.h"

#include <fmt/format.h>

#include <utility>

#include "base/calendar_span.h"
#include "base/text.h"

#include <charconv>

namespace furnish {
namespace {
using std::chrono::year_month_day;

std::optional<int> digits(std::string_view s) {
  int n = 0;
  const auto [end, fault] = std::from_chars(s.data(), s.data() + s.size(), n);
  if (fault != std::errc() || end != s.data() + s.size() || s.front() == '-') return std::nullopt;
  return n;
}
}  // namespace

std::optional<Date> make_date(int year, unsigned month, unsigned day) {
  const year_month_day ymd{std::chrono::year(year), std::chrono::month(month),
                           std::chrono::day(day)};
  if (year < 1900 || year > 2200 || !ymd.ok()) return std::nullopt;
  return Date(ymd);
}

std::optional<Date> parse_date(std::string_view iso) {
  if (iso.size() != 10 || iso[4] != '-' || iso[7] != '-') return std::nullopt;
  const auto y = digits(iso.substr(0, 4)), m = digits(iso.substr(5, 2)), d = digits(iso.substr(8));
  if (!y || !m || !d) return std::nullopt;
  return make_date(*y, static_cast<unsigned>(*m), static_cast<unsigned>(*d));
}

std::string to_iso(Date date) {
  const year_month_day ymd(date);
  return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(ymd.year()),
                     static_cast<unsigned>(ymd.month()), static_cast<unsigned>(ymd.day()));
}

std::optional<TimeOfDay> parse_time_of_day(std::string_view written) {
  std::string text = lower_ascii(trimmed(written));
  int after_noon = -1;  // no word for it
  for (const auto& [word, value] : {std::pair<std::string_view, int>{"am", 0}, {"pm", 1}}) {
    if (!text.ends_with(word)) continue;
    after_noon = value;
    text = trimmed(std::string_view(text).substr(0, text.size() - word.size()));
  }
  if (after_noon != -1 && text.find(':') == std::string::npos) text += ":00";  // "11am"
  const std::size_t colon = text.find(':');
  if (colon != 1 && colon != 2) return std::nullopt;
  const std::string_view rest = std::string_view(text).substr(colon + 1);
  const auto hours = digits(std::string_view(text).substr(0, colon));
  const auto minutes = digits(rest.substr(0, 2));
  if (!hours || !minutes || rest.size() < 2 || *minutes > 59) return std::nullopt;
  if (rest.size() != 2 && rest.substr(2) != ":00") return std::nullopt;
  if (after_noon == -1) {
    if (*hours > 23) return std::nullopt;
    return TimeOfDay(*hours * 60 + *minutes);
  }
  if (*hours < 1 || *hours > 12) return std::nullopt;
  return TimeOfDay((*hours % 12 + 12 * after_noon) * 60 + *minutes);
}

Date after(Date from, const CalendarSpan& span) {
  const year_month_day there = year_month_day(from) + std::chrono::months(span.months);
  const Date day =
      there.ok() ? Date(there) : Date(there.year() / there.month() / std::chrono::last);
  return day + span.days;
}

int full_months(Date born, Date day) {
  const year_month_day a(born), b(day);
  const int months = (static_cast<int>(b.year()) - static_cast<int>(a.year())) * 12 +
                     static_cast<int>(static_cast<unsigned>(b.month())) -
                     static_cast<int>(static_cast<unsigned>(a.month()));
  return b.day() < a.day() ? months - 1 : months;
}

int full_years(Date born, Date day) {
  const int months = full_months(born, day);
  return months >= 0 ? months / 12 : (months - 11) / 12;
}
}  // namespace furnish
