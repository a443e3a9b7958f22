#include "sheet/figure_text.h"

#include <array>

#include "base/text.h"
#include "sheet/shown.h"
#include "sheet/terms.h"
#include "sheet/trim_lines.h"

namespace furnish {
namespace {
std::string_view key_of(EarType type) {
  constexpr std::array<std::string_view, 5> keys{"ears-prick", "ears-semi-prick", "ears-drop",
                                                 "ears-button", "ears-rose"};
  return keys.at(static_cast<std::size_t>(type));
}
std::string_view key_of(TailType type) {
  constexpr std::array<std::string_view, 5> keys{"tail-plume", "tail-sickle", "tail-sabre",
                                                 "tail-otter", "tail-docked"};
  return keys.at(static_cast<std::size_t>(type));
}

std::string_view key_of(ToolKind kind) {
  constexpr std::array<std::string_view, tool_kind_count> keys{
      "tool-brush", "tool-blade", "tool-comb", "tool-straight", "tool-thinning", "tool-strip"};
  return keys.at(static_cast<std::size_t>(kind));
}

std::string spot_text(const FigureSpot& spot, const Words& words) {
  const std::string place = place_name(spot.place, words);
  switch (spot.kind) {
    case SpotKind::avoid:
      return words.term("figure", "no-tool", {place});
    case SpotKind::alert:
      return words.term("figure", "take-care", {place});
    case SpotKind::finding:
      break;
  }
  return words.term("figure", "finding", {spot.number, place});
}
}  // namespace

std::string figure_text(const FigureInput& input, const std::string& lead,
                        const SheetVoice& voice) {
  const Words& words = voice.words;
  std::vector<std::string> parts{
      lead, words.term("figure", input.side == Side::right ? "from-right" : "from-left")};
  if (input.coat) parts.push_back(words.say(Phrase::coat_of, {coat_name(*input.coat, words)}));
  if (input.build.ears) parts.push_back(words.term("figure", key_of(*input.build.ears)));
  if (input.build.tail) parts.push_back(words.term("figure", key_of(*input.build.tail)));
  std::vector<std::string> left;
  for (const RegionInfo& region : regions()) {
    const auto i = static_cast<std::size_t>(region.region);
    if (!input.left[i]) continue;
    const std::string place = place_name({region.region, Side::both}, words);
    const std::string length = shown(*input.left[i], voice);
    left.push_back(input.tools[i]
                       ? words.term("figure", "part-tool",
                                    {place, length, words.term("figure", key_of(*input.tools[i]))})
                       : words.term("figure", "part", {place, length}));
  }
  std::string out = joined(parts, comma(words)) + ". ";
  out +=
      words.term("figure", "coat-left",
                 {left.empty() ? words.term("figure", "natural") : joined(left, semicolon(words))});
  for (const FigureSpot& spot : input.spots) out += " " + spot_text(spot, words) + ".";
  return out;
}
}  // namespace furnish
