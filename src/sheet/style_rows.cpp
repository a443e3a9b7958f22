#include "sheet/style_rows.h"

#include <algorithm>
#include <tuple>

#include "base/text.h"
#include "plan/places.h"
#include "plan/restraints.h"
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
      return std::tuple(draft.row.kind, draft.turn, draft.row.wash_first, draft.step);
    });
    share_numbers(RowKind::cut);
    if (rows_.size() > most_numbers) share_numbers(RowKind::brush);
    std::vector<StyleRow> out;
    for (Draft& draft : rows_) {
      StyleRow& row = draft.row;
      row.number = static_cast<int>(out.size()) + 1;
      row.opens_group = out.empty() || out.back().kind != row.kind || out.back().tool != row.tool;
      if (row.kind != RowKind::no_tool) {
        row.restraints = restraints(input_.plan.cautions, row.places);
      }
      out.push_back(std::move(row));
    }
    for (const Caution& one : input_.plan.standing) stand(one, out);
    return out;
  }

 private:
  /// A row; until rows are put together it has one part.
  struct Draft {
    StyleRow row;
    TrimLine line;
    int turn = 0, step = 0;  ///< of the first place, in the order of work
    bool whole = true;       ///< no part of it lost a side to an alert
    RowPart& part() { return row.parts.front(); }
    const RowPart& part() const { return row.parts.front(); }
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
    draft.row.parts.resize(1);
    for (const Alert& alert : input_.pet.alerts) {
      for (const auto& avoid : alert.avoid) {
        if (std::ranges::find(draft.part().places, avoid.value) == draft.part().places.end()) {
          draft.part().places.push_back(avoid.value);
        }
      }
    }
    if (draft.part().places.empty()) return;
    draft.row.kind = RowKind::no_tool;
    draft.row.tool = voice_.words.say(Phrase::no_tool);
    draft.row.differs = true;
    rows_.push_back(std::move(draft));
  }

  void add(const TrimPart& part, Place place) {
    Draft draft;
    StyleRow& row = draft.row;
    row.parts.resize(1);
    draft.part().part = &part;
    draft.part().finish = finish_of(place.region, input_.pet);
    row.differs = input_.pet.style && part.differs();
    const bool whole = place == part.place;
    const PartLength* length = find_length(input_.plan.lengths, part.place);
    row.left = length != nullptr ? length->left : std::nullopt;
    row.natural = length != nullptr && length->basis == LengthBasis::natural;
    if (const Turn* turn = turn_of(place, turns_)) {
      draft.turn = turn->tool_turn;
      draft.step = static_cast<int>(turn - turns_.data());
      row.tool = capitalised(tool_text(*turn->step->tool, voice_));
      row.kind_of_tool = kind_of(*turn->step->tool);
      row.wash_first =
          std::ranges::find(turn->step->how, Method::wash_first) != turn->step->how.end();
      if (const DrawerGap* gap = find_gap(input_.plan.drawer, place)) {
        draft.part().instead = instead_text(*gap);
      }
    } else {
      row.kind = RowKind::brush;
      const bool bare = input_.pet.coat == Coat::hairless;
      row.tool = capitalised(bare ? voice_.words.say(Phrase::brush_bare)
                                  : tool_text(part.entry.tool, voice_));
      row.kind_of_tool = kind_of(part.entry.tool);
    }
    const auto same =
        std::ranges::find_if(rows_, [&](const Draft& other) { return alike(other, draft); });
    const bool found = same != rows_.end();
    Draft& into = found ? *same : rows_.emplace_back(std::move(draft));
    into.whole = into.whole && whole;
    into.part().places.push_back(place);
    into.line.parts.push_back(&part);
  }

  /// Rows of this kind that are cut alike become one, under the number of the first; each then has
  /// its places and their names.
  void share_numbers(RowKind kind) {
    for (auto at = rows_.begin(); at != rows_.end(); ++at) {
      if (at->row.names.empty()) name(*at);
      for (auto other = at + 1; other != rows_.end();) {
        const bool share = at->row.kind == kind && cut_alike(*at, *other);
        if (!share) {
          ++other;
          continue;
        }
        if (other->row.names.empty()) name(*other);
        std::ranges::copy(other->row.places, std::back_inserter(at->row.places));
        std::ranges::move(other->row.parts, std::back_inserter(at->row.parts));
        other = rows_.erase(other);
      }
      if (at->row.parts.size() > 1) at->row.names = places_text(at->row.places, voice_);
    }
  }

  void name(Draft& draft) const {
    draft.part().names = names(draft);
    draft.row.places = draft.part().places;
    draft.row.names = draft.part().names;
  }

  /// One tool for both in one line would send it from there to the face.
  static bool soils(Region a, Region b) {
    const auto face = [](Region region) {
      return in_group(region, Group::head) || region == Region::eyes;
    };
    return (is_soiled(a) && face(b)) || (is_soiled(b) && face(a));
  }

  bool restrained(const RowPart& part) const {
    return !restraints(input_.plan.cautions, part.places).empty();
  }
  Lay lay_of(const RowPart& part) const { return taken(*part.part, input_.plan.cautions).lay; }

  /// True if they share a number on the figure, whatever their notes say.
  bool cut_alike(const Draft& a, const Draft& b) const {
    const RowPart &one = a.part(), &two = b.part();
    if (one.part == nullptr || two.part == nullptr) return false;
    if (a.row.kind != b.row.kind || a.turn != b.turn || a.row.tool != b.row.tool) return false;
    const bool soiling = std::ranges::any_of(a.row.parts, [&](const RowPart& part) {
      return soils(part.part->place.region, two.part->place.region);
    });
    return !soiling && a.row.differs == b.row.differs && a.row.wash_first == b.row.wash_first &&
           lay_of(one) == lay_of(two) && restrained(one) == restrained(two) &&
           (a.row.natural ? b.row.natural : a.row.left == b.row.left);
  }

  /// True if nothing but the place is its own.
  static bool alike(const Draft& a, const Draft& b) {
    const RowPart &one = a.part(), &two = b.part();
    if (one.part == nullptr || a.row.kind != b.row.kind || a.turn != b.turn) return false;
    return same_work(one.part->entry, two.part->entry) && a.row.differs == b.row.differs &&
           !soils(one.part->place.region, two.part->place.region) &&
           a.row.wash_first == b.row.wash_first && one.finish == two.finish &&
           one.instead == two.instead && (a.row.natural || a.row.left == b.row.left);
  }

  /// What the tool of the row stands in for: the tool itself is said already.
  std::string instead_text(const DrawerGap& gap) const {
    const Words& words = voice_.words;
    const std::string wanted = tool_text(gap.wanted, voice_);
    if (!gap.use) return words.say(Phrase::nothing_near, {wanted});
    return words.say(Phrase::stands_in, {wanted, length_change(gap, voice_)});
  }

  std::string names(Draft& draft) const {
    if (!draft.whole || draft.line.parts.empty()) return places_text(draft.part().places, voice_);
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
}  // namespace furnish
