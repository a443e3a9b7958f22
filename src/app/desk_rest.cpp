#include "app/desk_rest.h"

#include <algorithm>
#include <array>
#include <set>
#include <string_view>
#include <utility>
#include <vector>

#include "base/text.h"

namespace furnish {
namespace {
constexpr int most_rounds = 12;

/// What stands in for a key that must be there.
constexpr std::array<std::pair<std::string_view, std::string_view>, 3> stand_ins{
    {{"name", "name = \"…\""}, {"text", "text = \"…\""}, {"level", "level = \"warning\""}}};

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> out(1);
  for (const char c : text) {
    if (c == '\n') {
      out.emplace_back();
    } else {
      out.back() += c;
    }
  }
  return out;
}

/// One round: false if nothing more can be done about these faults.
bool mend(std::vector<std::string>& lines, const DiagnosticSink& said, const SourceSet& sources,
          const std::string& path) {
  std::set<std::size_t> out;
  bool added = false;
  for (const Diagnostic& fault : said.all()) {
    const SourceSpan& at = fault.span;
    if (fault.severity != Severity::error || at.file == SourceSpan::no_file) continue;
    if (sources.at(at.file).path() != path || at.begin.line == 0) continue;
    const auto first = static_cast<std::size_t>(at.begin.line) - 1;
    if (first >= lines.size()) continue;
    const auto stand_in = std::ranges::find_if(
        stand_ins, [&](const auto& one) { return fault.message.find(one.first) < 2; });
    if (fault.code == "missing-key" && stand_in != stand_ins.end() &&
        trimmed(lines[first]).starts_with("[")) {
      lines[first] += '\n';
      lines[first] += stand_in->second;
      added = true;
      continue;
    }
    const std::size_t last = std::max(first, static_cast<std::size_t>(at.end.line) - 1);
    for (std::size_t i = first; i <= last && i < lines.size(); ++i) out.insert(i);
  }
  for (const std::size_t i : out) {
    added = added || !lines[i].empty();
    lines[i].clear();
  }
  return added;
}
}  // namespace

std::optional<Case> rest_of(OverlaidFiles& over, Workshop& shop, const PetPath& pet,
                            const std::string& text, Date day) {
  std::vector<std::string> lines = lines_of(text);
  for (int round = 0; round < most_rounds; ++round) {
    const std::string left = joined(lines, "\n");
    over.lay(pet.file, left);
    DiagnosticSink said;
    if (auto one = shop.work_out(pet, day, said)) return one;
    lines = lines_of(left);
    if (!mend(lines, said, shop.sources(), pet.file)) return std::nullopt;
  }
  return std::nullopt;
}
}  // namespace furnish
