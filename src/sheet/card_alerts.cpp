#include "sheet/card_alerts.h"

#include <algorithm>

#include "sheet/alerts.h"
#include "sheet/pieces.h"

namespace furnish {
namespace {
const Alert* own_alert(const AlertEntry& entry, const Pet& pet) {
  const auto at = std::ranges::find_if(
      pet.alerts, [&](const Alert& alert) { return alert.span == entry.origin.span; });
  return at == pet.alerts.end() ? nullptr : &*at;
}

/// True if it says that no tool goes where a visit found something.
bool found_there(const AlertEntry& entry, const Plan& plan) {
  return std::ranges::any_of(plan.cautions, [&](const Caution& caution) {
    return caution.rule == RuleId::found_there && caution.span == entry.origin.span;
  });
}

/// True if it says that a planned machine's noise is what the pet fears.
bool of_noise(const AlertEntry& entry, const Plan& plan) {
  return std::ranges::any_of(plan.cautions, [&](const Caution& caution) {
    return caution.rule == RuleId::noise && caution.span == entry.origin.span;
  });
}

Kept kept(const AlertEntry& entry, const SheetInput& input) {
  if (entry.gravity <= Gravity::panel || found_there(entry, input.plan)) return Kept::door;
  // Only what is about no line of a file has no place: that a file could not be read.
  if (entry.origin.span == SourceSpan{}) return Kept::door;
  const Alert* const own = own_alert(entry, input.pet);
  if (own == nullptr && of_noise(entry, input.plan)) return Kept::cautions;
  if (own == nullptr) return entry.gravity == Gravity::bar ? Kept::plan : Kept::advice;
  if (!own->avoid.empty()) return Kept::door;
  return entry.gravity == Gravity::bar ? Kept::cautions : Kept::advice;
}

/// Notices that the front may lose, one after the other in one row; nothing of them is lost.
void put_in_one(std::vector<CardAlert>& alerts) {
  const auto joins = [](const CardAlert& alert) {
    return alert.entry.gravity == Gravity::hairline && alert.kept == Kept::advice &&
           alert.entry.apart.empty();
  };
  const auto first = std::ranges::find_if(alerts, joins);
  if (first == alerts.end()) return;
  AlertEntry one = first->entry;
  for (auto next = first + 1; next != alerts.end(); ++next) {
    if (!joins(*next)) continue;
    one.statement += (one.action.empty() ? "" : " " + one.action) + " " + next->entry.statement;
    one.action = next->entry.action;
  }
  std::erase_if(alerts, joins);
  alerts.push_back({std::move(one), Kept::advice});
}
}  // namespace

std::vector<CardAlert> card_alerts(const SheetDesk& desk, Notices notices) {
  std::vector<CardAlert> out;
  for (AlertEntry& entry : alert_entries(desk, CautionScope::card)) {
    entry.word_role = Role::label;
    // Read by who stops to read; what can hurt is seen by who passes.
    if (entry.gravity > Gravity::panel) entry.role = Role::body;
    const Kept keeps = kept(entry, desk.input);
    out.push_back({std::move(entry), keeps});
  }
  if (notices == Notices::in_one) put_in_one(out);
  return out;
}

std::vector<AlertEntry> cut(const AlertEntry& entry) {
  std::vector<AlertEntry> out;
  const auto piece = [&]() -> AlertEntry& {
    AlertEntry next = entry;
    next.statement.clear();
    next.action.clear();
    next.apart = {};
    // It goes on: the word is said once, and a panel is the ground of a word.
    if (!out.empty()) {
      next.word.clear();
      if (next.gravity == Gravity::panel) next.gravity = Gravity::bar;
    }
    return out.emplace_back(std::move(next));
  };
  for (std::string& text : cut_text(entry.statement)) piece().statement = std::move(text);
  bool first = true;
  for (std::string& text : cut_text(entry.action)) {
    // What is short stays with what it is about.
    const bool joins = first && !out.empty() && fits_piece(out.back().statement + text);
    (joins ? out.back() : piece()).action = std::move(text);
    first = false;
  }
  if (out.empty()) piece();
  if (!entry.apart.empty()) {
    std::string all;
    for (const TextSpan& span : entry.apart.spans) all += span.text;
    if (fits_piece(out.back().statement + out.back().action + all)) {
      out.back().apart = entry.apart;
    } else {
      for (std::string& text : cut_text(all)) {
        piece().apart = {{{std::move(text)}}, entry.apart.language};
      }
    }
  }
  return out;
}
}  // namespace furnish
