#include "app/visit_name.h"

#include <string_view>

namespace furnish {
std::pair<std::optional<Date>, int> parse_visit(const std::string& text) {
  constexpr std::size_t date = 10;
  const auto day = parse_date(std::string_view(text).substr(0, date));
  if (text.size() <= date) return {day, 0};
  const std::string number = text.substr(date + 1);
  const bool good = text[date] == '-' && !number.empty() && number.size() < 3 &&
                    number.find_first_not_of("0123456789") == std::string::npos;
  if (!good) return {std::nullopt, 0};
  return {day, std::stoi(number)};
}
}  // namespace furnish
