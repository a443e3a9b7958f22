#include "sheet/hurt_line.h"

#include <algorithm>
#include <array>
#include <string>

#include "base/said_in.h"
#include "page/run_in_alerts.h"
#include "sheet/parts.h"
#include "sheet/pieces.h"

namespace furnish {
namespace {
/// Letters, of one matter and of all on papers from small to large, where a small one too has room
/// for every danger and warning: what is longer is read on the other side.
constexpr std::size_t most_of_one = 160;
constexpr std::array<std::size_t, 3> most_of_line{46, 90, 110};

std::size_t letters_of(const std::string& text) {
  const std::string shown = without_languages(text);
  return static_cast<std::size_t>(std::ranges::count_if(
      shown, [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

/// Its first sentence without the full stop, in the language that it was written in; empty if it is
/// too long.
std::string matter_of(const AlertEntry& entry) {
  std::string text = entry.statement, language;
  if (!entry.apart.empty()) {
    text = entry.apart.spans.front().text;
    language = entry.apart.language;
  }
  text = first_sentence(text);
  const std::size_t marks = text.ends_with(language_ends) ? language_ends.size() : 0;
  if (text.size() > marks && text[text.size() - marks - 1] == '.') {
    text.erase(text.size() - marks - 1, 1);
  }
  if (letters_of(text) > most_of_one) return {};
  return language.empty() ? text : said_in(language, text);
}
}  // namespace

BlockPtr hurt_line(const std::vector<AlertEntry>& alerts, PaperClass paper,
                   const std::string& elsewhere) {
  AlertEntry line;
  std::size_t letters = 0;
  int more = 0;
  for (const AlertEntry& entry : alerts) {
    if (entry.gravity == Gravity::hairline) continue;
    std::string text = matter_of(entry);
    const bool too_long = text.empty();
    if (too_long) text = elsewhere;
    const std::size_t own = letters_of(text);
    const bool grave = entry.gravity <= Gravity::panel;
    if (line.word.empty()) {
      line = {entry.gravity, entry.word, text, {}, {"what can hurt", entry.origin.span}};
    } else if (more > 0 || too_long ||
               letters + own > most_of_line[grave ? 2 : static_cast<std::size_t>(paper)]) {
      ++more;
      continue;
    } else {
      line.statement += "\u00A0· " + text;
    }
    letters += own;
  }
  if (line.word.empty()) return nullptr;
  line.statement += more > 0 ? "\u00A0· +" + std::to_string(more) : "";
  // What is held in the hand, or is small, is read from as near as its text.
  line.role = paper == PaperClass::middle ? Role::action : Role::body;
  line.word_role = Role::label;
  return std::make_shared<RunInAlerts>(std::vector{std::move(line)});
}
}  // namespace furnish
