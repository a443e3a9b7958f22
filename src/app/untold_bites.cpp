#include "app/untold_bites.h"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>
#include <vector>

#include "base/diagnostic.h"
#include "base/text.h"
#include "sheet/told_words.h"
#include "spec/toml_text.h"

namespace furnish {
namespace {
bool of_bite(const FreeText& text, const Words& words) {
  return tells_of_bite(text.value, words) ||
         std::ranges::any_of(
             text.others, [&](const FreeText::In& one) { return tells_of_bite(one.text, words); });
}

bool alerted(const Pet& pet, const Words& words) {
  return std::ranges::any_of(pet.alerts, [&](const Alert& one) {
    return of_bite(one.text, words) || of_bite(one.action, words);
  });
}

/// The first text of a visit that tells of one; null if none does.
const FreeText* bite_in(const Visit& visit, const Words& words) {
  std::vector<const FreeText*> texts{&visit.came_in.behaviour, &visit.not_done};
  for (const Finding& one : visit.findings) texts.push_back(&one.what);
  const auto found =
      std::ranges::find_if(texts, [&](const FreeText* text) { return of_bite(*text, words); });
  return found == texts.end() ? nullptr : *found;
}
}  // namespace

void report_untold_bite(const Pet& pet, std::span<const Visit> visits, const Words& words,
                        const SourceSet& sources, DiagnosticSink& sink) {
  if (alerted(pet, words)) return;
  const Visit* visit = nullptr;
  const FreeText* text = nullptr;
  for (const Visit& one : visits) {
    const FreeText* const said = bite_in(one, words);
    const auto later = [](const Visit& a, const Visit& b) {
      return std::tuple(a.date.value, a.number) > std::tuple(b.date.value, b.number);
    };
    if (said == nullptr || (visit != nullptr && !later(one, *visit))) continue;
    visit = &one;
    text = said;
  }
  if (text == nullptr) return;
  sink.warning("bite-untold", text->span,
               fmt::format("this visit, {}, tells of a bite, and no alert of {} does",
                           to_iso(visit->date.value), pet.name.value))
      .hint = fmt::format(
      "write it into {}: [[alert]], then level = \"warning\", text = {} and do = \"…\", what to do "
      "about it",
      sources.at(pet.span.file).path(), toml_text::quoted(text->value));
}
}  // namespace furnish
