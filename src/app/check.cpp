#include "app/check.h"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <functional>
#include <map>
#include <set>
#include <span>

#include "app/diagnostics_json.h"
#include "app/foreign.h"
#include "app/overlooked.h"
#include "app/photos.h"
#include "app/untold_bites.h"
#include "base/text.h"
#include "output/write.h"
#include "plan/cautions.h"
#include "plan/day_checks.h"
#include "plan/staff_only.h"

namespace furnish {
namespace {
namespace fs = std::filesystem;

/// Counts the files that were read without a fault of their own.
class Checker {
 public:
  Checker(const Options& options, Workshop& shop, Console& console)
      : options_(options), shop_(shop), console_(console), foreign_(options, shop) {}

  Exit run() {
    if (!options_.verbose) console_.be_brief();
    if (options_.pets.empty()) {
      salon(options_.root());
    }
    for (const std::string& argument : options_.pets) {
      std::error_code ignored;
      if (fs::is_directory(argument, ignored)) {
        salon(argument);
      } else if (by_its_place(argument)) {
        continue;
      } else if (const auto path =
                     find_pet(shop_.context().files, argument, options_.salon, shop_.sink())) {
        pet(*path);
      } else {
        ++bad_;
      }
    }
    tell_shared();
    if (options_.json) {
      write_whole("-", diagnostics_json(shop_.sink().all(), shop_.sources()), Replaces::own,
                  shop_.sink(), shop_.disk());
      return bad_ == 0 && all_said_ ? Exit::ok : Exit::faults;
    }
    console_.show_reports();
    for (const std::string& one : notices_) console_.say(one);
    if (options_.verbose) console_.say(kinds());
    std::string summary = fmt::format("{} of {} files {} good", good_, good_ + bad_,
                                      good_ + bad_ == 1 ? "is" : "are");
    if (cautions_ > 0) {
      summary += fmt::format("; {} about {}", counted(cautions_, "caution"),
                             counted(cautioned_.size(), "pet"));
    }
    if (unread_ > 0) {
      summary += fmt::format("; {} not looked at, as salon.toml has to be good first",
                             counted(unread_, "pet"));
    }
    console_.say(summary);
    return bad_ == 0 && all_said_ ? Exit::ok : Exit::faults;
  }

 private:
  static std::string counted(std::size_t number, std::string_view noun) {
    return fmt::format("{} {}{}", number, noun, number == 1 ? "" : "s");
  }

  /// What the pet's own file causes is told at once, what it shares with others once for all.
  void tell(const std::vector<Caution>& cautions, const Pet& pet, const PlanWords& words) {
    for (const Caution& one : cautions) {
      if (one.accepted) continue;
      cautioned_.insert(pet.span.file);
      if (one.span.file == pet.span.file) {
        report(std::span(&one, 1), words, shop_.sink());
        ++cautions_;
        continue;
      }
      const auto same = std::ranges::find_if(shared_, [&](const Shared& other) {
        return other.caution.rule == one.rule && other.caution.span == one.span &&
               other.caution.what == one.what && other.caution.instead == one.instead;
      });
      Shared& into = same != shared_.end() ? *same : shared_.emplace_back(Shared{one, {}, words});
      into.pets.push_back(pet.name.value);
    }
  }

  void tell_shared() {
    for (const Shared& one : shared_) {
      report(std::span(&one.caution, 1), one.words, shop_.sink(), joined(one.pets, ", "));
      ++cautions_;
    }
    shared_.clear();
  }

  /// "pets 8, visits 27": the good files of each kind.
  std::string kinds() const {
    std::string out;
    for (const auto& [kind, number] : kinds_) {
      out += fmt::format("{}{} {}", out.empty() ? "" : ", ", kind, number);
    }
    return out;
  }

  /// Runs a reader and counts its file by the errors that came meanwhile.
  void count(const char* kind, const std::function<bool()>& read) {
    const std::size_t before = shop_.sink().error_count();
    const bool good = read() && shop_.sink().error_count() == before;
    ++(good ? good_ : bad_);
    const auto known = std::ranges::find(kinds_, std::string_view(kind), [](const auto& one) {
      return std::string_view(one.first);
    });
    auto& counted = known != kinds_.end() ? *known : kinds_.emplace_back(kind, 0);
    if (good) ++counted.second;
  }

  /// A file that is no pet's, known by where it lies: salon.toml, or below days/, visits/PET/ or
  /// styles/ of a salon. False if it is none of them.
  bool by_its_place(const std::string& argument) {
    if (!argument.ends_with(".toml") || !shop_.context().files.exists(argument)) return false;
    const fs::path file(argument), folder = file.parent_path(), above = folder.parent_path();
    const auto root = [](const fs::path& path) { return path.empty() ? "." : path.string(); };
    const std::string name = file.filename().string();
    if (name == "salon.toml") {
      count("salon", [&] { return salon_file(root(folder)); });
    } else if (folder.filename() == "days") {
      day_alone(root(above), name);
    } else if (folder.filename() == "styles") {
      count("styles", [&] {
        return shop_.folder(root(above)).styles().find(file.stem().string(), {}) != nullptr;
      });
    } else if (above.filename() == "visits") {
      visit_alone(root(above.parent_path()), folder.filename().string(), argument);
    } else {
      return false;
    }
    return true;
  }

  /// Held against the plans of those it books, whose own files are not checked.
  void day_alone(const std::string& root, const std::string& name) {
    SalonFolder& folder = shop_.folder(root);
    if (!folder.good()) {
      ++bad_;
      return;
    }
    keys_.clear();
    expected_.clear();
    bool complete = true;
    DiagnosticSink unheard;
    for (const PetPath& path : all_pets(shop_.context(), root, complete)) {
      keys_.push_back(fs::path(path.file).stem().string());
      const auto pet = folder.pet(path.file, unheard);
      if (!pet) continue;
      const auto visits = folder.visits(*pet, complete, unheard);
      const Plan plan = make_plan(folder.salon(), *pet, visits, {}, shop_.today(), unheard);
      if (plan.duration) expected_[pet->key] = *plan.duration;
    }
    count("days", [&] { return day(root, name); });
  }

  void visit_alone(const std::string& root, const std::string& key, const std::string& file) {
    SalonFolder& folder = shop_.folder(root);
    const auto path = find_pet(shop_.context().files, key, root, shop_.sink());
    const auto pet = path && folder.good() ? folder.pet(path->file, shop_.sink()) : std::nullopt;
    count("visits", [&] {
      const auto visit = pet ? folder.visit(file, *pet, shop_.sink()) : std::nullopt;
      if (visit) tell_bite(folder, *pet, std::span(&*visit, 1));
      return visit.has_value();
    });
  }

  void salon(const std::string& root) {
    const Files& files = shop_.context().files;
    const std::size_t before = good_ + bad_;
    if (files.exists(path_in(root, "salon.toml"))) count("salon", [&] { return salon_file(root); });
    for (const std::string& name : files.toml_files(path_in(root, "styles"))) {
      count("styles", [&] {
        return shop_.folder(root).styles().find(fs::path(name).stem().string(), {}) != nullptr;
      });
    }
    for (const std::string& language : shop_.folder(root).words().own_languages()) {
      count("words", [&] { return shop_.voices().words(shop_.folder(root), language) != nullptr; });
    }
    keys_.clear();
    expected_.clear();
    bool listed = true;
    const std::vector<PetPath> pets = all_pets(shop_.context(), root, listed);
    console_.expect(pets.size());
    for (const PetPath& path : pets) {
      keys_.push_back(path.key());
      console_.at(keys_.back());
      pet(path);
    }
    console_.all_came();
    if (!listed) ++bad_;
    tell_overlooked(root, shop_.sink());
    if (const auto* const days = shop_.folder(root).day_files()) {
      for (const std::string& name : *days) count("days", [&] { return day(root, name); });
    } else {
      ++bad_;
    }
    if (good_ + bad_ == before) {
      shop_.sink()
          .error("no-salon", {}, fmt::format("there is nothing to check in {}", root))
          .hint = "a salon's folder has salon.toml, pets/, styles/";
      ++bad_;
    }
  }

  /// A salon whose language has no words prints in English, which it is told.
  bool salon_file(const std::string& root) {
    SalonFolder& folder = shop_.folder(root);
    if (!folder.whole()) return false;
    const Salon& salon = folder.salon();
    Voices& voices = shop_.voices();
    return !voices.has_words(folder, salon.language, Severity::warning, salon.span, "en") ||
           voices.words(folder, salon.language) != nullptr;
  }

  void pet(const PetPath& path) {
    std::optional<Pet> read;
    SalonFolder& folder = shop_.folder(path.root);
    if (!folder.good()) {
      ++bad_;
      ++unread_;
      return;
    }
    count("pets", [&] {
      read = folder.pet(path.file, shop_.sink());
      return read.has_value();
    });
    if (!read) return;
    std::vector<Visit> visits;
    bool listed = true;
    for (const std::string& file : folder.visit_files(*read, listed, shop_.sink())) {
      count("visits", [&] {
        auto visit = folder.visit(file, *read, shop_.sink());
        if (visit) visits.push_back(std::move(*visit));
        return visit.has_value();
      });
    }
    if (!listed) ++bad_;
    bool complete = true;  // what is not is counted with its own file
    const auto bookings = folder.bookings(*read, shop_.today(), complete);
    const Plan plan =
        make_plan(folder.salon(), *read, visits, bookings, shop_.today(), shop_.sink());
    if (const auto words = shop_.voices().plain(folder)) {
      tell(plan.cautions, *read, *words);
    } else {
      all_said_ = false;
    }
    tell_bite(folder, *read, visits);
    if (plan.duration) expected_[read->key] = *plan.duration;
    if (options_.verbose) note_staff_only(*read, plan.findings);
    photos(folder, *read, visits);
    if (options_.foreign) foreign_.look_at(path);
  }

  void tell_bite(SalonFolder& folder, const Pet& pet, std::span<const Visit> visits) {
    if (const Words* const salons = shop_.voices().salon_words(folder)) {
      report_untold_bite(pet, visits, *salons, shop_.sources(), shop_.sink());
    }
  }

  /// No warning: the salon decides who reads what.
  void note_staff_only(const Pet& pet, std::span<const OpenFinding> findings) {
    for (const StaffOnly& one : staff_only(pet, findings)) {
      const bool alert = one.what == StaffOnly::What::alert;
      notices_.push_back(fmt::format(
          "{}:{}: notice: {} about {} is for staff only; if the owner should read of it at home, "
          "write for = \"everyone\" under it{}",
          visible(shop_.sources().at(one.span.file).path()), one.span.begin.line,
          alert ? "an alert" : "a finding", to_text(one.matter),
          alert ? ", or an alert of its own in plain words" : ""));
    }
  }

  /// Opens every photo, and says where two places of a salon's files claim the same one.
  void photos(const SalonFolder& folder, const Pet& pet, const std::vector<Visit>& visits) {
    PhotoFolder shelf(folder.root(), folder.salon(), shop_.context());
    shelf.portrait(pet);
    for (const Visit& visit : visits) {
      shelf.of(visit);
      for (const Photo& photo : visit.photos) {
        const auto [first, is_new] =
            photos_.try_emplace(path_in(folder.root(), photo.file.value), photo.file.span);
        if (is_new) continue;
        auto& said = shop_.sink().warning(
            "photo-twice", photo.file.span,
            fmt::format("the same photo is shown twice: {}", photo.file.value));
        said.notes.emplace_back(first->second, "shown here first");
        said.hint = "one of them may have the wrong name";
      }
    }
  }

  bool day(const std::string& root, const std::string& name) {
    const Day* const day = shop_.folder(root).day(name);
    if (day == nullptr) return false;
    const bool all = day->unread.empty();
    const auto warnings = day_warnings(shop_.folder(root).salon(), *day, keys_, expected_);
    report(warnings, shop_.sink());
    return all && std::ranges::none_of(warnings, [](const DayWarning& one) {
             return one.fault == DayFault::no_pet;
           });
  }

  const Options& options_;
  Workshop& shop_;
  Console& console_;
  ForeignTexts foreign_;
  /// A caution whose line is in no pet's file, but in a style or a product that several use.
  struct Shared {
    Caution caution;
    std::vector<std::string> pets;
    PlanWords words;
  };
  std::vector<Shared> shared_;                ///< not told yet
  std::size_t cautions_ = 0;                  ///< told
  std::set<std::uint32_t> cautioned_;         ///< the files of the pets they are about
  std::vector<std::string> keys_;             ///< of the salon's pets
  std::map<std::string, Duration> expected_;  ///< of those that have a plan
  std::size_t good_ = 0, bad_ = 0;
  std::size_t unread_ = 0;  ///< of the bad ones, pets whose salon has faults
  std::vector<std::pair<const char*, std::size_t>> kinds_;  ///< good ones, in the order of reading
  std::vector<std::string> notices_;
  bool all_said_ = true;                      ///< false: there were no words for a plan's cautions
  std::map<std::string, SourceSpan> photos_;  ///< where each was shown first
};
}  // namespace

Exit check(const Options& options, Workshop& shop, Console& console) {
  return Checker(options, shop, console).run();
}
}  // namespace furnish
