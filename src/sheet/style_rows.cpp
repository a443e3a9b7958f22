#include "sheet/style_rows.h"

#include <algorithm>
#include <map>
#include <tuple>

#include "base/text.h"
#include "plan/places.h"
#include "sheet/figure_text.h"
#include "sheet/last_time.h"
#include "sheet/trim_lines.h"

namespace furnish {
namespace {
/// A place's cut in the order of work: which time a tool is taken in hand, and the step.
struct Turn {
  int tool_turn = 0;
  const WorkStep* step = nullptr;
};

std::vector<Turn> turns_of(const std::vector<WorkStep>& order) {
  std::vector<Turn> turns;
  for (const WorkStep& step : order) {
    if (step.task != Task::cut || !step.tool) continue;
    const bool goes_on = !turns.empty() && turns.back().step->tool == step.tool &&
                         turns.back().step->substitute == step.substitute;
    const int before = turns.empty() ? -1 : turns.back().tool_turn;
    turns.push_back({goes_on ? before : before + 1, &step});
  }
  return turns;
}

const Turn* turn_of(Place place, const std::vector<Turn>& turns) {
  const auto found = std::ranges::find_if(turns, [&](const Turn& turn) {
    return std::ranges::any_of(turn.step->places, [&](Place one) { return meets(one, place); });
  });
  return found == turns.end() ? nullptr : &*found;
}

std::string stance_text(Stance stance, const Words& words) {
  switch (stance) {
    case Stance::facing:
      return words.say(Phrase::stance_facing);
    case Stance::from_behind:
      return words.say(Phrase::stance_behind);
    case Stance::foot_lifted:
      return words.say(Phrase::stance_foot);
    case Stance::forelegs_lifted:
      return words.say(Phrase::stance_forelegs);
    case Stance::standing:
      break;
  }
  return {};
}

/// The finish that the pet or the style asks for on a region that has one.
std::string finish_of(Region region, const Pet& pet) {
  const auto part = finish_part(region);
  const FinishLine* const line = part ? find_line(pet.finish, *part) : nullptr;
  return line == nullptr ? std::string() : line->words.value;
}

class RowMaker {
 public:
  explicit RowMaker(const SheetDesk& desk)
      : input_(desk.input), voice_(desk.voice), turns_(turns_of(desk.input.plan.order)) {}

  std::vector<StyleRow> all() {
    no_tool();
    for (const TrimPart& part : input_.pet.trim) {
      const auto place = workable(part.place, input_.pet.alerts);
      if (place) add(part, *place);
    }
    std::ranges::stable_sort(rows_, {}, [](const Draft& draft) {
      return std::tuple(draft.row.kind, draft.turn, draft.row.wash_first);
    });
    std::vector<StyleRow> out;
    for (Draft& draft : rows_) {
      StyleRow& row = draft.row;
      row.number = static_cast<int>(out.size()) + 1;
      row.opens_group = out.empty() || out.back().kind != row.kind || out.back().tool != row.tool;
      row.names = names(draft);
      out.push_back(std::move(row));
    }
    for (const Caution& one : input_.plan.standing) stand(one, out);
    return out;
  }

 private:
  struct Draft {
    StyleRow row;
    TrimLine line;
    int turn = 0;
    bool whole = true;  ///< no part of it lost a side to an alert
  };

  /// In the first row that works on one of its places; what was accepted is said as accepted.
  static void stand(const Caution& one, std::vector<StyleRow>& rows) {
    if (one.accepted) return;
    const auto first = std::ranges::find_if(rows, [&](const StyleRow& row) {
      return row.kind == RowKind::cut && std::ranges::any_of(row.places, [&](Place place) {
               return std::ranges::any_of(one.places, [&](Place at) { return meets(at, place); });
             });
    });
    if (first == rows.end()) return;
    const auto same = std::ranges::find_if(
        first->standing, [&](const Caution* other) { return other->instead == one.instead; });
    if (same == first->standing.end()) first->standing.push_back(&one);
  }

  void no_tool() {
    Draft draft;
    for (const Alert& alert : input_.pet.alerts) {
      for (const auto& avoid : alert.avoid) {
        if (std::ranges::find(draft.row.places, avoid.value) == draft.row.places.end()) {
          draft.row.places.push_back(avoid.value);
        }
      }
    }
    if (draft.row.places.empty()) return;
    draft.row.kind = RowKind::no_tool;
    draft.row.tool = voice_.words.say(Phrase::no_tool);
    draft.row.differs = true;
    rows_.push_back(std::move(draft));
  }

  void add(const TrimPart& part, Place place) {
    Draft draft;
    StyleRow& row = draft.row;
    row.part = &part;
    row.differs = input_.pet.style && part.differs();
    row.finish = finish_of(place.region, input_.pet);
    draft.whole = place == part.place;
    const PartLength* length = find_length(input_.plan.lengths, part.place);
    row.left = length != nullptr ? length->left : std::nullopt;
    row.natural = length != nullptr && length->basis == LengthBasis::natural;
    if (const Turn* turn = turn_of(place, turns_)) {
      draft.turn = turn->tool_turn;
      row.tool = capitalised(tool_text(*turn->step->tool, voice_));
      row.kind_of_tool = kind_of(*turn->step->tool);
      row.stance = stance_text(turn->step->stance, voice_.words);
      row.wash_first =
          std::ranges::find(turn->step->how, Method::wash_first) != turn->step->how.end();
      if (const DrawerGap* gap = find_gap(input_.plan.drawer, place)) {
        row.instead = instead_text(*gap);
      }
    } else {
      row.kind = RowKind::brush;
      row.tool = capitalised(tool_text(part.entry.tool, voice_));
      row.kind_of_tool = kind_of(part.entry.tool);
    }
    const auto same =
        std::ranges::find_if(rows_, [&](const Draft& other) { return alike(other, draft); });
    Draft& into = same != rows_.end() ? *same : rows_.emplace_back(std::move(draft));
    if (same != rows_.end()) {
      if (into.row.stance != row.stance) into.row.stance.clear();
      into.whole = into.whole && draft.whole;
    }
    into.row.places.push_back(place);
    into.line.parts.push_back(&part);
  }

  /// One tool for both in one line would send it from there to the face.
  static bool soils(Region a, Region b) {
    const auto face = [](Region region) {
      return in_group(region, Group::head) || region == Region::eyes;
    };
    return (is_soiled(a) && face(b)) || (is_soiled(b) && face(a));
  }

  /// True if nothing but the place is its own.
  static bool alike(const Draft& a, const Draft& b) {
    if (a.row.part == nullptr || a.row.kind != b.row.kind || a.turn != b.turn) return false;
    return same_work(a.row.part->entry, b.row.part->entry) && a.row.differs == b.row.differs &&
           !soils(a.row.part->place.region, b.row.part->place.region) &&
           a.row.wash_first == b.row.wash_first && a.row.finish == b.row.finish &&
           a.row.instead == b.row.instead && (a.row.natural || a.row.left == b.row.left);
  }

  /// What the tool of the row stands in for: the tool itself is said already.
  std::string instead_text(const DrawerGap& gap) const {
    const Words& words = voice_.words;
    const std::string wanted = tool_text(gap.wanted, voice_);
    if (!gap.use) return words.say(Phrase::nothing_near, {wanted});
    return words.say(Phrase::stands_in, {wanted, length_change(gap, voice_)});
  }

  std::string names(Draft& draft) const {
    if (!draft.whole || draft.line.parts.empty()) return places_text(draft.row.places, voice_);
    name_line(draft.line, voice_);
    return draft.line.places;
  }

  const SheetInput& input_;
  const SheetVoice& voice_;
  std::vector<Turn> turns_;
  std::vector<Draft> rows_;
};
}  // namespace

std::vector<StyleRow> style_rows(const SheetDesk& desk) {
  return RowMaker(desk).all();
}

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
    for (const Place place : row.places) {
      if (place.side != Side::both && place.side != figure.side) continue;
      callout.regions.push_back(place.region);
      if (row.kind_of_tool) figure.tools[static_cast<std::size_t>(place.region)] = row.kind_of_tool;
    }
    // What is on the other side alone is in the table: a disc here would point at the wrong one.
    if (!callout.regions.empty()) figure.callouts.push_back(std::move(callout));
  }
  figure.alt = figure_text(figure, voice.words.written(input.pet.name.value), voice);
  return figure;
}
}  // namespace furnish
