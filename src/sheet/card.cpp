#include "sheet/card.h"

#include <fmt/format.h>

#include <algorithm>

#include "sheet/card_maker.h"
#include "sheet/roles.h"

namespace furnish {
namespace {
/// Kept free at the top for the clip on the kennel's door, or a punch; common practice, no source.
constexpr Length clip_zone = 14_mm, clip_zone_small = 12_mm;
/// Of the width, which the labels' column never takes more than; a longer label takes two lines.
constexpr double most_for_labels = 0.24;

/// A way to set a card, most generous first, and how closely.
struct Way {
  std::string_view name;
  CardWay arrangement;
  bool close = false;
};
using Signals = CardWay::Signals;
constexpr Way ways[] = {
    {"asking", {Signals::hanging, true}},
    {"columns", {Signals::hanging}},
    {"run-in", {Signals::run_in}},
    {"close", {Signals::run_in}, true},
    {"brief", {Signals::run_in, false, true}, true},
};
/// Of lines in what is set closely: 1.17 from baseline to baseline.
constexpr double close_leading = 0.94;

struct LabelEdge {
  Length width;
  bool words_fit = false;  ///< signal words, too
};

/// One edge for all cards of the salon on this paper: that of the widest label at its largest.
LabelEdge label_edge(const PageRequest& request, const SheetVoice& voice) {
  const Setting setting{
      TypeScale(request.roles, voice.shaper.fonts().capital_height(), request.steps, request.steps),
      request.rhythm, voice.shaper, Precision::draft};
  const auto widest = [&](const std::vector<Phrase>& phrases, Face face) {
    Length out;
    for (const Phrase phrase : phrases) {
      const Paragraph label(voice.words.say(phrase), {.role = Role::label, .face = face});
      out = std::max(out, label.natural_width(setting));
    }
    return scaled(out, 1.02);  // a draft knows no kerning
  };
  const Length most =
      scaled(request.size.width - request.margins.left - request.margins.right, most_for_labels);
  const Length gutter = scaled(request.rhythm, label_gutter);
  const Length labels = widest(card_labels(), Face::semibold) + gutter;
  const Length words =
      widest({Phrase::danger, Phrase::warning, Phrase::caution, Phrase::notice}, Face::bold) +
      scaled(request.rhythm, label_word_air) + gutter;
  if (words <= most) return {std::min(most, std::max(labels, words)), true};
  return {std::min(most, labels), false};
}

/// Fronts that keep less and less, each arranged as well as it can be; at last the card flows from
/// its front on.
std::vector<Division> divisions_of(const CardMaker& maker, const LabelEdge& edge, Length close) {
  struct Front {
    std::string_view name;
    Kept kept;
  };
  constexpr Front fronts[] = {
      {"all but history", Kept::advice}, {"hand", Kept::hand}, {"work", Kept::work},
      {"cautions", Kept::cautions},      {"trim", Kept::trim}, {"door", Kept::door}};
  std::vector<Division> out;
  for (const Front& front : fronts) {
    for (const Way& way : ways) {
      if (way.arrangement.asks) continue;
      if (way.arrangement.signals == Signals::hanging && !edge.words_fit) continue;
      const auto rest = [&maker, way, front](Signals signals) -> Division::Pieces {
        return [&maker, way, front, signals] {
          return maker.rest(way.arrangement, front.kept, signals);
        };
      };
      out.push_back({fmt::format("{}, {}", front.name, way.name),
                     [&maker, way, front] { return maker.front(way.arrangement, front.kept); },
                     {rest(Signals::hanging), rest(Signals::run_in)},
                     way.close ? std::optional(close) : std::nullopt,
                     way.close ? close_leading : 1});
    }
  }
  out.push_back({"flowing", {}, {[&maker] { return maker.all(); }}, close});
  return out;
}
}  // namespace

std::optional<Sheet> make_card(const SheetDesk& desk, DiagnosticSink& sink) {
  const SheetInput& input = desk.input;
  const bool small = paper_class(input.paper) == PaperClass::small;
  PageRequest request = page_request(input);
  if (small) request.margins = {8_mm, 8_mm, 8_mm, 8_mm};
  request.free_top = small ? clip_zone_small : clip_zone;
  request.rhythm = small ? 3_mm : 4_mm;
  const Length close = small ? Length::mm(2) : Length::mm(2.5);
  const LabelEdge edge = label_edge(request, desk.voice);
  const CardMaker maker(desk, edge.width);
  for (const Way& way : ways) {
    if (way.arrangement.asks && !maker.asks()) continue;
    if (way.arrangement.signals == Signals::hanging && !edge.words_fit && !way.arrangement.asks) {
      continue;
    }
    CardWay arrangement = way.arrangement;
    if (!edge.words_fit) arrangement.signals = Signals::run_in;
    request.layouts.push_back(
        {std::string(way.name),
         [&maker, arrangement] { return column(maker.front(arrangement, Kept::history)); },
         way.close ? std::optional(close) : std::nullopt, way.close ? close_leading : 1});
  }
  request.divisions = divisions_of(maker, edge, close);
  const std::string title = desk.voice.words.say(Phrase::card_title, {input.pet.name.value});
  go_on(request, desk, maker.foot(), maker.foot(), title);
  auto page = compose(request, desk.voice.shaper, sink);
  if (!page) return std::nullopt;
  return finished(*std::move(page), desk, title, Phrase::card_subject);
}
}  // namespace furnish
