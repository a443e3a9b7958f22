#include "app/new_visit.h"

#include <fmt/format.h>

#include <optional>
#include <string>

#include "app/new_files.h"
#include "app/visit_form.h"
#include "output/make_folder.h"
#include "output/write.h"
#include "spec/name_date.h"

namespace furnish {
namespace {
/// When the pet is due again if today's visit goes as planned and nobody says a date.
std::optional<Date> due_after(const Case& one, Date today) {
  std::vector<Visit> before;
  for (const Visit& visit : one.visits) {
    if (visit.date.value < today) before.push_back(visit);
  }
  DiagnosticSink unheard;  // the plan before this visit has said it already
  const Plan plan = plan_after_today(one.salon(), one.pet, before, one.bookings, today, unheard);
  if (!plan.next_visit || plan.next_visit->date <= today) return std::nullopt;
  return plan.next_visit->date;
}

/// Writes a visit under the first name of its day that nothing has, also where others do the same
/// at once. Empty iff an error was reported.
std::optional<std::string> written_under_free_name(const std::string& folder,
                                                   const std::string& form, Workshop& shop) {
  const std::string day = to_iso(shop.today());
  for (int n = 1; n <= most_visits_a_day; ++n) {
    const std::string path =
        path_in(folder, n == 1 ? day + ".toml" : fmt::format("{}-{}.toml", day, n));
    DiagnosticSink said;
    const bool written = write_new(path, form, said, shop.disk());
    const bool taken = !written && said.all().back().code == "exists";
    if (!taken) shop.sink().take(said);
    if (written) return path;
    if (!taken) return std::nullopt;
  }
  shop.sink().error("exists", {},
                    fmt::format("{} has {} visits of {} already, which is as many as can be named",
                                folder, most_visits_a_day, day));
  return std::nullopt;
}

}  // namespace

std::optional<std::string> start_visit(const PetPath& path, Workshop& shop) {
  const auto one = shop.open(path, shop.sink());
  if (!one || !one->all_visits) return std::nullopt;  // what is faulty is mended first
  if (path.root.empty()) {
    shop.sink().error("no-salon", one->pet.span, "a visit is kept in a salon's folder").hint =
        "put the pet's file into the pets/ of a folder, or name the folder with --salon";
    return std::nullopt;
  }
  VisitFormInput input{one->salon(),   one->pet, one->plan,    due_after(*one, shop.today()),
                       one->booking(), nullptr,  shop.today(), nullptr};
  const auto words = shop.voices().salon_words(*one->folder);
  input.words = words;
  for (const Visit& visit : one->visits) {
    if (visit.date.value <= shop.today()) input.latest = &visit;
  }
  const std::string folder = path_in(path_in(path.root, "visits"), one->pet.key);
  if (!make_folder(folder, shop.sink(), shop.disk())) return std::nullopt;
  const std::string schema = schema_from(path.root, "visit", 2, shop);
  if (schema.empty()) return std::nullopt;
  const std::string form = fmt::format("#:schema {}\n{}", schema, visit_form(input));
  auto written = written_under_free_name(folder, form, shop);
  if (written && input.latest != nullptr && input.latest->date.value == shop.today()) {
    shop.sink()
        .warning("second-visit", input.latest->date.span,
                 fmt::format("{} has a visit of this day already; the new one is another, and "
                             "nothing in it counts as done until somebody finishes it",
                             one->pet.name.value))
        .hint = "fill it in, or take it away and write into the first";
  }
  return written;
}

Exit new_visits(const Options&, Workshop& shop, Console& console) {
  bool complete = true;
  for (const PetPath& path : shop.pets(complete)) {
    const auto file = start_visit(path, shop);
    console.show_reports();
    if (file) console.say(*file);
    complete = complete && file.has_value();
  }
  console.show_reports();
  return complete ? Exit::ok : Exit::faults;
}
}  // namespace furnish
