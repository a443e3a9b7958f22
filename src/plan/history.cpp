#include "plan/history.h"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>

#include "base/diagnostic.h"

namespace furnish {
namespace {
/// The same order for the same visits: by day and number, by file and line, and where those are
/// alike by content.
auto rank(const Visit* visit) {
  return std::tuple(visit->date.value, visit->number, visit->date.span.file, visit->date.span.begin,
                    visit->minutes ? visit->minutes->count() : -1,
                    visit->weight ? visit->weight->value.ug() : -1, visit->groomer);
}
std::vector<const Visit*> counted(const Pet& pet, std::span<const Visit> visits, Date today,
                                  DiagnosticSink& sink) {
  std::vector<const Visit*> all;
  for (const Visit& visit : visits) all.push_back(&visit);
  std::ranges::stable_sort(all, {}, rank);
  std::vector<const Visit*> out;
  for (const Visit* const visit : all) {
    const Date date = visit->date.value;
    if (date > today) {
      sink.warning("visit-after-today", visit->date.span,
                   fmt::format("this visit, {}, is after today, {}: it is not counted",
                               to_iso(date), to_iso(today)));
    } else if (pet.born && date < pet.born->value) {
      sink.warning("visit-before-birth", visit->date.span,
                   fmt::format("this visit, {}, is before {} was born, {}: it is not counted",
                               to_iso(date), pet.name.value, to_iso(*pet.born)))
          .notes.emplace_back(pet.born->span, "born here");
    } else {
      out.push_back(visit);
    }
  }
  return out;
}
}  // namespace

std::vector<const Visit*> history(const Pet& pet, std::span<const Visit> visits, Date today,
                                  DiagnosticSink& sink) {
  std::vector<const Visit*> out = counted(pet, visits, today, sink);
  std::erase_if(out, [&](const Visit* visit) {
    if (visit->work == Work::unfinished && visit->date.value < today) {
      sink.warning("visit-unfinished", visit->date.span,
                   fmt::format("nobody finished this visit, {}: nothing counts as done",
                               to_iso(visit->date.value)))
          .hint = "if it was done, take `unfinished` out; if not, write `not_done` with the reason";
    } else if (visit->work == Work::unwritten) {
      sink.warning("visit-unwritten", visit->date.span,
                   fmt::format("this visit, {}, does not say what was done: nothing counts as done",
                               to_iso(visit->date.value)))
          .hint =
          "write `unfinished = false` if all went as planned, what went otherwise under [done], or "
          "`not_done` with the reason";
    }
    return visit->work != Work::done;
  });
  return out;
}

std::vector<const Visit*> seen_by(const Pet& pet, std::span<const Visit> visits, Date today) {
  DiagnosticSink unheard;  // history() has said it already
  return counted(pet, visits, today, unheard);
}

const Visit* sent_home(std::span<const Visit* const> seen) {
  const auto last =
      std::find_if_not(seen.rbegin(), seen.rend(), [](const Visit* one) { return is_open(*one); });
  return last != seen.rend() && (*last)->work == Work::not_done ? *last : nullptr;
}
}  // namespace furnish
