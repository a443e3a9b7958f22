#include <fmt/format.h>

#include <string>

#include "base/quantity.h"
#include "figure/figure.h"

namespace furnish {
namespace {
std::string_view words(EarType type) {
  switch (type) {
    case EarType::prick:
      return "prick ears";
    case EarType::semi_prick:
      return "semi-prick ears";
    case EarType::drop:
      return "drop ears";
    case EarType::button:
      return "button ears";
    case EarType::rose:
      break;
  }
  return "rose ears";
}
std::string_view words(TailType type) {
  switch (type) {
    case TailType::plume:
      return "plumed tail over the back";
    case TailType::sickle:
      return "sickle tail";
    case TailType::sabre:
      return "sabre tail";
    case TailType::otter:
      return "otter tail";
    case TailType::docked:
      break;
  }
  return "docked tail";
}

std::string spot_text(const FigureSpot& spot) {
  const std::string place = to_text(spot.place);
  switch (spot.kind) {
    case SpotKind::avoid:
      return fmt::format("no tool on: {}", place);
    case SpotKind::alert:
      return fmt::format("take care: {}", place);
    case SpotKind::finding:
      break;
  }
  return fmt::format("finding {}: {}", spot.number, place);
}
}  // namespace

std::string figure_alt(const FigureInput& input) {
  std::string out = input.alt_lead.empty() ? "The dog" : input.alt_lead;
  out += input.side == Side::right ? ", seen from the right" : ", seen from the left";
  if (input.coat) out += fmt::format(", {} coat", key(*input.coat));
  if (input.build.ears) out += fmt::format(", {}", words(*input.build.ears));
  if (input.build.tail) out += fmt::format(", {}", words(*input.build.tail));
  out += ". Coat left: ";
  std::string list;
  for (const RegionInfo& region : regions()) {
    const auto i = static_cast<std::size_t>(region.region);
    if (!input.left[i]) continue;
    if (!list.empty()) list += "; ";
    list += fmt::format("{} {}", region.name, to_text(*input.left[i], input.units));
    if (input.tools[i]) list += fmt::format(", {}", to_text(*input.tools[i]));
  }
  out += (list.empty() ? "natural everywhere" : list) + ".";
  for (const FigureSpot& spot : input.spots) out += " " + spot_text(spot) + ".";
  return out;
}
}  // namespace furnish
