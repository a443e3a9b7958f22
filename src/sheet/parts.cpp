#include "sheet/parts.h"

#include <algorithm>
#include <array>

#include "base/said_in.h"
#include "base/text.h"
#include "page/forms.h"
#include "page/shortest.h"
#include "page/stack.h"
#include "sheet/spoken.h"
#include "sheet/terms.h"

namespace furnish {

LabelRow label_row(const SheetRow& row) {
  std::vector<BlockPtr> lines;
  if (!row.text.empty()) {
    lines.push_back(passage(row.text, row.apart, TextStyle{row.role}, row.origin()));
  }
  for (const SheetRow::Point& point : row.points) {
    lines.push_back(passage(point.text, point.apart, TextStyle{row.role}));
  }
  return {row.label, lines.size() == 1 ? lines.front() : column(std::move(lines)), row.origin()};
}

std::vector<TextSpan> run_in(const SheetRow& row, TextSpan label) {
  std::vector<TextSpan> out{std::move(label)};
  std::ranges::copy(row.text, std::back_inserter(out));
  for (std::size_t i = 0; i < row.points.size(); ++i) {
    if (i > 0 || !row.text.empty()) out.push_back({" "});
    std::ranges::copy(row.points[i].text, std::back_inserter(out));
  }
  return out;
}

std::string sentence(const std::string& text) {
  constexpr std::array<std::string_view, 9> ends{".", "!", "?", ":", "…", "؟", "。", "！", "？"};
  std::string out = capitalised(trimmed(text));
  // What has a direction of its own keeps its full stop inside; one that only ends the sentence,
  // such as a blade's number, leaves it to the sentence.
  constexpr std::string_view end_of_isolate = "\u2069";
  std::size_t begun = 0;
  for (const std::string_view mark : {"\u2066", "\u2067", "\u2068"}) {
    const std::size_t at = out.rfind(mark);
    if (at != std::string::npos) begun = std::max(begun, at);
  }
  const bool apart = begun == 0 && out.ends_with(end_of_isolate);
  if (apart) out.resize(out.size() - end_of_isolate.size());
  // Words in another language have their full stop in it as well.
  const bool other = out.ends_with(language_ends);
  if (other) out.resize(out.size() - language_ends.size());
  const bool ended =
      std::ranges::any_of(ends, [&](std::string_view end) { return out.ends_with(end); });
  if (!out.empty() && !ended) out += '.';
  if (other) out += language_ends;
  if (apart) out += end_of_isolate;
  return out;
}

std::string first_sentence(const std::string& text) {
  const std::string all = sentence(text);
  const std::size_t end = all.find(". "), marked = all.find("." + std::string(language_ends) + " ");
  if (marked < end) return all.substr(0, marked + 1 + language_ends.size());
  if (end == std::string::npos) return all;
  std::string first = all.substr(0, end + 1);
  const std::size_t begun = first.rfind(language_begins), ended = first.rfind(language_ends);
  const bool inside = begun != std::string::npos && (ended == std::string::npos || ended < begun);
  return inside ? first += language_ends : first;
}

Sentences::Sentences(const Words& words) : colon_(colon(words)) {}

void Sentences::add_headed(const std::string& head, const std::string& text) {
  if (text.empty()) return;
  if (head.empty()) return add(text);
  put(head + colon_, Face::semibold);
  spans_.push_back({sentence(text)});
}

void Sentences::put(const std::string& text, std::optional<Face> face) {
  if (text.empty()) return;
  if (!spans_.empty()) spans_.push_back({" "});
  spans_.push_back({text, face});
}

BlockPtr column(std::vector<BlockPtr> blocks) {
  return std::make_shared<Column>(std::move(blocks));
}

BlockPtr gap(double wanted) {
  return std::make_shared<Gap>(wanted, wanted / 2, 1);
}

BlockPtr heading(std::string title, Role role, Face face) {
  TextStyle style{role, face};
  style.structure = Structure::heading;
  return paragraph(std::move(title), style);
}

BlockPtr sheet_head(const Pet& pet, std::vector<std::vector<TextSpan>> facts, Length between) {
  TextStyle name{Role::title, Face::bold};
  name.structure = Structure::title;
  name.leading = 1.0;
  TextStyle beside{Role::subtitle};
  beside.align = Align::end;
  const BlockPtr title = paragraph(pet.name.value, name, {"name", pet.name.span});
  std::vector<BlockPtr> lines;
  for (std::vector<TextSpan>& line : facts) {
    if (!line.empty()) lines.push_back(paragraph(std::move(line), beside));
  }
  if (lines.empty()) return title;
  const BlockPtr end = column(std::move(lines));
  // What is long stands under the name, where it has the whole width.
  return std::make_shared<Shortest>(
      std::vector{BlockPtr(std::make_shared<Ends>(title, end, between)), column({title, end})});
}

BlockPtr sheet_foot(std::string left, std::string right) {
  const TextStyle style{Role::foot};
  TextStyle end = style;
  end.align = Align::end;
  return std::make_shared<Ends>(paragraph(std::move(left), style), paragraph(std::move(right), end),
                                4_mm);
}

PageRequest page_request(const SheetInput& input) {
  PageRequest request;
  request.size = input.paper.size;
  request.paper_name = std::string(input.paper.name);
  request.noun = std::string(input.kind.noun);
  request.span = input.pet.span;
  request.margins = input.kind.margins;
  request.wanted = input.arrangement;
  request.roles = input.kind.roles(input.paper, input.salon.paper.distances);
  return request;
}

Sheet finished(ComposedPage page, const SheetDesk& desk, std::string title, Phrase subject) {
  const SheetVoice& voice = desk.voice;
  give_words(page.frame, voice.words);
  for (Frame& side : page.more) give_words(side, voice.words);
  return {std::move(page),
          {without_languages(title), without_languages(voice.words.say(subject)),
           voice.locale.language(), to_iso(desk.input.today)}};
}
}  // namespace furnish
