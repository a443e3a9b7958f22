#include "app/day.h"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>

#include "app/desk_rest.h"
#include "app/output_file.h"
#include "plan/day_plan.h"
#include "sheet/day.h"

namespace furnish {
namespace {
class DayMade {
 public:
  DayMade(Workshop& shop, SalonFolder& folder) : shop_(shop), folder_(folder) {}

  std::optional<Sheet> sheet() {
    const Day* const day = folder_.good() ? booked() : nullptr;
    if (day == nullptr) return std::nullopt;
    cases_ = day_cases(shop_, folder_, *day);
    return cases_.listed ? make(*day, cases_) : std::nullopt;
  }
  DayCases take() { return std::move(cases_); }

 private:
  /// Null after an error.
  const Day* booked() {
    const Day* const day = folder_.day(shop_.today());
    if (day != nullptr && !(day->bookings.empty() && day->unread.empty())) return day;
    if (shop_.sink().has_errors()) return nullptr;
    const std::string date = to_iso(shop_.today());
    shop_.sink()
        .error("no-day", day == nullptr ? SourceSpan{} : day->span,
               fmt::format("nothing is booked on {}", date))
        .hint = fmt::format("book in {}", path_in(path_in(folder_.root(), "days"), date + ".toml"));
    return nullptr;
  }

  std::optional<Sheet> make(const Day& day, const DayCases& all) {
    report(all.warnings, shop_.sink());
    const auto paper = shop_.paper(folder_.salon(), shop_.sink());
    const auto voice = paper ? shop_.voice(folder_, Pet{}, shop_.sink()) : std::nullopt;
    if (!voice) return std::nullopt;
    return make_day(folder_.salon(), day, all.plan(day), *paper, *voice, shop_.sink());
  }

  Workshop& shop_;
  SalonFolder& folder_;
  DayCases cases_;
};
}  // namespace

DayCases day_cases(Workshop& shop, SalonFolder& folder, const Day& day) {
  DayCases out;
  out.complete = day.unread.empty();
  std::vector<std::string> keys;
  std::map<std::string, Duration> expected;
  for (const PetPath& path : all_pets(shop.context(), folder.root(), out.listed)) {
    const std::string key = std::filesystem::path(path.file).stem().string();
    keys.push_back(key);
    const bool booked =
        std::ranges::any_of(day.bookings, [&](const Booking& one) { return one.pet.value == key; });
    if (!booked) continue;
    DiagnosticSink said;
    auto one = shop.work_out(path, day.date, said);
    // A pet that comes twice in a week is read for each day, and a person is told once.
    for (Diagnostic about : said.all()) {
      if (about.once.empty() && about.span.file != SourceSpan::no_file) {
        about.once =
            fmt::format("{} {}:{}:{} {}", about.code, shop.sources().at(about.span.file).path(),
                        about.span.begin.line, about.span.begin.column, about.message);
      }
      shop.sink().add(std::move(about));
    }
    out.complete = out.complete && one && one->all_visits && one->all_bookings;
    if (!one) {
      const FileContent text = shop.context().files.read(path.file);
      if (!text.bytes) continue;
      if (!out.spare_) {
        out.over_ = std::make_shared<OverlaidFiles>(shop.context().files);
        out.spare_ = shop.beside(*out.over_);
      }
      auto rest = rest_of(*out.over_, *out.spare_, path, *text.bytes, day.date);
      if (!rest) continue;
      if (rest->pet.name.value == no_name) rest->pet.name.value = key;
      out.faulty.emplace(key, *std::move(rest));
      continue;
    }
    if (one->plan.duration) expected[key] = *one->plan.duration;
    out.cases.emplace(key, *std::move(one));
  }
  out.warnings = day_warnings(folder.salon(), day, keys, expected);
  return out;
}

DayPlan DayCases::plan(const Day& day) const {
  pets_.clear();
  for (const auto& [key, one] : cases) {
    pets_.emplace(key, DayPet{one.pet, one.plan, one.visits, one.all_visits});
  }
  for (const auto& [key, one] : faulty) {
    pets_.emplace(key, DayPet{one.pet, one.plan, one.visits, one.all_visits, true});
  }
  return day_plan(day, pets_, warnings);
}

std::optional<Sheet> day_sheet(Workshop& shop, SalonFolder& folder, bool& complete,
                               DayCases* cases) {
  DayMade day(shop, folder);
  auto sheet = day.sheet();
  DayCases all = day.take();
  complete = sheet && all.complete;
  if (cases != nullptr) *cases = std::move(all);
  return sheet;
}

Exit print_day(const Options& options, Workshop& shop, Console& console) {
  if (!may_be_written(options, shop.sink())) {
    console.show_reports();
    return Exit::usage;
  }
  SalonFolder& folder = shop.folder(options.root());
  bool complete = true;
  const auto sheet = day_sheet(shop, folder, complete);
  console.show_reports();
  if (!sheet) return Exit::faults;
  const std::string name = fmt::format("{}-{}", kinds::day.name, to_iso(shop.today()));
  SheetWriter writer(options, shop, console);
  const auto path = writer.write(*sheet, name, folder.root());
  return path && complete ? Exit::ok : Exit::faults;
}
}  // namespace furnish
