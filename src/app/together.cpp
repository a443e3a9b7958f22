#include "app/together.h"

#include <algorithm>
#include <exception>
#include <filesystem>
#include <future>
#include <iterator>
#include <mutex>
#include <set>
#include <utility>
#include <vector>

#include "app/distinct_names.h"
#include "app/output_file.h"
#include "app/sheet_files.h"
#include "app/workers.h"
#include "base/text.h"
#include "output/pdf_book.h"
#include "output/seal.h"
#include "output/write.h"
#include "page/impose.h"

namespace furnish {
namespace {
namespace fs = std::filesystem;

/// Sheets that one thread makes, one after another, and whose fonts stand in the file once.
constexpr std::size_t a_group = 40;
/// The first sheets, by which it is known how one usually looks.
constexpr std::size_t a_sample = 24;
/// Sheets that are drawn at a time, so that what a drawing begins with is not drawn for each.
constexpr std::size_t at_a_time = 6;

/// A pet, and what was said of it.
struct OfPet {
  SheetWork work;
  HandedOver handed;
};
/// What one thread makes of a group.
struct Group {
  std::size_t thread = 0;
  std::vector<OfPet> pets;      ///< those it came to, their pages drawn and gone
  std::vector<BookPart> parts;  ///< of a dozen sheets each
  Size card;                    ///< as large as one of its sheets is
  BookPart fonts;
  DiagnosticSink said;  ///< while it was drawn; after an error it is not whole
};

/// Pages say of themselves that they are in another language than the document.
std::vector<Frame> in_own_language(std::vector<Frame> pages, const std::string& own,
                                   const std::string& document) {
  for (Frame& page : pages) {
    for (Mark& mark : page.marks) {
      auto* const tag = std::get_if<OpenTag>(&mark);
      if (tag != nullptr && tag->role == Structure::document && own != document) {
        tag->language = own;
      }
    }
  }
  return pages;
}

class TogetherRun {
 public:
  TogetherRun(const Options& options, Workshop& shop, Console& console, Benches& benches,
              StopRequest& stop, std::span<const PetPath> pets)
      : options_(options),
        shop_(shop),
        console_(console),
        benches_(benches),
        stop_(stop),
        pets_(pets),
        each_(static_cast<std::size_t>(std::max(options.copies_per_sheet, 1))),
        a_group_((a_group + each_ - 1) / each_ * each_),
        at_a_time_((at_a_time + each_ - 1) / each_ * each_) {}

  TogetherEnd run() {
    if (pets_.empty()) return end_;
    const std::string& root = pets_.front().root;
    SheetWriter writer(options_, shop_, console_);
    const std::string path =
        writer.place().path(fmt::format("all-{}", options_.sheet->kind.name), root);
    const auto make = [&](const TakeBytes& take) { return made(take); };
    const bool written =
        writer.have_folder(root) &&
        write_whole(path, make, options_.force ? Replaces::anything : Replaces::own, shop_.sink(),
                    shop_.disk());
    end_.stopped = stop_.taken() && !written;
    console_.show_reports();
    if (written) console_.say_written(path);
    // Without a sheet there is nothing to write, and that was said of the pets.
    end_.written = written ? write_beside(path) : no_sheets_;
    return end_;
  }

 private:
  bool made(const TakeBytes& take) {
    PdfBook book(take);
    const std::size_t groups = (pets_.size() + a_group_ - 1) / a_group_;
    const std::size_t threads = std::min(groups, threads_for(pets_.size(), options_.jobs));
    ahead_.resize(threads + 1);
    benches_.lay_out(threads);
    Workers workers({groups, ahead_.size(), threads, 1,
                     [&](std::size_t thread, std::size_t i) { make(thread, i); },
                     [](std::size_t) {}});
    const Leaving leaving(*this);
    for (std::size_t i = 0; i < groups; ++i) {
      workers.wait_for(i);
      if (is_stopping()) return false;
      if (!take_group(ahead_[i % ahead_.size()], i * a_group_, book)) return false;
    }
    no_sheets_ = book.pages() == 0;
    return !no_sheets_ && finish(book);
  }

  // In the threads.

  void make(std::size_t thread, std::size_t number) {
    Group& out = ahead_[number % ahead_.size()] = Group{};
    out.thread = thread;
    try {
      fill(out, number);
    } catch (...) {
      if (number == 0) give_up(std::current_exception());
      throw;
    }
  }

  /// Whoever waits for the usual look is not to wait for ever.
  void give_up(const std::exception_ptr& why) {
    try {
      usual_.set_exception(why);
    } catch (const std::future_error&) {
      return;  // it was known already
    }
  }

  void fill(Group& out, std::size_t number) {
    Bench& bench = benches_.of(out.thread, options_);
    const SheetPlace place(options_);
    const auto some = pets_.subspan(number * a_group_)
                          .first(std::min(a_group_, pets_.size() - number * a_group_));
    PartDrawer drawer;
    std::vector<Done*> laid;
    bool known = false;
    out.pets.reserve(some.size());
    for (const PetPath& path : some) {
      if (is_stopping()) break;
      const auto from = static_cast<std::uint32_t>(bench.shop.sources().size());
      OfPet& one = out.pets.emplace_back();
      one.work = make_sheet(path, bench.asked, bench.shop, place);
      one.handed = handed_over(bench.shop, from);
      if (!one.work.done) continue;
      laid.push_back(&*one.work.done);
      if (number == 0 && !known && laid.size() == a_sample) {
        known = true;
        usual_.set_value(look_of(laid));
      }
      if ((number > 0 || known) && laid.size() >= at_a_time_) {
        draw(out, laid, drawer, bench, false);
      }
    }
    if (number == 0 && !known) usual_.set_value(look_of(laid));
    if (is_stopping()) return;
    draw(out, laid, drawer, bench, true);
    if (out.parts.empty() || out.said.has_errors()) return;
    if (auto fonts = drawer.fonts(first_info(out), out.said)) out.fonts = *std::move(fonts);
  }

  static std::string look_of(const std::vector<Done*>& laid) {
    return usual_look(std::vector<const Done*>(laid.begin(), laid.end()));
  }

  /// Draws them, some at a time; what does not fill a sheet on which several stand is left, unless
  /// it is the last.
  void draw(Group& out, std::vector<Done*>& laid, PartDrawer& drawer, Bench& bench, bool last) {
    for (Done* const done : laid) arrange_alike(*done, usual_look_.get(), bench.shop);
    std::span<Done* const> some(laid.data(), laid.size() - (last ? 0 : laid.size() % each_));
    const std::size_t done = some.size();
    while (!some.empty() && !out.said.has_errors()) {
      const std::size_t now = std::min(some.size(), at_a_time_);
      draw_part(out, some.first(now), drawer, bench);
      some = some.subspan(now);
    }
    laid.erase(laid.begin(), laid.begin() + static_cast<std::ptrdiff_t>(done));
  }

  void draw_part(Group& out, std::span<Done* const> some, PartDrawer& drawer, Bench& bench) {
    const DocumentInfo& info = some.front()->made.sheet.info;
    const Salon& salon = bench.shop.folder(some.front()->pet.root).salon();
    std::vector<Frame> pages;
    std::vector<std::size_t> ends;
    for (std::size_t i = 0; i < some.size(); i += each_) {
      std::vector<std::vector<Frame>> sheets;
      for (const Done* const done : some.subspan(i, std::min(each_, some.size() - i))) {
        const DocumentInfo& own = done->made.sheet.info;
        sheets.push_back(
            in_own_language(sides(done->made.sheet.page), own.language, info.language));
      }
      out.card = sheets.front().front().size;
      auto of_these = pages_of(std::move(sheets), options_, salon, out.said);
      if (!of_these) return;
      std::ranges::move(*of_these, std::back_inserter(pages));
      ends.push_back(pages.size());
    }
    auto part = no_text_lacks(bench.shop, info, out.said) ? drawer.draw(pages, info, {}, out.said)
                                                          : std::nullopt;
    for (Done* const done : some) done->made.sheet.page = {};
    if (!part) return;
    part->ends = std::move(ends);
    out.parts.push_back(*std::move(part));
  }

  static const DocumentInfo& first_info(const Group& group) {
    return std::ranges::find_if(group.pets,
                                [](const OfPet& one) { return one.work.done.has_value(); })
        ->work.done->made.sheet.info;
  }

  bool is_stopping() {
    const std::scoped_lock lock(stopping_);
    return leaving_ || stop_.taken();
  }

  /// Whoever works ahead need not go on.
  struct Leaving {
    explicit Leaving(TogetherRun& whose) : run(whose) {}
    Leaving(const Leaving&) = delete;
    Leaving& operator=(const Leaving&) = delete;
    ~Leaving() {
      const std::scoped_lock lock(run.stopping_);
      run.leaving_ = true;
    }
    TogetherRun& run;
  };

  // In the one that writes and tells, in the order of the pets.

  bool take_group(Group& group, std::size_t first, PdfBook& book) {
    if (!group.parts.empty() && most_sides_ == 0) info_ = first_info(group);
    card_ = group.parts.empty() ? card_ : group.card;
    for (std::size_t i = 0; i < group.pets.size(); ++i) {
      console_.at(pets_[first + i].key());
      if (!tell(group, group.pets[i], book)) return false;
    }
    shop_.sink().take(group.said);
    console_.show_reports();
    if (shop_.sink().error_count() > errors_of_pets_) return false;
    for (const BookPart& part : group.parts) {
      std::size_t begin = 0;
      for (const std::size_t end : part.ends) {
        if (options_.copies_per_sheet == 0) {
          outline_.push_back({titles_[outline_.size()], book.pages() + begin, 0});
        }
        most_sides_ = std::max(most_sides_, end - begin);
        begin = end;
      }
      if (!book.take(part, PdfBook::Where::body, shop_.sink())) return false;
    }
    return group.parts.empty() || book.take_fonts(group.fonts, shop_.sink());
  }

  bool tell(Group& group, OfPet& one, PdfBook& book) {
    HandOver& taken = benches_.taken;
    const auto from = static_cast<std::uint32_t>(shop_.sources().size());
    taken.take(group.thread, std::move(one.handed));
    taken.take(group.thread, one.work.making);
    console_.show_reports();
    console_.let_go(shop_.sink());
    errors_of_pets_ = shop_.sink().error_count();
    shop_.sources().forget_passing(from);
    if (!one.work.good) ++end_.faulty;
    if (!one.work.done && one.work.good) ++end_.none;
    return !one.work.done || keep(*one.work.done, book);
  }

  /// What stands in the file's end, and beside it.
  bool keep(Done& done, PdfBook& book) {
    titles_.push_back(done.title);
    for (const Attachment& file : done.made.files) {
      // A pet that is named twice has one file.
      if (!carried_.emplace(file.name, done.pet.file).second) continue;
      names_.push_back({file.name, done.pet.file, done.pet.root});
      if (!book.carry(file, info_, shop_.sink())) return false;
    }
    beside_.push_back(
        {{done.made.name, done.pet.file, done.pet.root}, std::move(done.made.beside)});
    return true;
  }

  bool finish(PdfBook& book) {
    const std::vector<std::string> names = distinct_names(names_);
    info_.title = joined(titles_, ", ");
    return book.finish(info_, {outline_, names, filler()}, shop_.sink());
  }

  /// Each sheet begins on paper of its own, also if only some have another side.
  std::optional<BookFiller> filler() const {
    if (most_sides_ < 2) return std::nullopt;
    if (options_.copies_per_sheet == 0) return BookFiller{2, false, {card_, {}}};
    const Size paper = shop_.folder(pets_.front().root).salon().paper.sheet.size;
    const std::vector<Frame> blank(each_, Frame{card_, {}});
    return BookFiller{most_sides_, true, impose(blank, paper, ImposedSide::backs).front()};
  }

  bool write_beside(const std::string& path) {
    if (!is_a_file(path, shop_.disk())) return true;
    std::vector<NameWanted> wanted;
    for (const Beside& one : beside_) wanted.push_back(one.name);
    const std::vector<std::string> names = distinct_names(wanted);
    bool written = true;
    for (std::size_t i = 0; i < beside_.size(); ++i) {
      const std::string stem = (fs::path(path).parent_path() / names[i]).string();
      for (const SideFile& file : beside_[i].files) {
        const std::string at = stem + "." + file.ending;
        const bool one = write_whole(at, sealed(file.bytes, SealedAs::calendar),
                                     options_.force ? Replaces::anything : Replaces::own,
                                     shop_.sink(), shop_.disk());
        if (one) console_.say_written(at);
        written = written && one;
      }
    }
    return written;
  }

  struct Beside {
    NameWanted name;
    std::vector<SideFile> files;
  };
  const Options& options_;
  Workshop& shop_;
  Console& console_;
  Benches& benches_;
  StopRequest& stop_;
  std::span<const PetPath> pets_;
  std::size_t each_, a_group_, at_a_time_;  ///< sheets of a page, of a group, of a part
  std::vector<Group> ahead_;                ///< by number modulo their count
  std::promise<std::string> usual_;
  std::shared_future<std::string> usual_look_ = usual_.get_future().share();
  std::mutex stopping_;
  bool leaving_ = false;

  TogetherEnd end_;
  bool no_sheets_ = false;
  std::size_t errors_of_pets_ = 0;
  DocumentInfo info_;
  Size card_;
  std::size_t most_sides_ = 0;
  std::vector<std::string> titles_;
  std::vector<OutlineEntry> outline_;
  std::set<std::pair<std::string, std::string>> carried_;
  std::vector<NameWanted> names_;  ///< of what is carried
  std::vector<Beside> beside_;
};
}  // namespace

TogetherEnd write_together(const Options& options, Workshop& shop, Console& console,
                           Benches& benches, StopRequest& stop, std::span<const PetPath> pets) {
  return TogetherRun(options, shop, console, benches, stop, pets).run();
}
}  // namespace furnish
