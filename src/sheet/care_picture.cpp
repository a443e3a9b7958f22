#include "sheet/care_picture.h"

#include <algorithm>
#include <utility>

#include "figure/friction.h"
#include "page/stack.h"
#include "sheet/shown.h"
#include "sheet/trim_lines.h"

namespace furnish {
namespace {
constexpr Length between = 6_mm, tallest = 84_mm;
/// Narrower paper has no room for words beside a dog.
constexpr Length wide_paper = 160_mm;

/// How a rhythm is shown, in the picture and on a calendar beside it.
Shade shade_of(HowOften often) {
  return often == HowOften::daily ? Shade::dark : Shade::middle;
}

/// The rhythm of a region; that of the most of the coat where the plan has none of its own for it.
const BrushZone& zone_of(Region region, Side side, const std::vector<BrushZone>& zones) {
  for (const BrushZone& zone : zones) {
    const bool there = std::ranges::any_of(zone.places, [&](Place place) {
      return place.region == region && (place.side == Side::both || place.side == side);
    });
    if (there) return zone;
  }
  return *std::ranges::max_element(zones, {},
                                   [](const BrushZone& zone) { return zone.places.size(); });
}

FigureInput figure_of(const CareRoutine& routine, const CareDesk& desk) {
  const auto& [pet, plan, care] = std::tie(desk.input.pet, desk.input.plan, desk.care.care);
  FigureInput figure;
  const bool right =
      std::ranges::any_of(care.avoided, [](Place place) { return place.side == Side::right; });
  const bool left =
      std::ranges::any_of(care.avoided, [](Place place) { return place.side == Side::left; });
  figure.side = right && !left ? Side::right : Side::left;
  figure.build = pet.build;
  figure.coat = pet.coat;
  if (const auto& weight = plan.health.weight) figure.weight = weight->weight;
  if (pet.style) figure.stepped = pet.style->lines;
  const auto seen = [&](Place place) {
    return place.side == Side::both || place.side == figure.side;
  };
  for (const RegionGrowth& row : plan.growth) {
    if (seen(row.place)) figure.left[static_cast<std::size_t>(row.place.region)] = row.left;
  }
  for (const Place place : care.avoided) figure.spots.push_back({place, SpotKind::avoid});
  for (const RegionInfo& region : regions()) {
    const bool avoided = std::ranges::any_of(
        care.avoided, [&](Place place) { return place.region == region.region && seen(place); });
    if (avoided || !is_brushed(region.region)) continue;
    figure.shades[static_cast<std::size_t>(region.region)] =
        shade_of(zone_of(region.region, figure.side, care.zones).now);
  }
  figure.friction = !routine.mats.empty();
  figure.alt = desk.voice.words.say(Phrase::care_picture, {pet.name.value});
  for (const CareRoutine::Rhythm& one : routine.rhythms) figure.alt += " " + one.text;
  return figure;
}
}  // namespace

CarePicture::CarePicture(const CareRoutine& routine, const CareDesk& desk)
    : routine_(routine), desk_(desk), figure_(figure_of(routine, desk)), dog_(draw_dog(figure_)) {}

BlockPtr CarePicture::words(const Form& form) const {
  std::vector<KeyEntry> entries;
  const BlockPtr none = std::make_shared<Gap>(0, 0, 0);
  for (const CareRoutine::Rhythm& one : routine_.rhythms) {
    entries.push_back(
        {shade_patch(shade_of(one.often), key_sign, form.marked), {{one.text, Face::semibold}}});
  }
  if (!routine_.later.empty()) entries.push_back({none, {{routine_.later}}});
  entries.push_back({none, {{routine_.way}}});
  if (form.mats && !routine_.mats.empty()) {
    const std::string label = desk_.voice.words.say(Phrase::care_label_spots);
    entries.push_back(
        {friction_sign(key_sign), {{label + after_label, Face::semibold}, {routine_.mats}}});
  }
  return figure_key(entries);
}

BlockPtr CarePicture::mats() const {
  std::vector<Beside::Cell> cells{
      {column({std::make_shared<Gap>(0.1, 0.1, 0), friction_sign(key_sign)}), key_sign},
      {paragraph(routine_.mats)}};
  return std::make_shared<Beside>(std::move(cells), Length::mm(2), Beside::Line::top);
}

BlockPtr CarePicture::block(const Form& form) const {
  BlockPtr dog = dog_figure(figure_, dog_, form.least, tallest, 4, {"picture", {}});
  if (desk_.input.paper.size.width < wide_paper) {
    return column({std::move(dog), gap(0.5), words(form)});
  }
  std::vector<Beside::Cell> cells{{std::move(dog), {}, form.dog_share},
                                  {words(form), {}, form.words_share}};
  return std::make_shared<Beside>(std::move(cells), between, Beside::Line::top);
}
}  // namespace furnish
