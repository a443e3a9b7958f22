#include "spec/date_hint.h"

#include <fmt/format.h>

#include "spec/bounds.h"
#include "spec/client_dates.h"

namespace furnish {
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
  const auto guessed = day("1 " + rest);
  if (!guessed) return {};
  return fmt::format("write {} or the day itself, if it is known", to_iso(*guessed));
}
}  // namespace furnish
