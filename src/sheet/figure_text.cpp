#include "sheet/figure_text.h"

#include <array>

#include "base/text.h"
#include "sheet/shown.h"
#include "sheet/terms.h"
#include "sheet/trim_lines.h"

namespace furnish {
namespace {
using FiveKeys = std::array<std::string_view, 5>;
constexpr FiveKeys ear_keys{"ears-prick", "ears-semi-prick", "ears-drop", "ears-button",
                            "ears-rose"};
constexpr FiveKeys tail_keys{"tail-plume", "tail-sickle", "tail-sabre", "tail-otter",
                             "tail-docked"};
constexpr std::array<std::string_view, tool_kind_count> tool_keys{
    "tool-brush", "tool-blade", "tool-comb", "tool-straight", "tool-thinning", "tool-strip"};

enum class FigureWord : std::uint8_t {
  from_left,
  from_right,
  coat_left,
  part,
  part_tool,
  natural,
  no_tool,
  finding,
  sore
};
constexpr std::array<std::string_view, 9> word_keys{"from-left", "from-right", "coat-left",
                                                    "part",      "part-tool",  "natural",
                                                    "no-tool",   "finding",    "sore"};

std::string_view key_of(EarType type) {
  return ear_keys.at(static_cast<std::size_t>(type));
}
std::string_view key_of(TailType type) {
  return tail_keys.at(static_cast<std::size_t>(type));
}
std::string_view key_of(ToolKind kind) {
  return tool_keys.at(static_cast<std::size_t>(kind));
}
std::string_view key_of(FigureWord word) {
  return word_keys.at(static_cast<std::size_t>(word));
}

template <typename Key>
std::string term(const Words& words, Key key, const std::vector<WordArgument>& arguments = {}) {
  return words.term("figure", key_of(key), arguments);
}

std::string spot_text(const FigureSpot& spot, const SheetVoice& voice) {
  const Words& words = voice.words;
  const std::string place = place_name(spot.place, words, voice.reader);
  switch (spot.kind) {
    case SpotKind::avoid:
      return term(words, FigureWord::no_tool, {place});
    case SpotKind::sore:
      return term(words, FigureWord::sore, {place});
    case SpotKind::finding:
      break;
  }
  return term(words, FigureWord::finding, {finding_letter(spot.number), place});
}
}  // namespace

std::vector<std::string_view> figure_keys() {
  std::vector<std::string_view> out(word_keys.begin(), word_keys.end());
  out.insert(out.end(), ear_keys.begin(), ear_keys.end());
  out.insert(out.end(), tail_keys.begin(), tail_keys.end());
  out.insert(out.end(), tool_keys.begin(), tool_keys.end());
  return out;
}

FigureInput figure_of(const Pet& pet, const Plan& plan) {
  FigureInput figure;
  figure.build = pet.build;
  figure.coat = pet.coat;
  if (const auto& weight = plan.health.weight) figure.weight = weight->weight;
  if (pet.style) figure.stepped = pet.style->lines;
  if (const FinishLine* tail = find_line(pet.finish, FinishPart::tail)) {
    figure.tail_end = tail_end(tail->words.value);
  }
  return figure;
}

std::string figure_text(const FigureInput& input, const std::string& lead, const SheetVoice& voice,
                        FigureSays says) {
  const Words& words = voice.words;
  std::vector<std::string> parts{
      lead,
      term(words, input.side == Side::right ? FigureWord::from_right : FigureWord::from_left)};
  if (input.coat) parts.push_back(coat_name(*input.coat, words));
  if (input.build.ears) parts.push_back(term(words, *input.build.ears));
  if (input.build.tail) parts.push_back(term(words, *input.build.tail));
  std::vector<std::string> left;
  for (const RegionInfo& region : regions()) {
    const auto i = static_cast<std::size_t>(region.region);
    if (!input.left[i]) continue;
    const std::string place = place_name({region.region, Side::both}, words, voice.reader);
    const std::string length = shown(*input.left[i], voice);
    left.push_back(input.tools[i] ? term(words, FigureWord::part_tool,
                                         {place, length, term(words, *input.tools[i])})
                                  : term(words, FigureWord::part, {place, length}));
  }
  std::string out = joined(parts, comma(words)) + ".";
  if (says == FigureSays::lengths) {
    out += " " +
           term(words, FigureWord::coat_left,
                {left.empty() ? term(words, FigureWord::natural) : joined(left, semicolon(words))});
  }
  for (const FigureSpot& spot : input.spots) out += " " + spot_text(spot, voice) + ".";
  return out;
}
}  // namespace furnish
