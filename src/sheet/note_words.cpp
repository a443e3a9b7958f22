#include <algorithm>
#include <set>

#include "base/text.h"
#include "plan/consents.h"
#include "sheet/card_rows.h"
#include "sheet/figure_text.h"
#include "sheet/note_parts.h"
#include "sheet/shown.h"
#include "sheet/trim_lines.h"

namespace furnish {
namespace {
/// Days in what the page calls a month of growth.
constexpr double month_of_growth = 30;

std::size_t index(Region region) {
  return static_cast<std::size_t>(region);
}

AlertEntry entry(Gravity gravity, Phrase word, std::string statement, std::string action,
                 SourceSpan span, const NoteDesk& desk) {
  AlertEntry out;
  out.gravity = gravity;
  out.word = desk.voice.words.say(word);
  out.statement = std::move(statement);
  out.action = std::move(action);
  out.origin = {"alert", span};
  out.role = Role::action;
  return out;
}
}  // namespace

std::vector<AlertEntry> note_alerts(const NoteDesk& desk) {
  const Words& words = desk.voice.words;
  std::vector<AlertEntry> out;
  for (const RegionState& state : desk.note.visit.came_in.regions) {
    if (!state.encircling) continue;
    const std::string where = places_text({state.place}, desk.voice);
    out.push_back(entry(Gravity::row, Phrase::danger, words.say(Phrase::note_mat_round, {where}),
                        words.say(Phrase::note_mat_round_do), state.span, desk));
  }
  const Health& health = desk.input.plan.health;
  const WeightChange* const change = weight_lost(health);
  // Only a weight of this visit is news here.
  if (change != nullptr && desk.note.visit.weight) {
    const std::string from = shown(change->before.weight, desk.voice);
    const std::string to = shown(desk.note.visit.weight->value, desk.voice);
    out.push_back(
        entry(Gravity::hairline, Phrase::notice, words.say(Phrase::note_weight_lost, {from, to}),
              words.say(Phrase::note_weight_lost_do), desk.note.visit.weight->span, desk));
  }
  if (!desk.staff()) {
    for (AlertEntry& one : alert_entries(desk.input, desk.voice, CautionScope::none)) {
      one.role = Role::action;
      out.push_back(std::move(one));
    }
    std::ranges::stable_sort(out, {}, &AlertEntry::gravity);
  }
  return out;
}

std::vector<std::string> note_signatures(const NoteDesk& desk) {
  const Words& words = desk.voice.words;
  std::vector<std::string> out;
  for (const Consent& consent : desk.note.visit.consents) {
    if (!consent.by.empty() && consent.on) continue;
    std::string text = words.written(consent.to);
    if (!consent.by.empty()) text += ": " + words.written(consent.by);
    out.push_back(sentence(text));
  }
  const Plan& plan = desk.input.plan;
  for (const ConsentTo what : consents_missing(desk.note.visit, desk.input.pet, plan.growth,
                                               plan.cautions, desk.input.salon.language)) {
    const bool mats = what == ConsentTo::cutting_out;
    out.push_back(
        sentence(words.say(mats ? Phrase::note_consent_mats : Phrase::note_consent_short)));
  }
  return out;
}

FigureInput note_figure(const NoteDesk& desk, Side side) {
  FigureInput figure;
  const Pet& pet = desk.input.pet;
  figure.build = pet.build;
  figure.coat = pet.coat;
  if (const auto& weight = desk.input.plan.health.weight) figure.weight = weight->weight;
  // As it left: measured, else by what was done, else by the trim. Drawn in the middle of what is
  // known of a region, whichever side the length is of.
  for (const RegionGrowth& row : desk.input.plan.growth) {
    if (row.place.side != Side::both && row.place.side != side) continue;
    figure.left[index(row.place.region)] = row.left;
  }
  // As it came: measured, else what was expected of it by the day, where there was a visit before.
  if (desk.note.history.size() > 1) {
    for (const RegionGrowth& row : desk.note.before.growth) {
      if (row.place.side != Side::both && row.place.side != side) continue;
      if (figure.left[index(row.place.region)]) {
        figure.came_in[index(row.place.region)] = row.today;
      }
    }
  }
  for (const RegionState& state : desk.note.visit.came_in.regions) {
    if (!state.length || (state.place.side != Side::both && state.place.side != side)) continue;
    figure.came_in[index(state.place.region)] = LengthRange{*state.length, *state.length};
  }
  if (pet.style) figure.stepped = pet.style->lines;
  int number = 0;
  for (const Finding* finding : note_findings(desk)) {
    figure.spots.push_back({finding->place.value, SpotKind::finding, ++number});
  }
  figure.side = side;
  figure.alt =
      figure_text(figure, desk.voice.words.say(Phrase::note_figure, {pet.name.value}), desk.voice);
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
