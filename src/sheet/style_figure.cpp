#include <algorithm>

#include "sheet/figure_text.h"
#include "sheet/last_time.h"
#include "sheet/style_rows.h"

namespace furnish {
namespace {
/// Under the dog or between its legs: a disc from the side points at where they are not.
bool unseen(Region region) {
  return region == Region::pads || region == Region::sanitary;
}

/// What is not seen from the side has no number, on no dog's figure, unless it differs.
void keep_seen(std::vector<FigureCallout>& callouts) {
  for (FigureCallout& one : callouts) {
    const bool all = std::ranges::all_of(one.regions, unseen);
    if (!all || !one.differs) std::erase_if(one.regions, unseen);
  }
  std::erase_if(callouts, [](const FigureCallout& one) { return one.regions.empty(); });
}

/// Takes numbers off the figure that it can best do without, from the last, until few enough are
/// left: what is only brushed. What differs keeps its own.
void keep_few(std::vector<FigureCallout>& callouts, const std::vector<StyleRow>& rows) {
  for (std::size_t i = callouts.size(); i-- > 0 && callouts.size() > most_numbers;) {
    const FigureCallout& one = callouts[i];
    const StyleRow& row = rows[static_cast<std::size_t>(one.number) - 1];
    if (!one.differs && row.kind == RowKind::brush) {
      callouts.erase(callouts.begin() + static_cast<std::ptrdiff_t>(i));
    }
  }
}
}  // namespace

FigureInput style_figure(const std::vector<StyleRow>& rows, const SheetDesk& desk) {
  const auto& [input, voice] = desk;
  FigureInput figure = figure_of(input.pet, input.plan);
  for (const PartLength& length : input.plan.lengths) {
    figure.left[static_cast<std::size_t>(length.place.region)] = length.left;
  }
  for (const Alert& alert : input.pet.alerts) {
    for (const auto& place : alert.avoid) figure.spots.push_back({place.value, SpotKind::avoid, 0});
  }
  std::ranges::move(finding_spots(desk), std::back_inserter(figure.spots));
  // Seen from the side that has something to mind; from the left where both or neither do.
  const auto on = [&](Side side) {
    return std::ranges::any_of(figure.spots,
                               [&](const FigureSpot& spot) { return spot.place.side == side; });
  };
  figure.side = on(Side::right) && !on(Side::left) ? Side::right : Side::left;
  for (const StyleRow& row : rows) {
    FigureCallout callout;
    callout.number = row.number;
    callout.differs = row.differs;
    callout.row = row.id();
    callout.says = voice.words.say(Phrase::link_to_row, {row.number, row.names});
    for (const Place place : row.places) {
      if (place.side != Side::both && place.side != figure.side) continue;
      callout.regions.push_back(place.region);
      if (row.kind_of_tool) figure.tools[static_cast<std::size_t>(place.region)] = row.kind_of_tool;
    }
    // What is on the other side alone is in the table: a disc here would point at the wrong one.
    if (!callout.regions.empty()) figure.callouts.push_back(std::move(callout));
  }
  keep_seen(figure.callouts);
  keep_few(figure.callouts, rows);
  figure.alt = figure_text(figure, voice.words.written(input.pet.name.value), voice);
  return figure;
}
}  // namespace furnish
