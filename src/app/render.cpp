#include "app/render.h"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>

#include "app/distinct_names.h"
#include "app/output_file.h"
#include "app/sheet_files.h"
#include "app/sheet_maker.h"
#include "app/stop_request.h"
#include "base/text.h"
#include "output/pdf.h"
#include "output/seal.h"
#include "output/write.h"
#include "page/impose.h"

namespace furnish {
namespace {
namespace fs = std::filesystem;

class SheetRun {
 public:
  SheetRun(const Options& options, Workshop& shop, Console& console)
      : options_(options), shop_(shop), console_(console), writer_(options, shop, console) {}

  Exit run() {
    bool complete = true;
    const std::vector<PetPath> pets = shop_.pets(complete);
    if (const std::string fault = conflict(pets); !fault.empty()) {
      shop_.sink().error("usage", {}, fault);
      console_.show_reports();
      return Exit::usage;
    }
    std::vector<Done> kept;
    std::size_t looked_at = 0;
    for (const PetPath& path : pets) {
      if (stop_.taken()) return stopped(looked_at, pets.size());
      ++looked_at;
      DiagnosticSink said;
      auto done = make(path, said, complete);
      shop_.sink().take(said);
      console_.show_reports();
      if (!done) continue;
      if (options_.together) {
        kept.push_back(*std::move(done));
      } else if (!write_one(*done)) {
        complete = false;
      }
    }
    if (stop_.taken()) return stopped(looked_at, pets.size());
    arrange_alike(kept, shop_);
    if (!kept.empty() && !write_together(kept)) complete = false;
    console_.show_reports();
    return complete ? Exit::ok : Exit::faults;
  }

 private:
  /// Says how far it came; what is written is whole.
  Exit stopped(std::size_t looked_at, std::size_t all) {
    shop_.sink().error("stopped", {},
                       options_.together ? "stopped before the file of all pets was written"
                                         : fmt::format("stopped after {} of {} {}", looked_at, all,
                                                       all == 1 ? "pet" : "pets"));
    console_.show_reports();
    return Exit::stopped;
  }

  /// A pet's sheet. Empty if there is none to be made, or with `complete` false after an error.
  std::optional<Done> make(const PetPath& path, DiagnosticSink& said, bool& complete) {
    const auto one = shop_.open(path, said);
    // All pets of a salon: those that were there have a sheet about it.
    if (one && options_.pets.empty() && shop_.nothing_to_show(*one)) return std::nullopt;
    // A visit that cannot be read may be the very one that a note or a care sheet is about.
    const bool of_visits = kind().about != AboutVisit::never;
    if (one && !one->all_visits) complete = false;
    // Every sheet says when the pet comes, so that a booking nobody can read is missing on each.
    const bool whole = one && one->all_bookings && (one->all_visits || !of_visits);
    auto sheet = whole ? shop_.sheet(*one, said) : std::nullopt;
    if (!sheet) {
      complete = false;
      return std::nullopt;
    }
    return Done{path, one->pet.name.value, *std::move(sheet)};
  }

  std::string conflict(const std::vector<PetPath>& pets) const {
    const bool many = pets.size() > 1 && !options_.together;
    if (many && options_.output == "-")
      return "several sheets cannot share the standard output; add --together";
    if (many && !options_.output.empty() && !is_folder(options_.output)) {
      return fmt::format(
          "several sheets cannot share the file {}; name a folder, or add --together",
          options_.output);
    }
    if (kind().reader == Audience::everyone && options_.spec_for == Audience::staff) {
      return "an owner's page never carries what is for staff; leave out --with-spec staff";
    }
    if (many) {
      if (const auto both = same_name(pets, !options_.output.empty()); !both.empty()) {
        return both + " would have sheets of one name; add --together, or render them apart";
      }
    }
    if (options_.together && options_.format != Format::pdf) return "--together makes a PDF only";
    if (options_.sheet->calendar_beside && lower_ascii(options_.output).ends_with(".ics")) {
      return "the sheet's own calendar entry goes there (.ics); name the sheet otherwise";
    }
    if (lower_ascii(options_.output).ends_with(".toml")) {
      return toml_is_a_persons;
    }
    return {};
  }

  const SheetKind& kind() const { return options_.sheet->kind; }

  /// The pages of one file: the sheets' own sides, or larger sheets with several of them.
  std::optional<std::vector<Frame>> pages(std::vector<std::vector<Frame>> cards,
                                          const std::string& root) {
    if (options_.copies_per_sheet == 0) return in_order(cards);
    const Paper& paper = shop_.folder(root).salon().paper.sheet;
    const Grid grid = grid_for(cards.front().front().size, paper.size);
    if (grid.count() < options_.copies_per_sheet) {
      shop_.sink().error("copies", {},
                         fmt::format("{} cards do not fit on {}: at most {} of this size do",
                                     options_.copies_per_sheet, paper.name, grid.count()));
      return std::nullopt;
    }
    const auto each = static_cast<std::size_t>(options_.copies_per_sheet);
    if (!options_.together) cards.assign(each, cards.front());
    std::vector<Frame> sheets;
    for (std::size_t i = 0; i < cards.size(); i += each) {
      const std::span group = std::span(cards).subspan(i, std::min(each, cards.size() - i));
      std::ranges::move(imposed(group, most_sides(cards), paper.size), std::back_inserter(sheets));
    }
    return sheets;
  }

  /// The fronts of some cards on one sheet, and on the next what is behind them: as many as any
  /// card of the file has, so that each begins on paper of its own.
  static std::vector<Frame> imposed(std::span<const std::vector<Frame>> cards, std::size_t most,
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

  bool write_one(const Done& done) {
    const auto frames = pages({sides(done.made.sheet.page)}, done.pet.root);
    if (!frames) return false;
    PdfExtras extras{{}, done.made.files};
    if (frames->size() > 1 && options_.copies_per_sheet == 0) {
      extras.outline.push_back({done.title, 0, 0});
    }
    const auto path =
        writer_.write({*frames, done.made.sheet.info, extras, done.made.name}, done.pet.root);
    return path && (!is_a_file(*path, shop_.disk()) ||
                    write_beside(done.made, fs::path(*path).replace_extension()));
  }

  bool write(const std::string& path, const std::string& bytes) {
    return write_whole(path, bytes, options_.force ? Replaces::anything : Replaces::own,
                       shop_.sink(), shop_.disk());
  }

  /// What belongs beside a sheet, under its name.
  bool write_beside(const Made& made, const fs::path& stem) {
    bool written = true;
    for (const SideFile& file : made.beside) {
      const std::string path = stem.string() + "." + file.ending;
      if (write(path, sealed(file.bytes, SealedAs::calendar))) {
        console_.say(path);
      } else {
        written = false;
      }
    }
    return written;
  }

  bool write_together(const std::vector<Done>& all) {
    std::vector<std::vector<Frame>> cards;
    PdfExtras extras;
    for (const Done& done : all) {
      cards.push_back(sides(done.made.sheet.page));
      if (options_.copies_per_sheet > 0) continue;
      // Where the sheet begins: behind those before it.
      const std::size_t page = in_order(cards).size() - cards.back().size();
      extras.outline.push_back({done.title, page, 0});
    }
    extras.attachments = carried_by(all);
    const auto frames = pages(cards, all.front().pet.root);
    if (!frames) return false;
    DocumentInfo info = all.front().made.sheet.info;
    std::vector<std::string> names;
    for (const Done& done : all) names.push_back(done.title);
    info.title = joined(names, ", ");
    const auto path = writer_.write({*frames, info, extras, fmt::format("all-{}", kind().name)},
                                    all.front().pet.root);
    if (!path) return false;
    if (!is_a_file(*path, shop_.disk())) return true;
    bool written = true;
    std::vector<NameWanted> wanted;
    for (const Done& done : all) wanted.push_back({done.made.name, done.pet.file, done.pet.root});
    const std::vector<std::string> beside = distinct_names(wanted);
    for (std::size_t i = 0; i < all.size(); ++i) {
      if (!write_beside(all[i].made, fs::path(*path).parent_path() / beside[i])) written = false;
    }
    return written;
  }

  const Options& options_;
  Workshop& shop_;
  Console& console_;
  StopRequest stop_;
  SheetWriter writer_;
};
}  // namespace

Exit render_sheets(const Options& options, Workshop& shop, Console& console) {
  return SheetRun(options, shop, console).run();
}
}  // namespace furnish
