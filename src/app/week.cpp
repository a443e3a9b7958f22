#include "app/week.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <chrono>

#include "app/day.h"
#include "app/output_file.h"
#include "plan/closed_days.h"
#include "sheet/week.h"

namespace furnish {
namespace {
constexpr std::size_t week = 7;

class WeekMade {
 public:
  WeekMade(Workshop& shop, SalonFolder& folder) : shop_(shop), folder_(folder) {}

  std::optional<Sheet> sheet() {
    if (!folder_.good()) return std::nullopt;
    for (std::size_t i = 0; i < week; ++i) {
      if (!take(shop_.today() + std::chrono::days(i), days_[i], cases_[i])) return std::nullopt;
    }
    const auto paper = shop_.paper(folder_.salon(), shop_.sink());
    const auto voice = paper ? shop_.voice(folder_, Pet{}, shop_.sink()) : std::nullopt;
    if (!voice) return std::nullopt;
    return make_week(folder_.salon(), days_, *paper, *voice, shop_.sink());
  }
  bool complete() const { return complete_; }

 private:
  /// False if the salon's pets cannot be listed.
  bool take(Date date, WeekDay& to, DayCases& cases) {
    to.date = date;
    to.closed = closed_on(folder_.salon(), date);
    const Day* const day = folder_.day(date);
    // Its fault may have been told before, of a pet whose bookings were looked for in all files.
    const auto* const files = folder_.day_files();
    to.unread = day == nullptr &&
                (files == nullptr || std::ranges::count(*files, to_iso(date) + ".toml") > 0);
    complete_ = complete_ && !to.unread;
    if (day == nullptr || (day->bookings.empty() && day->unread.empty())) return true;
    cases = day_cases(shop_, folder_, *day);
    if (!cases.listed) return false;
    report(cases.warnings, shop_.sink());
    to.plan = cases.plan(*day);
    complete_ = complete_ && cases.complete;
    return true;
  }

  Workshop& shop_;
  SalonFolder& folder_;
  std::array<DayCases, week> cases_;
  std::array<WeekDay, week> days_;
  bool complete_ = true;
};
}  // namespace

std::optional<Sheet> week_sheet(Workshop& shop, SalonFolder& folder, bool& complete) {
  WeekMade made(shop, folder);
  auto sheet = made.sheet();
  complete = sheet && made.complete();
  return sheet;
}

Exit print_week(const Options& options, Workshop& shop, Console& console) {
  if (!may_be_written(options, shop.sink())) {
    console.show_reports();
    return Exit::usage;
  }
  SalonFolder& folder = shop.folder(options.root());
  bool complete = true;
  const auto sheet = week_sheet(shop, folder, complete);
  console.show_reports();
  if (!sheet) return Exit::faults;
  SheetWriter writer(options, shop, console);
  const auto path =
      writer.write(*sheet, fmt::format("week-{}", to_iso(shop.today())), folder.root());
  return path && complete ? Exit::ok : Exit::faults;
}
}  // namespace furnish
