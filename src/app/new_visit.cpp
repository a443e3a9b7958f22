#include "app/new_visit.h"

#include <fmt/format.h>

#include <filesystem>
#include <system_error>

#include "app/visit_form.h"
#include "output/write.h"

namespace furnish {
namespace {
namespace fs = std::filesystem;

/// When the pet is due again if today's visit goes as planned and nobody says a date.
std::optional<Date> due_after(const Case& one, Date today) {
  std::vector<Visit> before;
  for (const Visit& visit : one.visits) {
    if (visit.date.value < today) before.push_back(visit);
  }
  DiagnosticSink unheard;  // the plan before this visit has said it already
  bool complete = true;    // pre: they all are
  const auto bookings = one.folder->bookings(one.pet, today, complete);
  const Plan plan = plan_after_today(one.salon(), one.pet, before, bookings, today, unheard);
  if (!plan.next_visit || plan.next_visit->date <= today) return std::nullopt;
  return plan.next_visit->date;
}

/// A name in the folder that nothing has yet.
std::string free_name(const std::string& folder, Date day) {
  std::string path = path_in(folder, to_iso(day) + ".toml");
  std::error_code ignored;
  for (int n = 2; fs::exists(fs::symlink_status(path, ignored)); ++n) {
    path = path_in(folder, fmt::format("{}-{}.toml", to_iso(day), n));
  }
  return path;
}

bool write_form(const PetPath& path, Workshop& shop, Console& console) {
  const auto one = shop.open(path, shop.sink());
  if (!one || !one->all_visits || !one->all_bookings)
    return false;  // what is faulty is mended first
  if (path.root.empty()) {
    shop.sink().error("no-salon", one->pet.span, "a visit is kept in a salon's folder").hint =
        "put the pet's file into the pets/ of a folder, or name the folder with --salon";
    return false;
  }
  VisitFormInput input{one->salon(),   one->pet, one->plan,    due_after(*one, shop.today()),
                       one->booking(), nullptr,  shop.today(), nullptr};
  const auto words = shop.voices().salon_words(*one->folder);
  input.words = words;
  for (const Visit& visit : one->visits) {
    if (visit.date.value <= shop.today()) input.latest = &visit;
  }
  const std::string folder = path_in(path_in(path.root, "visits"), one->pet.key);
  std::error_code fault;
  fs::create_directories(folder, fault);
  if (fault) {
    shop.sink().error("write", {},
                      fmt::format("cannot make the folder {}: {}", folder, fault.message()));
    return false;
  }
  const std::string file = free_name(folder, shop.today());
  if (!write_new(file, visit_form(input), shop.sink())) return false;
  console.show_reports();
  console.say(file);
  return true;
}
}  // namespace

Exit new_visits(const Options&, Workshop& shop, Console& console) {
  bool complete = true;
  for (const PetPath& path : shop.pets(complete)) {
    if (!write_form(path, shop, console)) complete = false;
    console.show_reports();
  }
  console.show_reports();
  return complete ? Exit::ok : Exit::faults;
}
}  // namespace furnish
