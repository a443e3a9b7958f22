#include "spec/name_date.h"

#include <fmt/format.h>

#include <algorithm>
#include <string>

namespace furnish {
void check_name_date(const Located<Date>& date, std::string_view path, DiagnosticSink& sink) {
  const std::string name = stem(path);
  const auto named = parse_date(std::string_view(name).substr(0, 10));
  const std::string_view after =
      std::string_view(name).substr(std::min<std::size_t>(10, name.size()));
  const bool numbered =
      after.size() > 1 && after.size() < 4 && after[0] == '-' &&
      std::ranges::all_of(after.substr(1), [](char c) { return c >= '0' && c <= '9'; });
  if (!named || (!after.empty() && !numbered)) {
    sink.error("name-date", {date.span.file, {}, {}}, "is not named for its date").hint =
        fmt::format("name it {}.toml", to_iso(date.value));
    return;
  }
  if (*named == date.value) return;
  sink.error("name-date", date.span,
             fmt::format("the date is {}, but the file is named for {}", to_iso(date.value),
                         to_iso(*named)))
      .hint = "rename the file, or correct the date";
}
}  // namespace furnish
