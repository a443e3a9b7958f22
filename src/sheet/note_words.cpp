#include "sheet/note_words.h"

#include <algorithm>

#include "base/text.h"
#include "plan/consents.h"
#include "sheet/alerts.h"
#include "sheet/figure_text.h"
#include "sheet/note_rows.h"
#include "sheet/parts.h"
#include "sheet/shown.h"
#include "sheet/terms.h"
#include "sheet/trim_lines.h"

namespace furnish {
namespace {
/// Days in what the page calls a month of growth.
constexpr double month_of_growth = 30;

/// What must not be missed, and what to do about it.
struct NoteAlert {
  Gravity gravity;
  Phrase signal;
  std::string statement;
  Phrase action;
  SourceSpan span;
};

AlertEntry entry(NoteAlert alert, const Words& words) {
  AlertEntry out;
  out.gravity = alert.gravity;
  out.word = words.say(alert.signal);
  out.statement = std::move(alert.statement);
  out.action = words.say(alert.action);
  out.origin = {"alert", alert.span};
  out.role = Role::action;
  return out;
}

/// True if it is seen when the dog is drawn from `side`.
bool seen_from(Side side, Place place) {
  return place.side == Side::both || place.side == side;
}

/// Measured, else by what was done, else by the trim. Drawn in the middle of what is known of a
/// region, whichever side the length is of.
void draw_as_it_left(FigureInput& figure, const NoteDesk& desk) {
  for (const RegionGrowth& row : desk.input.plan.growth) {
    if (!seen_from(figure.side, row.place)) continue;
    figure.left[static_cast<std::size_t>(row.place.region)] = row.left;
  }
}

/// A visit that was not done left nothing: what was planned is no length that was cut. Measured,
/// else what was expected of it by the day, where there was a visit before.
void draw_unfinished(FigureInput& figure, const NoteDesk& desk) {
  if (desk.note.history.size() > 1) {
    for (const RegionGrowth& row : desk.note.before.growth) {
      if (!seen_from(figure.side, row.place)) continue;
      figure.left[static_cast<std::size_t>(row.place.region)] = row.today;
    }
  }
  for (const RegionState& state : desk.note.visit.came_in.regions) {
    if (!state.length || !seen_from(figure.side, state.place)) continue;
    figure.left[static_cast<std::size_t>(state.place.region)] =
        LengthRange{*state.length, *state.length};
  }
}

/// Measured, else what was expected of it by the day, where there was a visit before.
void draw_as_it_came(FigureInput& figure, const NoteDesk& desk) {
  if (desk.note.history.size() > 1) {
    for (const RegionGrowth& row : desk.note.before.growth) {
      const auto region = static_cast<std::size_t>(row.place.region);
      if (!seen_from(figure.side, row.place) || !figure.left[region]) continue;
      figure.came_in[region] = row.today;
    }
  }
  for (const RegionState& state : desk.note.visit.came_in.regions) {
    if (!state.length || !seen_from(figure.side, state.place)) continue;
    figure.came_in[static_cast<std::size_t>(state.place.region)] =
        LengthRange{*state.length, *state.length};
  }
}
}  // namespace

std::vector<AlertEntry> note_alerts(const NoteDesk& desk) {
  const Words& words = desk.voice.words;
  std::vector<AlertEntry> out;
  for (const RegionState& state : desk.note.visit.came_in.regions) {
    if (!state.encircling) continue;
    const std::string where = places_text({state.place}, desk.voice);
    out.push_back(entry({Gravity::row, Phrase::danger, words.say(Phrase::note_mat_round, {where}),
                         Phrase::note_mat_round_do, state.span},
                        words));
  }
  // Only a weight of this visit is news here.
  const WeightChange* const change = weight_lost(desk.input.plan.health);
  if (const auto& weight = desk.note.visit.weight; change != nullptr && weight) {
    const std::string from = shown(change->before.weight, desk.voice);
    const std::string to = shown(weight->value, desk.voice);
    out.push_back(
        entry({Gravity::hairline, Phrase::notice, words.say(Phrase::note_weight_lost, {from, to}),
               Phrase::note_weight_lost_do, weight->span},
              words));
  }
  if (!desk.staff()) {
    for (AlertEntry& one : alert_entries(desk, CautionScope::none)) {
      one.role = Role::action;
      out.push_back(std::move(one));
    }
    std::ranges::stable_sort(out, {}, &AlertEntry::gravity);
  }
  return out;
}

std::vector<OwnLine> note_signatures(const NoteDesk& desk) {
  const Words& words = desk.voice.words;
  std::vector<OwnLine> out;
  for (const Consent& consent : desk.note.visit.consents) {
    if (!consent.by.empty() && consent.on) continue;
    const OwnWords to = own_words(consent.to, desk.voice);
    const std::string by = words.written(consent.by);
    if (!to.language.empty()) {
      out.push_back({lead_in(by, to.language, desk.voice),
                     stand_apart({sentence(to.text)}, to.language, desk.voice)});
    } else {
      out.push_back({sentence(by.empty() ? to.text : to.text + colon(words) + by)});
    }
  }
  const Plan& plan = desk.input.plan;
  if (desk.note.visit.work == Work::not_done) return out;  // nobody agrees to what was not done
  for (const ConsentTo what : consents_missing(desk.note.visit, desk.input.pet, plan.growth,
                                               plan.cautions, desk.input.salon.language)) {
    const bool mats = what == ConsentTo::cutting_out;
    out.push_back(
        {sentence(words.say(mats ? Phrase::note_consent_mats : Phrase::note_consent_short))});
  }
  return out;
}

FigureInput note_figure(const NoteDesk& desk, Side side) {
  const Pet& pet = desk.input.pet;
  FigureInput figure = figure_of(pet, desk.input.plan);
  figure.side = side;
  const bool open = desk.note.visit.work != Work::done;
  if (open) {
    draw_unfinished(figure, desk);
  } else {
    draw_as_it_left(figure, desk);
    draw_as_it_came(figure, desk);
  }
  int number = 0;
  for (const Finding* finding : note_findings(desk)) {
    figure.spots.push_back({finding->place.value, SpotKind::finding, ++number});
  }
  const Phrase lead = open ? Phrase::note_figure_open : Phrase::note_figure;
  figure.alt = figure_text(figure, desk.voice.words.say(lead, {pet.name.value}), desk.voice,
                           open ? FigureSays::shape : FigureSays::lengths);
  return figure;
}

bool note_needs_both_sides(const NoteDesk& desk) {
  return std::ranges::any_of(note_findings(desk), [](const Finding* finding) {
    return finding->place.value.side == Side::right;
  });
}

std::string growth_learned(const NoteDesk& desk) {
  const Rate* best = nullptr;
  for (const RegionGrowth& row : desk.input.plan.growth) {
    if (row.rate.basis != RateBasis::measured) continue;
    if (best == nullptr || row.rate.measurements > best->measurements) best = &row.rate;
  }
  if (best == nullptr) return {};
  const auto in_a_month = [](double um_per_day) {
    return Length::micrometres(static_cast<std::int64_t>(um_per_day * month_of_growth + 0.5));
  };
  const LengthRange month{in_a_month(best->low), in_a_month(best->high)};
  return desk.voice.words.say(Phrase::note_growth, {shown(month, desk.voice), best->visits});
}
}  // namespace furnish
