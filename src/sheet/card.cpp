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

/// A way to set a card, most generous first, and how closely. The name ends with what makes it look
/// like others of a set.
struct Way {
  std::string_view name;
  CardWay arrangement;
  enum class Space : std::uint8_t { usual, close, least } space = Space::usual;
};
using Signals = CardWay::Signals;
using Pictures = CardWay::Pictures;
constexpr Way ways[] = {
    {"asking, photo, columns", {.asks = true, .pictures = Pictures::all}},
    {"asking, figure, columns", {.asks = true, .pictures = Pictures::figure}},
    {"photo, columns", {.pictures = Pictures::all}},
    {"photo, run-in", {.signals = Signals::run_in, .pictures = Pictures::all}},
    {"figure, columns", {.pictures = Pictures::figure}},
    {"figure, run-in", {.signals = Signals::run_in, .pictures = Pictures::figure}},
    {"asking, columns", {.asks = true}},
    {"columns", {}},
    {"run-in", {.signals = Signals::run_in}},
    {"close", {.signals = Signals::run_in}, Way::Space::close},
    {"brief", {.signals = Signals::run_in, .brief = true}, Way::Space::least},
};
/// Of lines in what is set closely: 1.17 from baseline to baseline.
constexpr double close_leading = 0.94;
double leading(const Way& way) {
  return way.space == Way::Space::usual ? 1 : close_leading;
}
std::optional<Length> rhythm(const Way& way, PaperClass paper) {
  const bool small = paper == PaperClass::small;
  switch (way.space) {
    case Way::Space::close:
      return small ? Length::mm(2) : Length::mm(2.5);
    case Way::Space::least:
      return small ? Length::mm(1.6) : Length::mm(2);
    case Way::Space::usual:
      break;
  }
  return std::nullopt;
}

struct LabelEdge {
  Length width;
  bool words_fit = false;  ///< signal words, too
};

/// Those that make sense of this card, all different.
std::vector<Way> ways_of(const CardMaker& maker, const LabelEdge& edge) {
  std::vector<Way> out;
  for (const Way& way : ways) {
    const CardWay& wanted = way.arrangement;
    if ((wanted.asks && !maker.asks()) || !maker.has(wanted.pictures)) continue;
    if (wanted.signals == Signals::hanging && !edge.words_fit && !wanted.asks) continue;
    out.push_back(way);
    if (!edge.words_fit) out.back().arrangement.signals = Signals::run_in;
  }
  return out;
}

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

/// A front whose type can grow so far, of PageRequest::steps, is not crammed.
constexpr int comfortable = 3;

/// Fronts that keep less and less, each arranged as well as it can be; at last the card flows from
/// its front on. What no work waits for goes over before the front is crammed.
std::vector<Division> divisions_of(const CardMaker& maker, const LabelEdge& edge,
                                   PaperClass paper) {
  struct Named {
    std::string_view name;
    Front front;
  };
  constexpr Named roomy[] = {{"all but history", {Kept::advice}}, {"plan", {Kept::plan}}};
  constexpr Named hand{"hand", {Kept::hand}};
  constexpr Named fewer[] = {{"work", {Kept::work}},
                             {"work, no cautions", {Kept::work, false}},
                             {"cautions", {Kept::cautions}},
                             {"trim", {Kept::trim}},
                             {"door", {Kept::door}}};
  std::vector<Division> out;
  const auto add = [&](const Named& named, const Way& way, std::optional<int> least_step) {
    if (way.arrangement.asks) return;
    const Front front = named.front;
    using Other = CardMaker::Other;
    const auto rest = [&maker, way, front](Signals signals, Other other) -> Division::Pieces {
      return [&maker, way, front, signals, other] {
        return maker.rest(way.arrangement, front, signals, other);
      };
    };
    out.push_back({fmt::format("{}, {}", named.name, way.name),
                   [&maker, way, front] { return maker.front(way.arrangement, front); },
                   {rest(Signals::hanging, Other::filled), rest(Signals::hanging, Other::needed),
                    rest(Signals::run_in, Other::needed)},
                   rhythm(way, paper),
                   leading(way)});
    out.back().least_step = least_step;
  };
  const std::vector<Way> all = ways_of(maker, edge);
  for (const int least_step : {comfortable, 0}) {
    for (const Named& named : roomy) {
      for (const Way& way : all) {
        if (way.space == Way::Space::usual) add(named, way, least_step);
      }
    }
  }
  for (const Way& way : all) {
    if (way.space == Way::Space::usual) add(hand, way, 0);
  }
  for (const Named& named : roomy) {
    for (const Way& way : all) add(named, way, {});
  }
  for (const Way& way : all) add(hand, way, {});
  for (const Named& named : fewer) {
    for (const Way& way : all) add(named, way, {});
  }
  out.push_back({"flowing",
                 {},
                 {[&maker] { return maker.all(); }},
                 rhythm(ways[std::size(ways) - 2], paper)});
  return out;
}
}  // namespace

std::optional<Sheet> make_card(const SheetDesk& desk, DiagnosticSink& sink) {
  const SheetInput& input = desk.input;
  const PaperClass paper = paper_class(input.paper);
  const bool small = paper == PaperClass::small;
  PageRequest request = page_request(input);
  if (small) request.margins = {8_mm, 8_mm, 8_mm, 8_mm};
  request.free_top = small ? clip_zone_small : clip_zone;
  request.rhythm = small ? 3_mm : 4_mm;
  const LabelEdge edge = label_edge(request, desk.voice);
  const CardMaker maker(desk, edge.width);
  for (const Way& way : ways_of(maker, edge)) {
    const CardWay arrangement = way.arrangement;
    request.layouts.push_back(
        {std::string(way.name),
         [&maker, arrangement] { return column(maker.front(arrangement, Front{})); },
         rhythm(way, paper), leading(way)});
  }
  request.divisions = divisions_of(maker, edge, paper);
  const std::string title = desk.voice.words.say(Phrase::card_title, {input.pet.name.value});
  go_on(request, desk, maker.foot(), maker.foot(), title, maker.hurts());
  auto page = compose(request, desk.voice.shaper, sink);
  if (!page) return std::nullopt;
  return finished(*std::move(page), desk, title, Phrase::card_subject);
}
}  // namespace furnish
