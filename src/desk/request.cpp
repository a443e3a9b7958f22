#include "desk/request.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "base/text.h"

namespace furnish::desk {
std::size_t RequestHead::count(std::string_view name) const {
  const std::string wanted = lower_ascii(name);
  return static_cast<std::size_t>(std::ranges::count_if(
      headers, [&](const auto& header) { return lower_ascii(header.first) == wanted; }));
}

std::string_view RequestHead::header(std::string_view name) const {
  const std::string wanted = lower_ascii(name);
  for (const auto& [key, value] : headers) {
    if (lower_ascii(key) == wanted) return value;
  }
  return {};
}

Response refusal(unsigned status, std::string_view why, std::string_view code,
                 std::string_view about) {
  nlohmann::json out{{"error", why}};
  if (!code.empty()) out["code"] = code;
  if (!about.empty()) out["about"] = about;
  return {status, "application/json",
          out.dump(-1, ' ', false, nlohmann::json::error_handler_t::replace)};
}
}  // namespace furnish::desk
