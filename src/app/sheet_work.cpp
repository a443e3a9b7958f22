#include "app/sheet_work.h"

#include <fmt/format.h>

#include <algorithm>
#include <exception>
#include <iterator>

#include "output/seal.h"
#include "page/impose.h"

namespace furnish {
namespace {
/// A pet's sheet. Empty if there is none to be made, or with `complete` false after an error.
std::optional<Done> made(const PetPath& path, const Options& options, Workshop& shop,
                         DiagnosticSink& said, bool& complete) {
  shop.voices().forget_told();
  const auto one = shop.open(path, said);
  // All pets of a salon: those that were there have a sheet about it.
  if (one && options.pets.empty() && shop.nothing_to_show(*one)) return std::nullopt;
  // A visit that cannot be read may be the very one that a note or a care sheet is about.
  const bool of_visits = options.sheet->kind.about != AboutVisit::never;
  if (one && !one->all_visits) complete = false;
  // Where not all bookings can be read the sheet says no next date that it cannot know.
  if (one && !one->all_bookings) complete = false;
  // What its salon's file does not tell the sheet says; and its fault is told again by every run.
  if (one && !one->salon().whole) complete = false;
  const bool whole = one && (one->all_visits || !of_visits);
  auto sheet = whole ? shop.sheet(*one, said) : std::nullopt;
  if (!sheet) {
    complete = false;
    return std::nullopt;
  }
  return Done{path, one->pet.name.value, *std::move(sheet)};
}

/// The fronts of some cards on one sheet, and on the next what is behind them: as many as any card
/// of the file has, so that each begins on paper of its own.
std::vector<Frame> imposed(std::span<const std::vector<Frame>> cards, std::size_t most,
                           Size sheet) {
  std::vector<Frame> out;
  for (std::size_t side = 0; side < most; ++side) {
    std::vector<Frame> frames;
    for (const std::vector<Frame>& card : cards) {
      frames.push_back(side < card.size() ? card[side] : Frame{card.front().size, {}});
    }
    const bool back = side % 2 == 1;
    std::ranges::move(impose(frames, sheet, back ? ImposedSide::backs : ImposedSide::fronts),
                      std::back_inserter(out));
  }
  return out;
}
}  // namespace

Bench& Benches::of(std::size_t thread, const Options& options) {
  const auto hold_fonts = [&] {
    DiagnosticSink unheard;  // who needs a font says that it is missing
    fonts_ = FontSet::open(path_in(run_.data_folder(), "fonts"), unheard);
    if (fonts_) fonts_->hold_faces();
  };
  if (all_.size() > 1) std::call_once(held_, hold_fonts);
  auto& bench = all_[thread];
  if (!bench) bench = std::make_unique<Bench>(options, run_);
  return *bench;
}

std::optional<std::vector<Frame>> pages_of(std::vector<std::vector<Frame>> sheets,
                                           const Options& options, const Salon& salon,
                                           DiagnosticSink& sink) {
  if (options.copies_per_sheet == 0) return in_order(sheets);
  const Paper& paper = salon.paper.sheet;
  const Grid grid = grid_for(sheets.front().front().size, paper.size);
  if (grid.count() < options.copies_per_sheet) {
    sink.error("copies", {},
               fmt::format("{} cards do not fit on {}: at most {} of this size do",
                           options.copies_per_sheet, paper.name, grid.count()));
    return std::nullopt;
  }
  const auto each = static_cast<std::size_t>(options.copies_per_sheet);
  if (!options.together) sheets.assign(each, sheets.front());
  std::vector<Frame> out;
  for (std::size_t i = 0; i < sheets.size(); i += each) {
    const std::span group = std::span(sheets).subspan(i, std::min(each, sheets.size() - i));
    std::ranges::move(imposed(group, most_sides(sheets), paper.size), std::back_inserter(out));
  }
  return out;
}

namespace {
void work_at(SheetWork& work, const PetPath& path, const Options& options, Workshop& shop,
             const SheetPlace& to) {
  work.done = made(path, options, shop, work.making, work.good);
  if (!work.done || options.together) return;
  Made& made = work.done->made;
  const auto frames =
      pages_of({sides(made.sheet.page)}, options, shop.folder(path.root).salon(), work.encoding);
  if (!frames || !no_text_lacks(shop, made.sheet.info, work.encoding)) {
    work.good = false;
    return;
  }
  PdfExtras extras{{}, made.files, options.standard};
  if (frames->size() > 1 && options.copies_per_sheet == 0) {
    extras.outline.push_back({work.done->title, 0, 0});
  }
  work.files = files_of({*frames, made.sheet.info, extras, made.name}, made.beside, options,
                        to.path(made.name, path.root), work.encoding);
  work.done.reset();
  work.good = work.good && work.files;
}
}  // namespace

SheetWork make_sheet(const PetPath& path, const Options& options, Workshop& shop,
                     const SheetPlace& to) {
  SheetWork work;
  try {
    work_at(work, path, options, shop, to);
  } catch (const std::exception& fault) {
    // What nobody foresaw of one pet keeps no other from its sheet.
    work.making
        .error("unforeseen", {},
               fmt::format("{}: its {} could not be made: {}", path.file, options.sheet->kind.name,
                           fault.what()))
        .hint = "please report this with the files that cause it";
    work.good = false;
    work.done.reset();
    work.files.reset();
  }
  return work;
}
}  // namespace furnish
