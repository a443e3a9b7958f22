#include "sheet/card_figure.h"

#include <algorithm>

#include "figure/figure.h"
#include "page/paragraph.h"
#include "page/stack.h"
#include "sheet/figure_text.h"

namespace furnish {
namespace {
constexpr Length height = Length::mm(25);

class LazyFigure final : public Block {
 public:
  LazyFigure(FigureInput input, Origin origin)
      : Block(std::move(origin)), input_(std::move(input)) {}

  Extent measure(Length width, const Setting&) const override {
    Extent extent{height, height};
    extent.too_wide = std::max(Length{}, no_touch_width - width);
    return extent;
  }
  Length natural_width(const Setting&) const override { return no_touch_width; }

  void place(const Rect& box, const Setting& setting, Frame& frame) const override {
    const DrawnDogPtr dog = draw_dog(input_, Detail::small);
    const Length whole =
        small_dog_figure(input_, dog, no_touch_width)->measure(box.size.width, setting).wanted;
    const Length width =
        whole > height ? no_touch_width * height.um() / whole.um() : no_touch_width;
    small_dog_figure(input_, dog, width)->place(box, setting, frame);
  }

 private:
  FigureInput input_;
};

FigureInput figure_of(const SheetDesk& desk, Side side) {
  const auto& [input, voice] = desk;
  FigureInput figure;
  figure.build = input.pet.build;
  figure.coat = input.pet.coat;
  if (const auto& weight = input.plan.health.weight) figure.weight = weight->weight;
  for (const PartLength& length : input.plan.lengths) {
    figure.left[static_cast<std::size_t>(length.place.region)] = length.left;
  }
  for (const Alert& alert : input.pet.alerts) {
    for (const auto& place : alert.avoid) figure.spots.push_back({place.value, SpotKind::avoid, 0});
  }
  figure.side = side;
  figure.alt = figure_text(figure, voice.words.written(input.pet.name.value), voice);
  return figure;
}

bool keeps_off(const Pet& pet, Side side) {
  return std::ranges::any_of(pet.alerts, [&](const Alert& alert) {
    return std::ranges::any_of(alert.avoid,
                               [&](const auto& place) { return place.value.side == side; });
  });
}
}  // namespace

BlockPtr no_touch_figure(const SheetDesk& desk) {
  std::vector<BlockPtr> out;
  TextStyle style{Role::foot};
  style.align = Align::end;
  for (const Side side : {Side::left, Side::right}) {
    if (!keeps_off(desk.input.pet, side)) continue;
    const Phrase says = side == Side::left ? Phrase::note_left_side : Phrase::note_right_side;
    if (!out.empty()) out.push_back(std::make_shared<Gap>(0.2, 0.2, 0));
    out.push_back(
        std::make_shared<LazyFigure>(figure_of(desk, side), Origin{"figure", desk.input.pet.span}));
    out.push_back(std::make_shared<Gap>(0.2, 0.2, 0));
    out.push_back(paragraph(desk.voice.words.say(says), style));
  }
  if (out.empty()) return nullptr;
  return std::make_shared<Column>(std::move(out));
}
}  // namespace furnish
