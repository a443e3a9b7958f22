#include "plan/open_rows.h"

#include <fmt/format.h>

#include "base/quantity.h"
#include "base/text.h"
#include "trade/mats.h"

namespace furnish {
namespace {
std::string mat_words(const MattedPlace& one) {
  std::string out = to_text(one.place) + ": ";
  if (one.grade > 0) out += mat_grade(one.grade);
  if (one.encircling) out += one.grade > 0 ? ", all round" : "a mat all round";
  return out;
}

std::string otherwise_words(const PlacedEntry& one, Units units) {
  std::string out = fmt::format("{}: {}", to_text(one.place), to_text(one.entry.tool, units));
  if (one.entry.leave) out += ", left at " + to_text(*one.entry.leave, units);
  if (!one.entry.why.empty()) out += fmt::format(" ({})", one.entry.why.value);
  return out;
}

std::string consent_words(const Consent& one) {
  std::string out = one.to.value;
  out += one.by.empty() ? ", not signed" : ", " + one.by;
  if (one.on) out += ", " + to_iso(*one.on);
  return out;
}
}  // namespace

std::vector<std::vector<std::string>> last_visit_rows(const LastVisit& last, Units units) {
  std::vector<std::vector<std::string>> rows;
  const auto row = [&](std::string label, std::string words) {
    if (!words.empty()) rows.push_back({std::move(label), std::move(words)});
  };
  row("on", to_iso(last.date) + (last.groomer.empty() ? "" : ", " + last.groomer));
  for (const MattedPlace& one : last.mats) row("matted", mat_words(one));
  row("behaviour", last.behaviour.value);
  row("helped", last.helped.value);
  for (const PlacedEntry& one : last.otherwise) row("otherwise", otherwise_words(one, units));
  if (last.weight) row("weight", to_text(*last.weight, units));
  row("told", last.told);
  if (last.next) row("agreed", to_iso(*last.next));
  for (const Consent& one : last.consents) row("consent", consent_words(one));
  if (last.photos_before + last.photos_after > 0) {
    row("photos", fmt::format("{} before, {} after", last.photos_before, last.photos_after));
  }
  return rows;
}

std::vector<std::vector<std::string>> finding_rows(const std::vector<OpenFinding>& findings) {
  std::vector<std::vector<std::string>> rows;
  for (const OpenFinding& one : findings) {
    std::string words = one.what.value;
    if (!one.advised.empty()) words += "; advised: " + one.advised.value;
    std::vector<std::string> days;
    for (const Date day : one.seen) days.push_back(to_iso(day));
    const std::string seen = one.has_history() ? joined(days, ", ") : days.back();
    rows.push_back({to_text(one.place), words, "seen " + seen});
  }
  return rows;
}
}  // namespace furnish
