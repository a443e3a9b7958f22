#include "app/foreign.h"

#include "sheet/own_words.h"

namespace furnish {

void ForeignTexts::look_at(const PetPath& path) {
  DiagnosticSink found;
  const auto one = shop_.work_out(path, shop_.today(), found);
  FontSet* const fonts = shop_.fonts();
  if (!one || fonts == nullptr) return;
  Options of_last = options_;
  of_last.visit.reset();
  for (const SheetMaker* const maker :
       {&sheets::card, &sheets::style, &sheets::note, &sheets::care, &sheets::owner_note}) {
    const SheetKind& kind = maker->kind;
    if (kind.about == AboutVisit::always && chosen_visit(*one, of_last) == nullptr) continue;
    auto voice = shop_.voices().voice(*fonts, *one->folder, one->pet, kind.reader);
    const auto paper = shop_.paper(one->salon(), kind, found);
    if (!voice || !paper) return;
    voice->shaper.forget();
    OtherLanguages others;
    // An owner's page marks such texts, and says so, by itself.
    if (kind.reader == Audience::staff) voice->others = &others;
    const ReadContext context{shop_.context().files, shop_.sources(), found};
    maker->make(*one, {kind, of_last, *paper, *voice, context});
    others.report(voice->words.language(), kind.reader, found);
  }
  for (const Diagnostic& fault : found.all()) {
    if (fault.code != "other-language" || !told_.insert(fault.span).second) continue;
    auto& said = shop_.sink().warning(fault.code, fault.span, fault.message);
    said.hint = fault.hint;
  }
}
}  // namespace furnish
