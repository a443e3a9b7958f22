#include "app/desk_print.h"

#include <fmt/format.h>

#include <tuple>
#include <utility>

#include "app/day.h"
#include "app/sheet_files.h"
#include "app/visit_name.h"
#include "base/text.h"
#include "output/pdf.h"
#include "output/seal.h"
#include "spec/document.h"

namespace furnish {
namespace {
/// The first error that was said; what else was wrong is told where the file is open.
std::string first_error(const DiagnosticSink& said, const DiagnosticSink& shared) {
  for (const DiagnosticSink* const sink : {&said, &shared}) {
    for (const Diagnostic& one : sink->all()) {
      if (one.severity == Severity::error) return one.message;
    }
  }
  return "it has faults";
}

desk::Printed as_pdf(const std::vector<Frame>& frames, const DocumentInfo& info,
                     const PdfExtras& extras) {
  DiagnosticSink said;
  auto pdf = to_pdf(frames, info, extras, said);
  if (!pdf) return {std::nullopt, first_error(said, said)};
  return {sealed(*std::move(pdf), SealedAs::pdf), {}};
}
}  // namespace

desk::Printed print_sheets(DeskShop& kept, const std::vector<SheetToPrint>& wanted,
                           std::optional<Date> on) {
  if (wanted.empty()) return {std::nullopt, "there is nothing to print", "nothing"};
  Workshop& shop = kept.shop();
  const std::string usual_language = kept.options().language;
  std::vector<Done> all;
  for (const SheetToPrint& one : wanted) {
    kept.options().sheet = one.sheet;
    kept.options().language = one.language.empty() ? usual_language : one.language;
    std::tie(kept.options().visit, kept.options().visit_number) = parse_visit(one.visit);
    DiagnosticSink said;
    const auto made_of = shop.work_out(one.pet, on.value_or(shop.today()), said);
    const bool whole =
        made_of && (made_of->all_visits || one.sheet->kind.about == AboutVisit::never);
    auto made = whole ? shop.sheet(*made_of, said) : std::nullopt;
    if (!made) {
      const std::string who = made_of ? made_of->pet.name.value : stem(one.pet.file);
      return {std::nullopt, fmt::format("{}: {}", who, first_error(said, shop.sink())), "faults",
              who};
    }
    // A pet's whole file says how to reach its owner.
    if (kept.options().look) made->files.clear();
    all.push_back({one.pet, made_of->pet.name.value, *std::move(made)});
  }
  std::vector<std::vector<Frame>> sheets;
  PdfExtras extras;
  std::vector<std::string> titles;
  for (const Done& done : all) {
    sheets.push_back(sides(done.made.sheet.page));
    // Where the sheet begins: behind those before it.
    const std::size_t page = in_order(sheets).size() - sheets.back().size();
    if (all.size() > 1 || sheets.back().size() > 1) extras.outline.push_back({done.title, page, 0});
    titles.push_back(done.title);
  }
  extras.attachments = carried_by(all);
  DocumentInfo info = all.front().made.sheet.info;
  if (all.size() > 1) info.title = joined(titles, ", ");
  return as_pdf(in_order(sheets), info, extras);
}

desk::Printed print_whole_day(DeskShop& kept, Date date) {
  kept.shop();
  kept.options().on = date;
  const auto apart = kept.apart();
  bool complete = true;
  SalonFolder& folder = apart->folder(kept.root());
  const auto sheet = folder.good() ? day_sheet(*apart, folder, complete) : std::nullopt;
  if (!sheet) {
    const std::string fault = first_error(apart->sink(), apart->sink());
    const bool none = folder.good() && fault.starts_with("nothing is booked");
    return {std::nullopt, fault, none ? "no-day" : "faults"};
  }
  return as_pdf(sides(sheet->page), sheet->info, {});
}
}  // namespace furnish
