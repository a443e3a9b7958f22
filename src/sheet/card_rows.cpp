#include "sheet/card_rows.h"

#include <algorithm>
#include <utility>

#include "sheet/last_time.h"
#include "sheet/style_words.h"
#include "sheet/vaccinations.h"

namespace furnish {

std::vector<CardRow> card_rows(const SheetDesk& desk, StyleLines lines) {
  std::vector<CardRow> rows = dog_rows(desk);
  std::ranges::move(work_rows(desk, lines), std::back_inserter(rows));
  return rows;
}

std::vector<SheetRow> history_rows(const SheetDesk& desk) {
  std::vector<SheetRow> out;
  if (auto shots = vaccinations_row(desk)) out.push_back(*std::move(shots));
  SheetRow visits{desk.voice.words.say(Phrase::head_visits), {}, desk.input.pet.span};
  // The last one has a row of its own on every card.
  bool said = last_time_row(desk).has_value();
  for (SheetRow& visit : style_visits(desk)) {
    if (!std::exchange(said, false)) visits.points.push_back({std::move(visit.text), false});
  }
  if (!visits.points.empty()) out.push_back(std::move(visits));
  return out;
}

bool is_new_client(const SheetInput& input) {
  return input.latest == nullptr && !input.plan.visit_before;
}

std::vector<Phrase> card_labels() {
  return {
      Phrase::label_alerts,  Phrase::label_today,  Phrase::label_handle,   Phrase::who_health,
      Phrase::label_again,   Phrase::label_last,   Phrase::label_trim,     Phrase::label_drawer,
      Phrase::label_bath,    Phrase::label_dry,    Phrase::label_finish,   Phrase::label_not_wanted,
      Phrase::label_wishes,  Phrase::label_growth, Phrase::label_accepted, Phrase::label_collects,
      Phrase::label_due,     Phrase::label_owner,  Phrase::label_vet,      Phrase::label_weight,
      Phrase::hand_collects, Phrase::hand_due,     Phrase::initials};
}
}  // namespace furnish
