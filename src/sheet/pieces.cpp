#include "sheet/pieces.h"

#include <fmt/format.h>
#include <unicode/uchar.h>
#include <unicode/unistr.h>

#include "base/said_in.h"
#include "page/stack.h"

namespace furnish {
namespace {
/// Letters, about: eight lines on the narrowest paper.
constexpr std::size_t most_letters = 240;

/// No name that anybody calls, and it would fill a side.
bool absurd(const std::string& name) {
  return name.size() > most_letters;
}

BlockPtr foot_of_side(const FootText& text, const std::string& turn, const std::string& other,
                      int side, int sides) {
  const bool front = side % 2 == 1;
  std::string right = text.right.empty() ? "" : text.right + "\u00A0· ";
  right += fmt::format("{}/{}", side, sides);
  if (!front) right += "\u00A0· " + other;
  BlockPtr line = sheet_foot(text.left, std::move(right));
  if (!front || side == sides) return line;
  TextStyle style{Role::body, Face::bold};
  style.align = Align::end;
  return column({paragraph(turn, style), std::make_shared<Gap>(0.2, 0.2, 0), std::move(line)});
}

std::size_t letters_in(const std::vector<TextSpan>& spans) {
  std::size_t out = 0;
  for (const TextSpan& span : spans) out += without_languages(span.text).size();
  return out;
}

/// Spans cut between words into runs of some length; what has no words, after twice as much.
std::vector<std::vector<TextSpan>> cut_spans(const std::vector<TextSpan>& spans) {
  std::vector<std::vector<TextSpan>> out(1);
  std::size_t letters = 0;
  for (const TextSpan& span : spans) {
    TextSpan part = span;
    part.text.clear();
    std::string
        language;  // the mark of the one that has begun; a run that it goes on in has its own
    const auto keep = [&] {
      if (part.text != language) {
        if (!language.empty()) part.text += language_ends;
        out.back().push_back(part);
      }
      part.text = language;
    };
    for (std::size_t i = 0; i < span.text.size(); ++i) {
      const std::string_view rest = std::string_view(span.text).substr(i);
      const std::size_t mark =
          rest.starts_with(language_ends) ? language_ends.size() : language_mark(rest);
      if (mark > 0) {
        language = rest.starts_with(language_ends) ? std::string_view() : rest.substr(0, mark);
        part.text += rest.substr(0, mark);
        i += mark - 1;
        continue;
      }
      const char c = span.text[i];
      // Bytes that go on a letter begin with 10.
      const bool begins = (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;
      const bool space = c == ' ' && letters >= most_letters;
      if (space || (begins && letters >= 2 * most_letters)) {
        keep();
        out.emplace_back();
        letters = 0;
        if (space) continue;
      }
      part.text += c;
      letters += begins;
    }
    keep();
  }
  if (out.back().empty()) out.pop_back();
  return out;
}
}  // namespace

std::vector<std::string> cut_text(const std::string& text) {
  std::vector<std::string> out;
  for (const std::vector<TextSpan>& run : cut_spans({{text}})) out.push_back(run.front().text);
  return out;
}

bool fits_piece(const std::string& text) {
  return without_languages(text).size() <= most_letters;
}

std::string shortened(const std::string& text, std::size_t letters) {
  std::size_t end = 0;
  for (std::size_t n = 0; n < letters && end < text.size(); ++n) {
    do {
      ++end;
    } while (end < text.size() && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80);
  }
  return end < text.size() ? text.substr(0, end) + "\u2026" : text;
}

void go_on(PageRequest& request, const SheetDesk& desk, const FootText& alone,
           const FootText& divided, const std::string& title, const BlockPtr& hurts) {
  const Words& words = desk.voice.words;
  request.footer = sheet_foot(alone.left, alone.right);
  request.foot_of = [divided, turn = words.say(Phrase::turn_over),
                     other = words.say(Phrase::other_side)](int side, int sides) {
    return foot_of_side(divided, turn, other, side, sides);
  };
  // Whole on the front; again on every side it would leave no room for anything else.
  const bool long_one = absurd(title);
  TextStyle style{long_one ? Role::foot : Role::heading, Face::bold};
  style.structure = Structure::title;
  const std::string again = long_one ? shortened(title, 40) : title;
  std::vector<BlockPtr> head{paragraph(again, style), std::make_shared<Gap>(0.2, 0.2, 0),
                             std::make_shared<Rule>(rule_name)};
  if (hurts) head.push_back(hurts);
  request.again = column(std::move(head));
}

std::string without_breaks(std::string text) {
  for (std::size_t at; (at = text.find(' ')) != std::string::npos;) text.replace(at, 1, "\u00A0");
  return text;
}

std::string beside_number(std::string name) {
  const auto text = icu::UnicodeString::fromUTF8(name);
  bool turns = false;
  for (std::int32_t i = 0; i < text.length(); i = text.moveIndex32(i, 1)) {
    const UCharDirection way = u_charDirection(text.char32At(i));
    turns |= way == U_RIGHT_TO_LEFT || way == U_RIGHT_TO_LEFT_ARABIC;
  }
  if (!turns || name.starts_with("\u2068")) return name;
  return "\u2068" + name + "\u2069";
}

std::vector<BlockPtr> plain_head(const Pet& pet, std::vector<std::vector<TextSpan>> facts) {
  TextStyle name{absurd(pet.name.value) ? Role::foot : Role::alert, Face::bold};
  name.structure = Structure::title;
  std::vector<BlockPtr> lines;
  for (std::vector<TextSpan>& line : facts) {
    if (!line.empty()) lines.push_back(paragraph(std::move(line)));
  }
  lines.push_back(std::make_shared<Rule>(rule_name));
  return {paragraph(pet.name.value, name, {"name", pet.name.span}), column(std::move(lines))};
}

BlockPtr as_text(const SheetRow& row, Face label, std::string_view after, const std::string& name) {
  const std::string head = row.label.empty() ? "" : row.label + std::string(after);
  std::vector<ApartText> apart{row.apart};
  for (const SheetRow::Point& point : row.points) apart.push_back(point.apart);
  std::erase_if(apart, [](const ApartText& one) { return one.empty(); });
  const Origin origin{name.empty() ? row.label : name, row.span};
  std::vector<BlockPtr> out{passage(run_in(row, {head, label}),
                                    apart.empty() ? ApartText() : apart.front(), TextStyle{},
                                    origin)};
  for (std::size_t i = 1; i < apart.size(); ++i) {
    TextStyle other;
    other.language = apart[i].language;
    out.push_back(paragraph(apart[i].spans, other, origin));
  }
  return out.size() == 1 ? out.front() : column(std::move(out));
}

std::vector<SheetRow> cut(const std::vector<SheetRow>& rows) {
  std::vector<SheetRow> out;
  for (const SheetRow& row : rows) {
    bool first = true;
    const auto add = [&](std::vector<TextSpan> text, std::vector<SheetRow::Point> points) {
      SheetRow piece{first ? row.label : std::string(), std::move(text), row.span};
      piece.points = std::move(points);
      piece.role = row.role;
      piece.at_the_door = row.at_the_door;
      if (first) piece.hand_lines = row.hand_lines;
      out.push_back(std::move(piece));
      first = false;
    };
    for (auto& text : cut_spans(row.text)) add(std::move(text), {});
    // What stands apart, in another language, stays under the end of its text.
    if (!first) out.back().apart = row.apart;
    for (const SheetRow::Point& point : row.points) {
      bool differs = point.differs;
      for (auto& text : cut_spans(point.text)) {
        // What leads in to the points stays with the first of them.
        const bool leads = !first && out.back().points.empty() && out.back().apart.empty() &&
                           letters_in(out.back().text) + letters_in(text) <= most_letters;
        if (leads) {
          out.back().points.push_back({std::move(text), differs});
        } else {
          add({}, {{std::move(text), differs}});
        }
        differs = false;
      }
      if (!first && !out.back().points.empty()) out.back().points.back().apart = point.apart;
    }
    if (first) out.push_back(row);
  }
  return out;
}
}  // namespace furnish
