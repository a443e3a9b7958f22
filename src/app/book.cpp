#include "app/book.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "app/output_file.h"
#include "app/stop_request.h"
#include "base/text.h"
#include "output/pdf_book.h"
#include "output/write.h"
#include "sheet/book_index.h"
#include "sheet/book_tabs.h"
#include "sheet/register.h"

namespace furnish {
namespace {
/// A pet whose pages are to come.
struct Expected {
  PetPath path;
  std::string name, owner, letter, order;
};

class BookRun {
 public:
  BookRun(const Options& options, Workshop& shop, Console& console, SalonFolder& folder)
      : options_(options), shop_(shop), console_(console), folder_(folder) {}

  Exit run() {
    bool listed = true;
    if (folder_.good()) expected_ = in_order(shop_.pets(listed));
    const auto voice = expected_.empty() ? std::nullopt : shop_.voice(folder_, {}, shop_.sink());
    const auto paper = voice ? shop_.paper(folder_.salon(), shop_.sink()) : std::nullopt;
    SheetWriter writer(options_, shop_, console_);
    const bool ready = paper && writer.have_folder(folder_.root());
    console_.show_reports();
    if (!ready) return Exit::faults;
    const std::string path = writer.place().path("book", folder_.root());
    for (const Expected& pet : expected_) {
      if (letters_.empty() || letters_.back() != pet.letter) letters_.push_back(pet.letter);
    }
    const auto make = [&](const TakeBytes& take) { return made(take, *paper, *voice); };
    const bool written =
        write_whole(path, make, options_.force ? Replaces::anything : Replaces::own, shop_.sink(),
                    shop_.disk());
    console_.all_came();
    console_.show_reports();
    if (stopped_) return Exit::stopped;
    if (written) console_.say_written(path);
    console_.close(expected_.size() - faulty_, faulty_, expected_.size());
    return written && listed && faulty_ == 0 ? Exit::ok : Exit::faults;
  }

 private:
  /// By letter and name. What is wrong with a file is said when its pages are made.
  std::vector<Expected> in_order(const std::vector<PetPath>& paths) {
    const NameRegister names(options_.language.empty() ? folder_.salon().language
                                                       : options_.language);
    std::vector<Expected> out;
    // Read for their names alone, and forgotten: a long book keeps each file's text once.
    DiagnosticSink unheard;
    SourceSet forgotten;
    SalonFolder once({shop_.context().files, forgotten, unheard}, folder_.root(),
                     path_in(shop_.data_folder(), "styles"));
    for (const PetPath& path : paths) {
      const auto pet = once.pet(path.file, unheard);
      Expected& one =
          out.emplace_back(Expected{path, pet ? pet->name.value : path.key(), {}, {}, {}});
      if (pet) one.owner = pet->owner.name;
      one.letter = names.letter(one.name);
      one.order = names.sort_key(one.name);
    }
    std::ranges::stable_sort(out, {}, &Expected::order);
    return out;
  }

  bool made(const TakeBytes& take, const Paper& paper, const SheetVoice& voice) {
    PdfBook book(take, options_.standard);
    std::vector<BookPet> index;
    std::string letter;
    console_.expect(expected_.size());
    for (const Expected& pet : expected_) {
      if (stop_.taken()) {
        stopped_ = true;
        shop_.sink().error("stopped", {},
                           fmt::format("stopped after {} of {} pets, before the book was written",
                                       index.size(), expected_.size()));
        return false;
      }
      console_.at(pet.path.key());
      const auto from = static_cast<std::uint32_t>(shop_.sources().size());
      const std::size_t outline = outline_.size();
      if (pet.letter != letter) outline_.push_back({pet.letter, book.pages(), 0});
      BookPet& entry = index.emplace_back(BookPet{pet.name, pet.owner, pet.letter, {}, {}, {}});
      if (!add(pet, entry, book, voice)) return false;
      if (!entry.page) outline_.resize(outline);
      if (entry.page) letter = pet.letter;
      if (entry.gap != BookGap::nothing) ++faulty_;
      console_.show_reports();
      console_.let_go(shop_.sink());
      shop_.sources().forget_passing(from);
    }
    if (book.pages() == 0) return false;
    const DocumentInfo info = book_info(folder_.salon(), shop_.today(), voice);
    return add_index(index, book, paper, voice) && no_text_lacks(shop_, info, shop_.sink()) &&
           book.finish(info, {outline_, {}, {}}, shop_.sink());
  }

  /// False iff the book cannot go on.
  bool add(const Expected& pet, BookPet& entry, PdfBook& book, const SheetVoice& voice) {
    DiagnosticSink said;
    const bool good = add_sheets(pet, entry, book, voice, said);
    if (entry.gap != BookGap::nothing) entry.where = place_of_fault(said);
    shop_.sink().take(said);
    return good;
  }

  bool add_sheets(const Expected& pet, BookPet& entry, PdfBook& book, const SheetVoice& voice,
                  DiagnosticSink& said) {
    const auto one = shop_.work_out(pet.path, shop_.today(), said);
    if (!one) {
      entry.gap = BookGap::unread;
      return true;
    }
    // Its place and its line in the index are from the first reading.
    if (one->pet.name.value != pet.name || one->pet.owner.name != pet.owner) {
      said.error("changed", one->pet.span,
                 "its file changed while the book was made, or could not be read at first")
          .hint = "make the book again";
      entry.gap = BookGap::unread;
      return true;
    }
    if (!one->all_visits) entry.gap = BookGap::visit;
    std::vector<Frame> pages;
    std::vector<OutlineEntry> outline{{pet.name, book.pages(), 1}};
    std::vector<Attachment> files;
    DocumentInfo info;
    for (const SheetMaker* const maker : {&sheets::card, &sheets::style, &sheets::note}) {
      const bool of_visit = maker->kind.about == AboutVisit::always;
      if (of_visit && (!one->all_visits || chosen_visit(*one, options_) == nullptr)) continue;
      auto made = shop_.sheet(*one, *maker, said);
      if (!made) {
        entry.gap = BookGap::not_made;
        continue;
      }
      outline.push_back({made->sheet.info.title, book.pages() + pages.size(), 2});
      if (pages.empty()) info = made->sheet.info;
      add_sides(sides(made->sheet.page), pages, pet, book.pages(), voice.shaper);
      for (Attachment& file : made->files) carry(std::move(file), files, pet);
    }
    if (pages.empty()) return true;
    entry.page = book.pages();
    std::ranges::move(outline, std::back_inserter(outline_));
    return book.add(pages, info, files, PdfBook::Where::body, said);
  }

  /// On paper of its own, with its tab, and a number on each page.
  void add_sides(std::vector<Frame> sides, std::vector<Frame>& pages, const Expected& pet,
                 std::size_t before, TextShaper& shaper) {
    for (Frame& side : sides) {
      const std::size_t number = before + pages.size() + 1;
      const auto place = std::distance(letters_.begin(), std::ranges::find(letters_, pet.letter));
      add_tab(side,
              {pet.letter, static_cast<std::size_t>(place), letters_.size(), std::to_string(number),
               number % 2 == 1},
              shaper);
      pages.push_back(std::move(side));
    }
    if (pages.size() % 2 == 1) pages.push_back({pages.back().size, {}});
  }

  /// Each file once: a pet's own travels with each of its sheets.
  void carry(Attachment file, std::vector<Attachment>& files, const Expected& pet) {
    const bool there = std::ranges::any_of(
        files, [&](const Attachment& other) { return other.bytes == file.bytes; });
    if (there) return;
    while (!carried_.insert(file.name).second) file.name = pet.path.key() + "-" + file.name;
    files.push_back(std::move(file));
  }

  std::string place_of_fault(const DiagnosticSink& said) const {
    for (const Diagnostic& one : said.all()) {
      if (one.severity != Severity::error || one.span.file == SourceSpan::no_file) continue;
      std::string path = shop_.sources().at(one.span.file).path();
      if (const std::string root = path_in(folder_.root(), ""); path.starts_with(root)) {
        path.erase(0, root.size());
      }
      return one.span.begin.line == 0 ? path : fmt::format("{}:{}", path, one.span.begin.line);
    }
    return {};
  }

  bool add_index(const std::vector<BookPet>& pets, PdfBook& book, const Paper& paper,
                 const SheetVoice& voice) {
    const Pet nobody;
    const Plan none;
    const SheetInput input{kinds::book,  folder_.salon(), nobody, none,
                           std::nullopt, shop_.today(),   paper};
    voice.shaper.report_to(shop_.sink());  // a pet's own, which it told last, is gone
    std::size_t number = 0;
    Size size;
    const auto take = [&](Sheet sheet) {
      std::vector<Frame> pages{std::move(sheet.page.frame)};
      size = pages.front().size;
      ++number;
      add_tab(pages.front(), {{}, 0, 1, roman(number), number % 2 == 1}, voice.shaper);
      return book.add(pages, sheet.info, {}, PdfBook::Where::front, shop_.sink());
    };
    if (!make_book_index(input, pets, book_page, voice, shop_.sink(), take)) return false;
    const std::vector<Frame> blank{{size, {}}};
    return number % 2 == 0 || book.add(blank, book_info(folder_.salon(), shop_.today(), voice), {},
                                       PdfBook::Where::front, shop_.sink());
  }

  const Options& options_;
  Workshop& shop_;
  Console& console_;
  SalonFolder& folder_;
  StopRequest stop_;
  std::vector<Expected> expected_;
  std::vector<std::string> letters_;
  std::set<std::string> carried_;
  std::vector<OutlineEntry> outline_;
  std::size_t faulty_ = 0;
  bool stopped_ = false;
};
}  // namespace

Exit print_book(const Options& options, Workshop& shop, Console& console) {
  const std::string output = lower_ascii(options.output);
  std::string fault;
  if (options.format != Format::pdf) fault = "a book is a PDF";
  if (output.ends_with(".toml")) fault = toml_is_a_persons;
  if (!fault.empty()) {
    shop.sink().error("usage", {}, fault);
    console.show_reports();
    return Exit::usage;
  }
  return BookRun(options, shop, console, shop.folder(options.root())).run();
}
}  // namespace furnish
