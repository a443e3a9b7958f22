#include "output/pdf_artifacts.h"

#include <algorithm>
#include <array>

#include "output/content_operators.h"

namespace furnish {
namespace {
enum class Kind { path, shown, text_begin, text_end, tag_begin, tag_end, state };

Kind kind_of(std::string_view word) {
  struct Entry {
    std::string_view word;
    Kind kind;
  };
  // What takes part in showing something (ISO 32000-1, annex A); all else only changes how.
  static constexpr std::array<Entry, 25> table{
      {{"m", Kind::path},      {"l", Kind::path},        {"c", Kind::path},
       {"v", Kind::path},      {"y", Kind::path},        {"h", Kind::path},
       {"re", Kind::path},     {"W", Kind::path},        {"W*", Kind::path},
       {"S", Kind::shown},     {"s", Kind::shown},       {"f", Kind::shown},
       {"F", Kind::shown},     {"f*", Kind::shown},      {"B", Kind::shown},
       {"B*", Kind::shown},    {"b", Kind::shown},       {"b*", Kind::shown},
       {"Do", Kind::shown},    {"sh", Kind::shown},      {"BT", Kind::text_begin},
       {"ET", Kind::text_end}, {"BDC", Kind::tag_begin}, {"BMC", Kind::tag_begin},
       {"EMC", Kind::tag_end}}};
  const auto found = std::ranges::find(table, word, &Entry::word);
  return found == table.end() ? Kind::state : found->kind;
}
}  // namespace

std::string with_artifacts(std::string_view content) {
  std::string out;
  std::size_t copied = 0;
  std::size_t begin = 0;  // of the graphics object at hand: inside it no mark may stand
  int tags = 0;
  bool in_text = false;
  ContentOperators operators(content);
  for (auto word = operators.next(); !word.empty(); word = operators.next()) {
    const Kind kind = kind_of(word);
    if (kind == Kind::text_begin) in_text = true;
    if (kind == Kind::text_end) in_text = false;
    if (kind == Kind::tag_begin) ++tags;
    if (kind == Kind::tag_end) --tags;
    if (in_text || kind == Kind::path) continue;
    const std::size_t end = operators.position();
    if (tags == 0 && (kind == Kind::shown || kind == Kind::text_end)) {
      out += content.substr(copied, begin - copied);
      out += "\n/Artifact BMC";
      out += content.substr(begin, end - begin);
      out += "\nEMC";
      copied = end;
    }
    begin = end;
  }
  if (!out.empty()) out += content.substr(copied);
  return out;
}
}  // namespace furnish
