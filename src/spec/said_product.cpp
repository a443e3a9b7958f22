#include "spec/said_product.h"

#include <array>
#include <utility>
#include <vector>

#include "base/quantity.h"
#include "spec/client_texts.h"
#include "spec/toml_text.h"

namespace furnish {
SaidProduct said_product(std::string_view words) {
  constexpr std::array<std::string_view, 3> gaps{" ", ",", "\t"};
  const std::vector<std::string> parts = parts_of(words, gaps);
  SaidProduct out;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const std::string& part = parts[i];
    const bool more = i + 1 < parts.size();
    if (out.dilution.empty() && part.find(':') != std::string::npos && parse_dilution(part)) {
      out.dilution = part;
    } else if (out.dwell.empty() && parse_duration(part)) {
      out.dwell = part;
    } else if (out.dwell.empty() && more && parse_duration(part + " " + parts[i + 1])) {
      out.dwell = part + " " + parts[++i];
    } else {
      out.name += (out.name.empty() ? "" : " ") + part;
    }
  }
  return out;
}

std::string product_in_braces(std::string_view words) {
  const SaidProduct said = said_product(words);
  if (said.name.empty() || (said.dilution.empty() && said.dwell.empty())) return {};
  std::vector<std::pair<std::string, std::string>> out{{"name", toml_text::quoted(said.name)}};
  if (!said.dilution.empty()) out.emplace_back("dilution", toml_text::quoted(said.dilution));
  if (!said.dwell.empty()) out.emplace_back("dwell", toml_text::quoted(said.dwell));
  return toml_text::table(out);
}
}  // namespace furnish
