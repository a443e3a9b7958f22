#include "app/render.h"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <set>
#include <system_error>

#include "app/distinct_names.h"
#include "app/sheet_maker.h"
#include "app/stop_request.h"
#include "base/text.h"
#include "output/pdf.h"
#include "output/png.h"
#include "output/seal.h"
#include "output/svg.h"
#include "output/write.h"
#include "page/impose.h"

namespace furnish {
namespace {
namespace fs = std::filesystem;

std::string_view ending(Format format) {
  switch (format) {
    case Format::pdf:
      return "pdf";
    case Format::png:
      return "png";
    case Format::svg:
      return "svg";
    case Format::text:
      break;
  }
  return "txt";
}

SealedAs sealed_as(Format format) {
  switch (format) {
    case Format::pdf:
      return SealedAs::pdf;
    case Format::png:
      return SealedAs::png;
    case Format::svg:
      return SealedAs::svg;
    case Format::text:
      break;
  }
  return SealedAs::text;
}

/// A finished sheet with the pet it belongs to.
struct Done {
  PetPath pet;
  std::string title;
  Made made;
};

/// What travels inside the PDF of several sheets.
std::vector<Attachment> carried_by(const std::vector<Done>& all) {
  std::vector<NameWanted> wanted;
  for (const Done& done : all) {
    for (const Attachment& file : done.made.files) {
      wanted.push_back({file.name, done.pet.file, done.pet.root});
    }
  }
  const std::vector<std::string> names = distinct_names(wanted);
  std::set<std::string> taken;
  std::vector<Attachment> out;
  auto name = names.begin();
  for (const Done& done : all) {
    for (const Attachment& file : done.made.files) {
      if (taken.insert(*name).second) {
        out.push_back(file);
        out.back().name = *name;
      }
      ++name;
    }
  }
  return out;
}

class SheetRun {
 public:
  SheetRun(const Options& options, Workshop& shop, Console& console)
      : options_(options), shop_(shop), console_(console) {}

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
      return "a sheet is never written over a file that a person wrote (.toml)";
    }
    return {};
  }

  const SheetKind& kind() const { return options_.sheet->kind; }

  static bool is_folder(const std::string& path) {
    std::error_code ignored;
    return path.ends_with('/') || fs::is_directory(path, ignored);
  }

  /// The file to write to, its folder made if it is the usual one.
  std::optional<std::string> place(const std::string& name, const std::string& root) {
    const std::string file = fmt::format("{}.{}", name, ending(options_.format));
    if (!options_.output.empty() && !is_folder(options_.output)) return options_.output;
    const std::string folder =
        options_.output.empty() ? path_in(root, root.empty() ? "" : "sheets") : options_.output;
    // Once a run: each time would read the folder again.
    if (!folder.empty() && folder != made_) {
      if (!make_folder(folder, shop_.sink(), shop_.disk())) return std::nullopt;
      made_ = folder;
    }
    return path_in(folder, file);
  }

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
      std::ranges::move(imposed(group, paper.size), std::back_inserter(sheets));
    }
    return sheets;
  }

  static std::size_t most_sides(std::span<const std::vector<Frame>> cards) {
    return std::ranges::max(cards, {}, &std::vector<Frame>::size).size();
  }

  /// Each sheet begins on paper of its own, also if only some have another side.
  static std::vector<Frame> in_order(const std::vector<std::vector<Frame>>& cards) {
    const bool turned = most_sides(cards) > 1;
    std::vector<Frame> out;
    for (const std::vector<Frame>& card : cards) {
      if (turned && out.size() % 2 == 1) out.push_back({card.front().size, {}});
      out.insert(out.end(), card.begin(), card.end());
    }
    return out;
  }

  /// The fronts of some cards on one sheet, and on the next what is behind them.
  static std::vector<Frame> imposed(std::span<const std::vector<Frame>> cards, Size sheet) {
    std::vector<Frame> out;
    for (std::size_t side = 0; side < most_sides(cards); ++side) {
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
    const auto bytes = encode(*frames, done.made.sheet.info, extras);
    const auto path = bytes ? place(done.made.name, done.pet.root) : std::nullopt;
    bool written = path && write(*path, *bytes);
    console_.show_reports();
    if (!written) return false;
    console_.say(*path);
    if (one_page_a_file() && frames->size() > 1) written = write_others(*frames, *path, done);
    return written && (!is_a_file(*path, shop_.disk()) ||
                       write_beside(done.made, fs::path(*path).replace_extension()));
  }

  bool one_page_a_file() const {
    return options_.format == Format::png || options_.format == Format::svg;
  }

  /// The sides after the first, each in a file of its own: "marlow-card-2.png".
  bool write_others(const std::vector<Frame>& frames, const std::string& first, const Done& done) {
    if (!is_a_file(first, shop_.disk())) {
      shop_.sink()
          .warning("one-side", {},
                   fmt::format("{} has {} sides; this is the first of them", done.made.name,
                               frames.size()))
          .hint = "name a file or a folder for all of them, or make a PDF";
      console_.show_reports();
      return true;
    }
    const fs::path path(first);
    for (std::size_t i = 1; i < frames.size(); ++i) {
      const std::string name =
          fmt::format("{}-{}{}", path.stem().string(), i + 1, path.extension().string());
      const std::string file = (path.parent_path() / name).string();
      const auto bytes = encode({frames[i]}, done.made.sheet.info, {});
      const bool written = bytes && write(file, *bytes);
      console_.show_reports();
      if (!written) return false;
      console_.say(file);
    }
    return true;
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
    const auto bytes = encode(*frames, info, extras);
    const auto path =
        bytes ? place(fmt::format("all-{}", kind().name), all.front().pet.root) : std::nullopt;
    bool written = path && write(*path, *bytes);
    if (!written) return false;
    console_.say(*path);
    if (!is_a_file(*path, shop_.disk())) return true;
    std::vector<NameWanted> wanted;
    for (const Done& done : all) wanted.push_back({done.made.name, done.pet.file, done.pet.root});
    const std::vector<std::string> beside = distinct_names(wanted);
    for (std::size_t i = 0; i < all.size(); ++i) {
      if (!write_beside(all[i].made, fs::path(*path).parent_path() / beside[i])) written = false;
    }
    return written;
  }

  std::optional<std::string> encode(const std::vector<Frame>& frames, const DocumentInfo& info,
                                    const PdfExtras& extras) {
    auto bytes = unsealed(frames, info, extras);
    if (bytes) *bytes = sealed(*std::move(bytes), sealed_as(options_.format));
    return bytes;
  }

  std::optional<std::string> unsealed(const std::vector<Frame>& frames, const DocumentInfo& info,
                                      const PdfExtras& extras) {
    switch (options_.format) {
      case Format::pdf:
        return to_pdf(frames, info, extras, shop_.sink());
      case Format::png:
        return to_png(frames.front(), info, options_.dpi, shop_.sink());
      case Format::svg:
        return to_svg(frames.front(), info, shop_.sink());
      case Format::text:
        break;
    }
    std::string text;
    for (const Frame& frame : frames) text += to_text(frame);
    return text;
  }

  const Options& options_;
  Workshop& shop_;
  Console& console_;
  StopRequest stop_;
  std::string made_;  ///< the folder that is ready for this run's sheets
};
}  // namespace

Exit render_sheets(const Options& options, Workshop& shop, Console& console) {
  return SheetRun(options, shop, console).run();
}
}  // namespace furnish
