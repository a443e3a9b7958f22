#include "output/pdf_text.h"

#include <algorithm>
#include <array>
#include <vector>

#include "output/content_operators.h"

namespace furnish {
namespace {
/// In hexadecimal UTF-16, as cairo writes both: a character and what it is read as.
struct Reading {
  std::string_view character, plain;
};
/// Unicode's decompositions of U+FB00 to U+FB06, but for the long s, and of the no-break space.
constexpr std::array<Reading, 7> readings{{{"00a0", "0020"},
                                           {"fb00", "00660066"},
                                           {"fb01", "00660069"},
                                           {"fb02", "0066006c"},
                                           {"fb03", "006600660069"},
                                           {"fb04", "00660066006c"},
                                           {"fb06", "00730074"}}};

/// True of the operands of a BDC that opens a span for one of these.
bool is_plain_span(std::string_view operands) {
  constexpr std::string_view before = "/Span << /ActualText <feff";
  const std::size_t at = operands.find(before);
  if (at == std::string_view::npos) return false;
  operands.remove_prefix(at + before.size());
  const std::string_view text = operands.substr(0, operands.find('>'));
  return std::ranges::any_of(readings, [&](const Reading& reading) {
    return text == reading.character || text == reading.plain;
  });
}
}  // namespace

std::string without_plain_spans(std::string_view content) {
  if (content.find("/ActualText") == std::string_view::npos) return {};
  std::string out;
  std::size_t copied = 0, last = 0;
  std::vector<bool> left_out;  // of the marked content that is open
  ContentOperators operators(content);
  for (auto word = operators.next(); !word.empty(); word = operators.next()) {
    const std::size_t end = operators.position();
    bool leave_out = false;
    if (word == "BDC" || word == "BMC") {
      leave_out = is_plain_span(content.substr(last, end - last));
      left_out.push_back(leave_out);
    } else if (word == "EMC" && !left_out.empty()) {
      leave_out = left_out.back();
      left_out.pop_back();
    }
    if (leave_out) {
      out += content.substr(copied, last - copied);
      copied = end;
    }
    last = end;
  }
  if (copied > 0) out += content.substr(copied);
  return out;
}

std::string with_plain_characters(std::string_view to_unicode) {
  std::string out(to_unicode);
  bool changed = false;
  for (const auto& [character, plain] : readings) {
    const std::string row_end = "> <" + std::string(character) + ">";  // of "<0001> <fb00>"
    for (auto at = out.find(row_end); at != std::string::npos; at = out.find(row_end, at)) {
      out.replace(at + 3, character.size(), plain);
      changed = true;
    }
  }
  return changed ? out : std::string();
}
}  // namespace furnish
