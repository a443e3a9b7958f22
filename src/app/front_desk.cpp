#include "app/front_desk.h"

#include <functional>

#include "output/write.h"
#include "plan/front_desk.h"

namespace furnish {
namespace {
/// Every pet of the salon, read and planned; false if one could not be.
bool each_pet(Workshop& shop, Console& console, const std::function<void(const Case&)>& look) {
  bool complete = true;
  const std::vector<PetPath> pets = shop.pets(complete);
  console.expect(pets.size());
  for (const PetPath& path : pets) {
    console.at(path.key());
    DiagnosticSink said;
    const auto one = shop.open(path, said);
    // What is wrong with a file is told; what its sheet warns of is for its sheet.
    if (!one || said.has_errors()) {
      shop.sink().take(said);
      complete = false;
    }
    if (one) look(*one);
  }
  console.all_came();
  return complete;
}

std::string rows_text(const Options& options, Workshop& shop, Console& console, bool& complete) {
  if (options.command == Command::due) {
    std::vector<DueRow> rows;
    complete = each_pet(shop, console, [&](const Case& one) {
      if (auto row = due_row(one.pet, one.plan, options.within)) rows.push_back(*std::move(row));
    });
    sort_rows(rows);
    return options.json ? json(rows) : text(rows, shop.today() + options.within);
  }
  if (options.command == Command::expiring) {
    std::vector<ExpiringRow> rows;
    complete = each_pet(shop, console, [&](const Case& one) {
      for (ExpiringRow& row : expiring_rows(one.pet, one.plan, options.within)) {
        rows.push_back(std::move(row));
      }
    });
    sort_rows(rows);
    return options.json ? json(rows) : text(rows);
  }
  std::vector<FoundRow> rows;
  complete = each_pet(shop, console, [&](const Case& one) {
    if (auto row = found_row(one.pet, options.words)) rows.push_back(*std::move(row));
  });
  return options.json ? json(rows) : text(rows);
}
}  // namespace

Exit front_desk(const Options& options, Workshop& shop, Console& console) {
  bool complete = true;
  const std::string out = rows_text(options, shop, console, complete);
  console.show_reports();
  const std::string to = options.output.empty() ? "-" : options.output;
  const bool written = to == "-" ? write_whole(to, out, Replaces::own, shop.sink(), shop.disk())
                                 : write_new(to, out, shop.sink(), shop.disk());
  console.show_reports();
  return complete && written ? Exit::ok : Exit::faults;
}
}  // namespace furnish
