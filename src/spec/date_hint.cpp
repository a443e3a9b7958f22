#include "spec/date_hint.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>

#include "base/text.h"
#include "spec/bounds.h"
#include "spec/client_dates.h"

namespace furnish {
namespace {
/// The first of a month that is written in digits: "2024-04", "04/2024".
std::optional<Date> first_of_month(std::string_view written) {
  const std::size_t cut = written.find_first_of("-./");
  if (cut == std::string_view::npos) return std::nullopt;
  std::string_view year = written.substr(0, cut), month = written.substr(cut + 1);
  if (year.size() < month.size()) std::swap(year, month);
  const auto number = [](std::string_view digits, std::size_t most) -> int {
    int out = 0;
    const auto read = std::from_chars(digits.data(), digits.data() + digits.size(), out);
    const bool all = read.ec == std::errc() && read.ptr == digits.data() + digits.size();
    return all && digits.size() <= most ? out : -1;
  };
  if (year.size() != 4 || month.empty()) return std::nullopt;
  const int y = number(year, 4), m = number(month, 2);
  if (y < 0 || m < 0) return std::nullopt;
  const auto out = make_date(y, static_cast<unsigned>(m), 1);
  return out && bounds::day.holds(*out) ? out : std::nullopt;
}
}  // namespace

std::string date_hint_of_numbers(std::string_view value) {
  std::array<std::string, 3> parts;
  std::size_t part = 0;
  for (const char c : value) {
    if (c < '0' || c > '9') {
      ++part;
    } else if (part < parts.size()) {
      parts.at(part) += c;
    }
  }
  if (std::ranges::any_of(parts, [](const std::string& p) { return p.empty() || p.size() > 4; })) {
    return {};
  }
  const auto number = [&](std::size_t i) { return static_cast<unsigned>(std::stoi(parts.at(i))); };
  const auto iso = [&](std::size_t year, std::size_t month, std::size_t day) {
    const auto date = make_date(static_cast<int>(number(year)), number(month), number(day));
    return date ? to_iso(*date) : std::string();
  };
  if (const std::string first = iso(0, 1, 2); !first.empty()) return "write " + first;
  const std::string european = iso(2, 1, 0), american = iso(2, 0, 1);
  if (european.empty() && american.empty()) return {};
  if (european.empty() || american.empty() || european == american) {
    return "write " + (european.empty() ? american : european);
  }
  return fmt::format("write {} with the day first, {} with the month first", european, american);
}

std::string time_hint(const TomlNode& node) {
  std::string said;
  if (const auto* const words = std::get_if<std::string>(&node.value)) {
    said = trimmed(*words);
  } else if (const auto* const hour = std::get_if<std::int64_t>(&node.value)) {
    said = fmt::format("{}", *hour);
  } else if (const auto* const pointed = std::get_if<double>(&node.value)) {
    said = fmt::format("{:.2f}", *pointed);
  }
  const std::size_t cut = std::min(said.find_first_not_of("0123456789"), said.size());
  if (cut == 0) return {};
  if (cut < said.size() && (said[cut] == '.' || said[cut] == 'h')) {
    said[cut] = ':';
  } else {
    said.insert(cut, ":00");
  }
  const auto time = parse_time_of_day(said);
  if (!time) return {};
  return fmt::format("write {:02}:{:02}:00", time->count() / 60, time->count() % 60);
}

std::string date_hint(const TomlNode& node) {
  const auto* const year = std::get_if<std::int64_t>(&node.value);
  const auto* const words = std::get_if<std::string>(&node.value);
  const auto day = [](std::string_view written) -> std::optional<Date> {
    constexpr Date last = bounds::day.high;
    const auto read = loose_date(written, DateOrder::day_first, last);
    for (const DateOrder order : date_orders) {
      if (loose_date(written, order, last) != read) return std::nullopt;
    }
    return read && bounds::day.holds(*read) ? read : std::nullopt;
  };
  if (const auto whole = words == nullptr ? std::nullopt : day(*words)) {
    return fmt::format("write {}", to_iso(*whole));
  }
  const std::string rest = year != nullptr    ? fmt::format("July {}", *year)
                           : words != nullptr ? *words
                                              : std::string();
  const auto month = first_of_month(trimmed(rest));
  const auto guessed = month ? month : day("1 " + rest);
  if (!guessed) return {};
  return fmt::format("write {} or the day itself, if it is known", to_iso(*guessed));
}
}  // namespace furnish
