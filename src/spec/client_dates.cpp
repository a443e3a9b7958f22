#include "spec/client_dates.h"

#include <algorithm>
#include <string>
#include <vector>

#include "base/text.h"

namespace furnish {
namespace {
/// How months begin in the languages of the catalogues, without accents, their number behind;
/// longer ones before shorter. Unicode's CLDR, wide and abbreviated names.
struct MonthWord {
  std::string_view begin;
  int month;
};
constexpr std::array month_words{
    MonthWord{"jan", 1},     MonthWord{"ene", 1},     MonthWord{"feb", 2},
    MonthWord{"fev", 2},     MonthWord{"mar", 3},     MonthWord{"mrz", 3},
    MonthWord{"apr", 4},     MonthWord{"abr", 4},     MonthWord{"avr", 4},
    MonthWord{"may", 5},     MonthWord{"mai", 5},     MonthWord{"juin", 6},
    MonthWord{"juil", 7},    MonthWord{"jun", 6},     MonthWord{"jul", 7},
    MonthWord{"aug", 8},     MonthWord{"ago", 8},     MonthWord{"aou", 8},
    MonthWord{"sep", 9},     MonthWord{"set", 9},     MonthWord{"oct", 10},
    MonthWord{"okt", 10},    MonthWord{"out", 10},    MonthWord{"nov", 11},
    MonthWord{"dec", 12},    MonthWord{"dez", 12},    MonthWord{"dic", 12},
    MonthWord{"يناير", 1},   MonthWord{"فبراير", 2},  MonthWord{"مارس", 3},
    MonthWord{"ابريل", 4},   MonthWord{"مايو", 5},    MonthWord{"يونيو", 6},
    MonthWord{"يوليو", 7},   MonthWord{"اغسطس", 8},   MonthWord{"سبتمبر", 9},
    MonthWord{"اكتوبر", 10}, MonthWord{"نوفمبر", 11}, MonthWord{"ديسمبر", 12}};

/// What may stand between without a meaning of its own.
constexpr std::string_view fillers = "de|do|of|st|nd|rd|th|er|ngay|nam";
constexpr std::string_view month_fillers = "thang|thg";

struct Parts {
  std::vector<std::string> numbers;
  int month = 0;              ///< of a word
  bool month_second = false;  ///< "ngày 24 tháng 11 năm 2019"
  bool points = false;
  bool good = true;
};

/// Digits of Arabic as those of ASCII.
std::string ascii_digits(std::string_view text) {
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto lead = static_cast<unsigned char>(text[i]);
    const auto next = i + 1 < text.size() ? static_cast<unsigned char>(text[i + 1]) : 0U;
    const bool arabic = lead == 0xD9 && next >= 0xA0 && next <= 0xA9;   // U+0660
    const bool eastern = lead == 0xDB && next >= 0xB0 && next <= 0xB9;  // U+06F0
    if (arabic || eastern) {
      out += static_cast<char>('0' + (next & 0x0FU));
      ++i;
    } else {
      out += text[i];
    }
  }
  return out;
}

bool digit(char c) {
  return c >= '0' && c <= '9';
}

std::string_view without_midnight(std::string_view text) {
  for (const std::string_view time : {"00:00:00.000", "00:00:00", "0:00:00", "00:00", "0:00"}) {
    for (const char before : {' ', 't'}) {
      if (text.size() <= time.size() || !text.ends_with(time)) continue;
      if (text[text.size() - time.size() - 1] == before) {
        return text.substr(0, text.size() - time.size() - 1);
      }
    }
  }
  return text;
}

bool stands_in(std::string_view word, std::string_view words) {
  while (!words.empty()) {
    const std::size_t end = std::min(words.find('|'), words.size());
    if (words.substr(0, end) == word) return true;
    words.remove_prefix(std::min(end + 1, words.size()));
  }
  return false;
}

void add_word(const std::string& word, Parts& parts) {
  if (stands_in(word, fillers)) return;
  if (stands_in(word, month_fillers)) {
    parts.month_second = true;
    return;
  }
  const auto found = std::ranges::find_if(
      month_words, [&](const MonthWord& one) { return word.starts_with(one.begin); });
  if (found == month_words.end() || parts.month != 0) {
    parts.good = false;
  } else {
    parts.month = found->month;
  }
}

Parts parts_of(std::string_view written) {
  const std::string plain = ascii_digits(plain_letters(trimmed(written)));
  const std::string_view text = without_midnight(plain);
  Parts out;
  for (std::size_t i = 0; i < text.size();) {
    const std::size_t begin = i;
    if (digit(text[i])) {
      while (i < text.size() && digit(text[i])) ++i;
      out.numbers.emplace_back(text.substr(begin, i - begin));
      continue;
    }
    const auto between = [](char c) {
      return c == ' ' || c == '/' || c == '.' || c == '-' || c == ',';
    };
    if (between(text[i])) {
      out.points = out.points || text[i] == '.';
      ++i;
      continue;
    }
    while (i < text.size() && !digit(text[i]) && !between(text[i])) ++i;
    add_word(std::string(text.substr(begin, i - begin)), out);
  }
  for (const std::string& number : out.numbers) {
    out.good = out.good && (number.size() <= 2 || number.size() == 4);
  }
  return out;
}

std::optional<Date> made(const std::string& year, int month, const std::string& day, Date today) {
  if (day.size() > 2) return std::nullopt;
  const auto in_year = [&](int full) {
    return make_date(full, static_cast<unsigned>(month), static_cast<unsigned>(std::stoi(day)));
  };
  const auto been = [&](const std::optional<Date>& one) { return one && *one <= today; };
  const int number = std::stoi(year);
  if (year.size() == 4) {
    const auto out = in_year(number);
    return been(out) ? out : std::nullopt;
  }
  for (const int century : {2000, 1900}) {
    if (const auto out = in_year(century + number); been(out)) return out;
  }
  return std::nullopt;
}

std::optional<Date> date_of(const Parts& parts, DateOrder order, Date today) {
  if (!parts.good) return std::nullopt;
  const auto& n = parts.numbers;
  if (parts.month != 0) {
    if (n.size() != 2) return std::nullopt;
    const bool year_first = n[0].size() == 4;
    return made(n[year_first ? 0 : 1], parts.month, n[year_first ? 1 : 0], today);
  }
  if (n.size() != 3) return std::nullopt;
  if (n[1].size() > 2) return std::nullopt;
  if (n[0].size() == 4) return made(n[0], std::stoi(n[1]), n[2], today);
  if (parts.month_second || parts.points) return made(n[2], std::stoi(n[1]), n[0], today);
  switch (order) {
    case DateOrder::day_first:
      return made(n[2], std::stoi(n[1]), n[0], today);
    case DateOrder::month_first:
      return made(n[2], std::stoi(n[0]), n[1], today);
    case DateOrder::year_first:
      return n[2].size() > 2 ? std::nullopt : made(n[0], std::stoi(n[1]), n[2], today);
  }
  return std::nullopt;
}
}  // namespace

std::optional<Date> loose_date(std::string_view written, DateOrder order, Date today) {
  return date_of(parts_of(written), order, today);
}

DateColumn date_column(std::span<const std::string_view> cells, Date today) {
  using Days = std::array<std::optional<Date>, date_orders.size()>;
  const auto days = [&](std::string_view cell) {
    const Parts parts = parts_of(cell);
    Days out;
    for (std::size_t i = 0; i < out.size(); ++i) out[i] = date_of(parts, date_orders[i], today);
    return out;
  };
  std::array<bool, date_orders.size()> possible{true, true, true};
  // For each order the first date that it cannot be.
  std::array<std::size_t, date_orders.size()> against{};
  std::vector<std::pair<std::size_t, Days>> dates;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const Days one = days(cells[i]);
    if (std::ranges::none_of(one, [](const auto& day) { return day.has_value(); })) continue;
    dates.emplace_back(i, one);
    for (std::size_t k = 0; k < one.size(); ++k) {
      if (one[k] || !possible[k]) continue;
      possible[k] = false;
      against[k] = i;
    }
  }
  const auto first = std::ranges::find(possible, true);
  if (first == possible.end()) {
    return {std::nullopt, against[0], against[1]};  // by day first, and by month first
  }
  const auto chosen = static_cast<std::size_t>(first - possible.begin());
  for (const auto& [i, one] : dates) {
    for (std::size_t k = 0; k < one.size(); ++k) {
      if (possible[k] && one[k] != one[chosen]) return {std::nullopt, i, i};
    }
  }
  return {date_orders[chosen], 0, 0};
}
}  // namespace furnish
