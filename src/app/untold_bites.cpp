#include "app/untold_bites.h"

#include <fmt/format.h>

#include "base/diagnostic.h"
#include "base/text.h"
#include "sheet/told_words.h"
#include "spec/toml_text.h"

namespace furnish {
void report_untold_bite(const Pet& pet, std::span<const Visit> visits, const Words& words,
                        const SourceSet& sources, DiagnosticSink& sink) {
  const auto told = untold_bite(pet, visits, words, Date::max());
  if (!told) return;
  sink.warning("bite-untold", told->text.span,
               fmt::format("this visit, {}, tells of a bite, and no alert of {} does",
                           to_iso(told->visit.date.value), pet.name.value))
      .hint = fmt::format(
      "write it into {}: [[alert]], then level = \"warning\", text = {} and do = \"…\", what to do "
      "about it",
      sources.at(pet.span.file).path(), toml_text::quoted(told->text.value));
}
}  // namespace furnish
