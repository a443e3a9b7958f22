#include "app/render.h"

#include <fmt/format.h>
#include <sys/stat.h>

#include <algorithm>
#include <filesystem>
#include <memory>
#include <mutex>

#include "app/distinct_names.h"
#include "app/made_before.h"
#include "app/output_file.h"
#include "app/sheet_files.h"
#include "app/sheet_maker.h"
#include "app/sheet_work.h"
#include "app/stop_request.h"
#include "app/together.h"
#include "app/workers.h"
#include "base/text.h"
#include "output/own_files.h"
#include "output/pdf.h"
#include "output/seal.h"
#include "output/write.h"

namespace furnish {
namespace {
namespace fs = std::filesystem;

/// That wait for the disk, and do nothing else.
constexpr std::size_t threads_that_wait = 4;

bool any_error(std::span<const Diagnostic> said) {
  return std::ranges::any_of(said,
                             [](const Diagnostic& one) { return one.severity == Severity::error; });
}

class SheetRun {
 public:
  SheetRun(const Options& options, Workshop& shop, Console& console, Benches& benches)
      : options_(options),
        shop_(shop),
        console_(console),
        benches_(benches),
        writer_(options, shop, console) {}

  Exit run() {
    bool complete = true;
    const std::vector<PetPath> pets = shop_.pets(complete);
    return run_of(pets, complete);
  }

  /// Those that would not be the same now, beside `pets`; where nothing changed that all share,
  /// only of those that were made before.
  Exit run_after_change(std::vector<PetPath> pets, Changed what) {
    bool complete = true;
    after_change_ = true;
    if (run_of(pets, complete) == Exit::stopped) return Exit::stopped;
    std::vector<PetPath> others = shop_.pets(complete);
    const MadeBefore before(options_, shop_.today(), shop_.data_folder(), shop_.context().files,
                            shop_.disk(), others);
    std::erase_if(others, [&](const PetPath& one) {
      // Of a run in which something was said of the salon, or of another day, there is no record.
      return std::ranges::find(pets, one.file, &PetPath::file) != pets.end() ||
             (what == Changed::pets && !before.knows(one)) || before.unchanged(one);
    });
    faulty_ = made_all_the_same_ = none_ = looked_at_ = 0;
    return run_of(others, complete);
  }

 private:
  Exit run_of(const std::vector<PetPath>& pets, bool complete) {
    if (const std::string fault = conflict(pets); !fault.empty()) {
      shop_.sink().error("usage", {}, fault);
      console_.show_reports();
      return Exit::usage;
    }
    const std::size_t asked = std::max(pets.size(), options_.pets.size());
    faulty_ = asked - pets.size();
    console_.expect(pets.size());
    if (options_.together) {
      const TogetherEnd end = write_together(options_, shop_, console_, benches_, stop_, pets);
      faulty_ += end.faulty;
      none_ = end.none;
      complete = complete && end.written;
      if (end.stopped) return say_stopped(pets.size());
      console_.all_came();
    } else if (!in_threads(pets)) {
      return say_stopped(pets.size());
    }
    console_.show_reports();
    console_.close(asked - none_ - faulty_ + made_all_the_same_, faulty_, asked - none_);
    return complete && faulty_ == 0 ? Exit::ok : Exit::faults;
  }

  /// A pet's sheet on its way from a thread with a workshop of its own.
  struct Given {
    std::size_t shop = 0;
    std::optional<MadeSheet> before;  ///< it is as it was made
    SheetWork work;
    HandedOver handed;
    std::optional<std::vector<Input>> inputs;  ///< empty: it is not known what it was made from
  };
  /// The same with several workshops, each in a thread of its own. All is written and told here, in
  /// the order of the pets.
  bool in_threads(const std::vector<PetPath>& pets) {
    const Files& files = shop_.context().files;
    const std::size_t threads = threads_for(pets.size(), options_.jobs);
    // Enough to keep the threads busy while a slow one is waited for.
    const std::size_t ahead = 8 * threads;
    MadeBefore before(options_, shop_.today(), shop_.data_folder(), files, shop_.disk(), pets);
    std::vector<Given> given(ahead);
    benches_.lay_out(threads);
    const auto make = [&](std::size_t thread, std::size_t i) {
      Given& out = given[i % ahead] = Given{};
      out.shop = thread;
      if (out.before = before.unchanged(pets[i]); out.before) return;
      Bench& bench = benches_.of(thread, options_);
      Workshop& shop = bench.shop;
      const auto from = static_cast<std::uint32_t>(shop.sources().size());
      out.work = make_sheet(pets[i], bench.asked, shop, writer_.place());
      out.handed = handed_over(shop, from);
      out.inputs = before.inputs(pets[i], bench.reading);
    };
    const auto keep = [&](std::size_t i) {
      auto& made = given[i % ahead].work.files;
      if (!made) return;
      for (FileToWrite& file : made->sides) file.prepare(shop_.disk());
      for (FileToWrite& file : made->beside) file.prepare(shop_.disk());
    };
    const std::size_t waiters = std::min(threads_that_wait, pets.size());
    Workers workers({pets.size(), ahead, threads, waiters, make, keep});
    const auto all = [&] {
      for (std::size_t i = 0; i < pets.size(); ++i) {
        if (stop_.taken()) return false;
        console_.at(pets[i].key());
        workers.wait_for(i);
        Given one = std::move(given[i % ahead]);
        if (one.before) {
          tell_before(*one.before, pets[i]);
        } else {
          tell(one, pets[i], before, pets.size() > 1);
        }
      }
      return !stop_.taken();
    };
    const bool went_through = all();
    const std::size_t said = shop_.sink().all().size();
    writer_.confirm();
    if (shop_.sink().all().size() > said) before.give_up();
    before.write();
    return went_through;
  }

  void tell_before(const MadeSheet& one, const PetPath& path) {
    for (const Input& input : one.inputs) {
      const bool photo = input.kind == Input::Kind::photo || input.kind == Input::Kind::young;
      if (photo) benches_.photos.insert(input.path);
    }
    console_.show_before(one.said);
    if (!one.files.empty() && !writer_.have_folder(path.root)) console_.show_reports();
    if (!after_change_) {
      for (const MadeSheet::File& file : one.files) console_.say_written(file.path);
    }
    ++looked_at_;
    if (one.files.empty()) ++none_;
  }

  void tell(Given& one, const PetPath& path, MadeBefore& before, bool of_several) {
    HandOver& taken = benches_.taken;
    const auto from = static_cast<std::uint32_t>(shop_.sources().size());
    if (taken.take(one.shop, std::move(one.handed))) before.give_up();
    taken.take(one.shop, one.work.making);
    console_.show_reports();
    std::vector<SaidBefore> said;
    note(shop_.sink().all(), said);
    const std::size_t made = shop_.sink().all().size();
    taken.take(one.shop, one.work.encoding);
    note(shop_.sink().all().subspan(made), said);
    const std::size_t encoded = shop_.sink().all().size();
    const std::size_t none = none_, faulty = faulty_;
    count(one.work, path, of_several);
    const bool good = faulty_ == faulty && shop_.sink().all().size() == encoded;
    if (good && one.inputs && !any_error(shop_.sink().all()) && (one.work.files || none_ > none)) {
      before.remember(path, *std::move(one.inputs), marks(one.work.files), std::move(said));
    }
    console_.let_go(shop_.sink());
    shop_.sources().forget_passing(from);
  }

  /// As it is shown.
  void note(std::span<const Diagnostic> fresh, std::vector<SaidBefore>& said) const {
    for (const Diagnostic& one : in_reading_order(fresh)) {
      said.push_back({one.once, to_text(one, shop_.sources(), Colours::terminal)});
    }
  }

  static std::vector<MadeSheet::File> marks(const std::optional<SheetFiles>& files) {
    std::vector<MadeSheet::File> out;
    if (!files) return out;
    for (const auto* const some : {&files->sides, &files->beside}) {
      for (const FileToWrite& file : *some) out.push_back({file.path(), file.mark()});
    }
    return out;
  }

  /// Writes what was made, and counts.
  void count(SheetWork& work, const PetPath& path, bool one_of_several) {
    console_.show_reports();
    ++looked_at_;
    bool written = false;
    if (work.files) {
      const auto wrote = writer_.write(*work.files, path.root, one_of_several);
      written = wrote.has_value();
      work.good = work.good && wrote && wrote->beside;
    } else if (work.good) {
      ++none_;
    }
    if (work.good) return;
    ++faulty_;
    if (written) {
      ++made_all_the_same_;
    } else {
      tell_of_old(path);
    }
  }

  /// That a sheet from before is there still: it says nothing of what was written since.
  void tell_of_old(const PetPath& pet) {
    const std::string name = fmt::format("{}-{}", pet.key(), options_.sheet->kind.name);
    const std::string path = writer_.place().path(name, pet.root);
    struct stat there {};
    const bool is_there = shop_.disk().lstat(path.c_str(), &there) == 0 && S_ISREG(there.st_mode);
    if (!is_there || !is_own_file(path)) return;
    shop_.sink()
        .warning("old-sheet", {},
                 fmt::format("{} is from before, and left as it was", visible(path)))
        .hint = "do not use it: take it down until the faults are mended";
    console_.show_reports();
  }

  /// Says how far it came; what is written is whole.
  Exit say_stopped(std::size_t all) {
    shop_.sink().error("stopped", {},
                       options_.together ? "stopped before the file of all pets was written"
                                         : fmt::format("stopped after {} of {} {}", looked_at_, all,
                                                       all == 1 ? "pet" : "pets"));
    console_.show_reports();
    return Exit::stopped;
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

  const Options& options_;
  Workshop& shop_;
  Console& console_;
  Benches& benches_;
  StopRequest stop_;
  bool after_change_ = false;  ///< what is as it was made is no news
  SheetWriter writer_;
  std::size_t looked_at_ = 0, faulty_ = 0;
  std::size_t made_all_the_same_ = 0;  ///< of the faulty: what is at fault is not their own
  std::size_t none_ = 0;               ///< pets of which there is no such sheet
};
}  // namespace

Exit render_sheets(const Options& options, Workshop& shop, Console& console) {
  Benches benches(shop);
  return SheetRun(options, shop, console, benches).run();
}

Exit render_sheets(const Options& options, Workshop& shop, Console& console, Benches& benches) {
  return SheetRun(options, shop, console, benches).run();
}

Exit render_changed(const Options& options, Workshop& shop, Console& console, Benches& benches,
                    std::vector<PetPath> changed, Changed what) {
  return SheetRun(options, shop, console, benches).run_after_change(std::move(changed), what);
}
}  // namespace furnish
