#include "base/paper.h"

#include "base/text.h"

namespace furnish {
namespace {
/// "5 × 8 in" and "5x8 in" alike: small letters, no spaces or hyphens, x for the sign.
std::string folded(std::string_view name) {
  std::string plain;
  for (std::size_t i = 0; i < name.size(); ++i) {
    if (name.substr(i).starts_with("\u00D7")) {
      plain += 'x';
      ++i;
    } else if (name[i] != ' ' && name[i] != '-') {
      plain += name[i];
    }
  }
  return lower_ascii(plain);
}
}  // namespace

std::optional<Paper> parse_paper(std::string_view name) {
  for (const Paper& paper : papers) {
    if (folded(paper.name) == folded(name)) return paper;
  }
  return std::nullopt;
}

std::vector<std::string_view> paper_names() {
  std::vector<std::string_view> names;
  for (const Paper& paper : papers) names.push_back(paper.name);
  return names;
}
}  // namespace furnish
