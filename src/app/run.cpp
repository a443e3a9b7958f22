#include "app/run.h"

#include <fmt/format.h>

#include <string>
#include <vector>

#include "app/book.h"
#include "app/check.h"
#include "app/console.h"
#include "app/day.h"
#include "app/desk.h"
#include "app/front_desk.h"
#include "app/import.h"
#include "app/new_files.h"
#include "app/new_visit.h"
#include "app/rename.h"
#include "app/render.h"
#include "app/unpack.h"
#include "app/wall.h"
#include "app/watch_salon.h"
#include "app/week.h"
#include "app/workshop.h"
#include "base/text.h"
#include "output/write.h"
#include "plan/plan_json.h"
#include "plan/plan_text.h"
#include "spec/schema.h"

namespace furnish {
namespace {
Exit print_plans(const Options& options, Workshop& shop, Console& console) {
  bool complete = true;
  std::vector<std::string> plans;
  const std::vector<PetPath> pets = shop.pets(complete);
  console.expect(pets.size());
  for (const PetPath& path : pets) {
    console.at(path.key());
    DiagnosticSink said;
    const auto one = shop.open(path, said);
    shop.sink().take(said);
    complete = complete && one.has_value() && one->all_visits && one->all_bookings;
    if (!one) continue;
    const auto words = shop.voices().plain(*one->folder);
    complete = complete && words.has_value();
    if (!words) continue;
    plans.push_back(options.json ? plan_json(one->plan, one->pet, *words)
                                 : plan_text(one->plan, one->folder->salon(), one->pet, *words));
  }
  console.all_came();
  console.show_reports();
  // Of several that were asked for a program gets one list, also if only one could be planned.
  std::string text = joined(plans, "");
  if (options.json && options.pets.size() > 1) text = "[\n" + joined(plans, ",\n") + "]\n";
  if (!options.json) text = visible_lines(text);
  if (!text.empty() && !write_whole("-", text, Replaces::own, shop.sink(), shop.disk()))
    complete = false;
  console.show_reports();
  return complete ? Exit::ok : Exit::faults;
}
}  // namespace

Exit run(const Options& options, const Files& files, const Disk& disk) {
  Workshop shop(options, files, disk);
  Console console(shop.sources(), shop.sink(), options.output == "-");
  Exit exit = Exit::ok;
  switch (options.command) {
    case Command::sheet:
      exit = render_sheets(options, shop, console);
      break;
    case Command::rules:
      exit = print_rules(options, shop, console);
      break;
    case Command::day:
      exit = options.week ? print_week(options, shop, console) : print_day(options, shop, console);
      break;
    case Command::book:
      exit = print_book(options, shop, console);
      break;
    case Command::check:
      exit = check(options, shop, console);
      break;
    case Command::plan:
      exit = print_plans(options, shop, console);
      break;
    case Command::new_visit:
      exit = new_visits(options, shop, console);
      break;
    case Command::new_files:
      exit = new_files(options, shop, console);
      break;
    case Command::due:
    case Command::expiring:
    case Command::find:
      exit = front_desk(options, shop, console);
      break;
    case Command::rename:
      exit = rename_pet(options, shop, console);
      break;
    case Command::import_list:
      exit = import_list(options, shop, console);
      break;
    case Command::desk:
      exit = serve_desk(options, shop, console);
      break;
    case Command::watch:
      exit = watch_salon(options, shop, console);
      break;
    case Command::schema:
      write_whole("-", schema(*find_file_kind(options.kind)), Replaces::own, shop.sink(),
                  shop.disk());
      console.show_reports();
      break;
    case Command::unpack:
      exit = unpack(options, shop, console);
      break;
  }
  // Who goes on for long has said it by now.
  const bool goes_on = options.command == Command::watch || options.command == Command::desk;
  // Whatever was done, an error that was told is no success.
  if (!goes_on && !console.delivered() && exit == Exit::ok) return Exit::faults;
  if (exit == Exit::ok && shop.sink().has_errors()) return Exit::faults;
  if (exit == Exit::ok && options.strict && console.any_warning()) {
    console.tell_strict();
    return Exit::faults;
  }
  return exit;
}
}  // namespace furnish
