#include <glib.h>
#include <catch2/catch.hpp>

#include <algorithm>
#include <string_view>

#include "share.h"
#include "sheet/desk.h"

// Where the lines of all sheets end, read back from the pages: nothing that is read as one is
// parted.

namespace furnish::test {
namespace {
constexpr const char* languages[] = {"en", "es", "fr", "de", "pt", "vi", "ar"};

std::u32string decoded(const std::string& utf8) {
  glong count = 0;
  gunichar* const read = g_utf8_to_ucs4_fast(utf8.data(), static_cast<glong>(utf8.size()), &count);
  std::u32string out(read, read + count);
  g_free(read);
  while (!out.empty() && out.back() == U' ') out.pop_back();
  while (!out.empty() && out.front() == U' ') out.erase(0, 1);
  return out;
}

/// Why a line should not end there; empty if it may.
std::string_view parted(const std::u32string& end, const std::u32string& start) {
  const auto among = [](char32_t c, std::u32string_view all) {
    return all.find(c) != std::u32string_view::npos;
  };
  const char32_t last = end.back(), first = start.front();
  const bool number = g_unichar_isdigit(last) || among(last, U"½¼¾⅓⅔⅛⅜⅝⅞");
  if (number && g_unichar_isalpha(first)) return "a number and what it counts";
  if (number && g_unichar_isdigit(first)) return "two parts of a number";
  if (among(last, U"+×#") || among(first, U"+×")) return "a sign and its number";
  if (last == U':') return "a label and its first word";
  if (among(first, U":;!?»") || last == U'«') return "a mark and its word";
  if (last == U'·') return "a dot and what it parts";
  return {};
}

struct Counted {
  int pages = 0, lines = 0, parted = 0;
  std::string said;
};

void count(const Frame& frame, Counted& all) {
  ++all.pages;
  std::u32string above;  // the line before, of the same piece of structure
  std::vector<Structure> in;
  for (const Mark& mark : frame.marks) {
    if (const auto* const open = std::get_if<OpenTag>(&mark)) in.push_back(open->role);
    if (std::holds_alternative<CloseTag>(mark)) in.pop_back();
    const auto* const text = std::get_if<TextMark>(&mark);
    if (text == nullptr) {
      if (std::holds_alternative<OpenTag>(mark) || std::holds_alternative<CloseTag>(mark)) {
        above.clear();
      }
      continue;
    }
    // Words in a drawing are no lines of a text.
    if (std::ranges::find(in, Structure::figure) != in.end()) continue;
    const std::u32string line = decoded(text->line->text());
    if (line.empty()) continue;
    if (!above.empty()) {
      ++all.lines;
      if (const std::string_view what = parted(above, line); !what.empty()) {
        ++all.parted;
        all.said += std::string(what) + " before: " + text->line->text() + "\n";
      }
    }
    above = line;
  }
}

void count(const std::optional<Sheet>& sheet, Counted& all) {
  if (!sheet) return;
  for (const Frame& side : sides(sheet->page)) count(side, all);
}
}  // namespace

TEST_CASE("what is read as one stands on one line, on every page in every language",
          "[languages]") {
  std::size_t spoken = 0;
  for (const char* language : languages) {
    Counted all;
    std::size_t pet = 0;
    ++spoken;
    for (const char* salon : {"lantern-street", "us-corner"}) {
      Desk table(sample(salon));
      table.speak(language);
      for (const std::string& key : table.pets()) {
        if (!in_turn(pet++, spoken, 4)) continue;
        all.said += key + "\n";
        const Kennel kennel = table.kennel(key);
        count(table.card(kennel), all);
        count(table.card(kennel, "A6"), all);
        count(table.style(kennel), all);
        count(table.care(kennel), all);
        if (kennel.visits.empty()) continue;
        count(table.note(kennel, Audience::staff), all);
        count(table.note(kennel, Audience::everyone), all);
      }
    }
    INFO(all.said);
    CHECK(all.parted == 0);
    WARN(language << ": " << all.pages << " pages, " << all.lines << " ends of lines, "
                  << all.parted << " that part what is one");
    CHECK(all.pages > (long_run() ? 100 : 20));
    CHECK(all.lines > (long_run() ? 400 : 80));
  }
}
}  // namespace furnish::test
