#include <algorithm>
#include <iterator>
#include <map>
#include <set>
#include <span>

#include "base/text.h"
#include "plan/places.h"
#include "plan/restraints.h"
#include "sheet/caution_words.h"
#include "sheet/restraint_text.h"
#include "sheet/shown.h"
#include "sheet/style_work.h"
#include "sheet/terms.h"
#include "sheet/trim_lines.h"
#include "trade/finish.h"
#include "trade/method.h"

namespace furnish {
namespace {
/// Places of a row that are worked in one position.
struct Worked {
  const StyleRow* row;
  const WorkStep* step;  ///< the first of them
  std::vector<Place> places;
};

const StyleRow* row_of(Place place, std::span<const StyleRow> rows) {
  const auto found = std::ranges::find_if(rows, [&](const StyleRow& row) {
    return row.kind == RowKind::cut &&
           std::ranges::any_of(row.places, [&](Place one) { return meets(one, place); });
  });
  return found == rows.end() ? nullptr : &*found;
}

/// The steps with one tool, row by row.
std::vector<Worked> worked(std::span<const WorkStep> steps, std::span<const StyleRow> rows) {
  std::vector<Worked> out;
  for (const WorkStep& step : steps) {
    for (const Place place : step.places) {
      const StyleRow* const row = row_of(place, rows);
      if (row == nullptr) continue;
      const auto same = std::ranges::find_if(out, [&](const Worked& one) {
        return one.row == row && posture(*one.step) == posture(step);
      });
      Worked& into = same != out.end() ? *same : out.emplace_back(Worked{row, &step, {}});
      into.places.push_back(place);
    }
  }
  return out;
}

/// The lines that a newer groomer needs for places of a row and their finish.
std::vector<Method> how_lines(const Worked& one) {
  std::vector<Method> lines;
  const auto add = [&](Method line) {
    const bool stands = !one.step->pose.lies || !needs_standing(line);
    if (stands && suits(line, *one.step->tool)) lines.push_back(line);
  };
  for (const Place place : one.places) {
    if (const auto method = method_of(place.region)) add(*method);
    const auto finish = finish_part(place.region);
    if (!finish) continue;
    for (const RowPart& part : one.row->parts) {
      const FinishInfo* const known = part.finish.empty() || part.part->place.region != place.region
                                          ? nullptr
                                          : find_finish(*finish, part.finish);
      if (known != nullptr) add(known->how);
    }
  }
  return lines;
}

/// Writes the rows of the order, each line for a newer groomer once.
class CutWriter {
 public:
  CutWriter(const SheetDesk& desk, WithHow with_how)
      : desk_(desk), plan_(desk.input.plan), voice_(desk.voice), with_how_(with_how) {}

  /// "11 Breeches, from behind."
  std::vector<SheetRow::Point> points(const std::vector<Worked>& all) {
    std::vector<SheetRow::Point> points;
    for (const Worked& one : all) {
      SheetRow::Point point;
      point.text.push_back({std::to_string(one.row->number) + "\u00A0", Face::semibold});
      std::string text = grouped_text(one.places, voice_);
      const std::string pose = posture_text(*one.step, voice_);
      if (!pose.empty()) text += comma(voice_.words) + pose;
      point.text.push_back({sentence(text)});
      const std::vector<Matter> held = restraints(plan_.cautions, one.places);
      if (!held.empty()) {
        point.text.push_back({" "});
        std::ranges::move(restraint_words(held, desk_), std::back_inserter(point.text));
      }
      if (with_how_ == WithHow::yes) {
        for (const Method line : how_lines(one)) {
          if (is_new(line)) point.text.push_back({" " + sentence(how_text(line, voice_.words))});
        }
      }
      // A full sheet leaves what holds with every dog to the page for the wall.
      for (const Caution* const standing : one.row->standing) {
        if (with_how_ == WithHow::no || said_of_old(*standing)) continue;
        point.text.push_back({" " + sentence(caution_text(standing->instead, voice_))});
      }
      points.push_back(std::move(point));
    }
    return points;
  }

 private:
  /// Whether it is said already, be it by a line for a newer groomer.
  bool said_of_old(const Caution& standing) {
    const bool told = std::ranges::any_of(said_, [&](Method line) {
      return (standing.rule == RuleId::ear_edge &&
              (line == Method::ears_rounded || line == Method::ears_straight)) ||
             (standing.rule == RuleId::pads && line == Method::pads);
    });
    return told || !standing_.insert(&standing).second;
  }

  /// A line may have the very words of another in it.
  bool is_new(Method line) {
    const bool said = std::ranges::any_of(said_, [&](Method other) { return says(other, line); });
    if (!said) said_.push_back(line);
    return !said;
  }

  const SheetDesk& desk_;
  const Plan& plan_;
  const SheetVoice& voice_;
  WithHow with_how_;
  std::vector<Method> said_;
  std::set<const Caution*> standing_;
};

/// Cuts that follow each other on one side of the bath, a run a row of style_before() or, after it,
/// a run a tool.
std::vector<std::span<const WorkStep>> runs_of(const std::vector<WorkStep>& order,
                                               bool before_bath) {
  const auto cut = [&](const WorkStep& step) {
    return step.task == Task::cut && step.tool && step.before_bath == before_bath;
  };
  std::vector<std::span<const WorkStep>> runs;
  const std::span all(order);
  for (std::size_t at = 0; at < all.size();) {
    std::size_t end = at;
    while (end < all.size() && cut(all[end]) &&
           (before_bath ||
            (all[end].tool == all[at].tool && all[end].substitute == all[at].substitute))) {
      ++end;
    }
    if (end > at) runs.push_back(all.subspan(at, end - at));
    at = std::max(end, at + 1);
  }
  return runs;
}
}  // namespace

std::vector<SheetRow> style_order(const std::vector<StyleRow>& rows, const SheetDesk& desk,
                                  WithHow with_how) {
  const auto& [input, voice] = desk;
  CutWriter writer(desk, with_how);
  std::vector<SheetRow> out = style_before(desk, with_how);
  const auto unwashed = runs_of(input.plan.order, true);
  const std::string label = voice.words.say(Phrase::clip_unwashed);
  std::size_t run = 0;
  for (SheetRow& row : out) {
    if (row.label != label || run >= unwashed.size()) continue;
    row.points = writer.points(worked(unwashed[run++], rows));
    // After the tools, what they are for.
    if (!row.text.empty() && !row.points.empty()) row.text.push_back({colon(voice.words)});
  }
  for (const auto& steps : runs_of(input.plan.order, false)) {
    const auto all = worked(steps, rows);
    if (all.empty()) continue;
    SheetRow row{all.front().row->tool, {}, input.pet.span};
    row.points = writer.points(all);
    out.push_back(std::move(row));
  }
  return out;
}

BlendList style_blends(const SheetDesk& desk) {
  const auto& [input, voice] = desk;
  const Words& words = voice.words;
  BlendList out{words.say(Phrase::label_blend), {}, input.pet.span};
  // Seams that end in the same place with the same shears are one blend to a groomer, and so are
  // those that begin in the same places.
  using With = std::optional<Shears>;
  std::map<std::pair<With, Place>, std::vector<Place>> into;
  for (const Blend& blend : input.plan.blends) {
    auto& from = into[{blend.with, blend.shorter}];
    if (std::ranges::find(from, blend.longer) == from.end()) from.push_back(blend.longer);
  }
  if (into.empty()) return out;
  struct Blended {
    With with;
    std::vector<Place> from, targets;
  };
  std::vector<Blended> blended;
  for (auto& [target, from] : into) {
    std::ranges::sort(from);
    const auto same = std::ranges::find_if(
        blended, [&](const Blended& one) { return one.with == target.first && one.from == from; });
    Blended& one = same != blended.end() ? *same : blended.emplace_back(target.first, from);
    one.targets.push_back(target.second);
  }
  // Shears that a place may not have are in no head that stands over it.
  const With all = into.begin()->first.first;
  const bool one_for_all =
      std::ranges::all_of(blended, [&](const Blended& one) { return one.with == all; });
  const auto with_text = [&](Shears shears) {
    return " " + words.say(Phrase::blend_with, {tool_text(Scissor{shears}, voice)});
  };
  if (one_for_all && all) out.head += with_text(*all);
  std::ranges::stable_sort(blended, {}, [](const Blended& one) { return one.targets.front(); });
  for (const Blended& one : blended) {
    std::string text = words.say(Phrase::blend_into,
                                 {places_text(one.from, voice), places_text(one.targets, voice)});
    if (!one_for_all && one.with) text += comma(words) + with_text(*one.with).substr(1);
    out.blends.push_back(capitalised(text));
  }
  return out;
}
}  // namespace furnish
