#include "app/front_desk.h"

#include <fmt/format.h>

#include <functional>

#include "app/output_file.h"
#include "base/text.h"
#include "output/write.h"
#include "plan/front_desk.h"
#include "sheet/desk_list.h"

namespace furnish {
namespace {
/// What of the salon could not be looked at.
struct Unread {
  bool any = false;                  ///< also where a pet is known but for a visit
  bool bookings = false;             ///< not all of each pet's: what of them the run has told
  bool pets = false;                 ///< not even which there are
  std::vector<std::string> missing;  ///< keys of pets
};

/// Every pet of the salon, read and planned.
Unread each_pet(Workshop& shop, Console& console, const std::function<void(const Case&)>& look) {
  bool listed = true;
  const std::vector<PetPath> pets = shop.pets(listed);
  Unread out;
  out.any = out.pets = !listed;
  console.expect(pets.size());
  for (const PetPath& path : pets) {
    console.at(path.key());
    DiagnosticSink said;
    const auto one = shop.open(path, said);
    // What is wrong with a file is told; what its sheet warns of is for its sheet.
    if (!one || said.has_errors()) {
      shop.sink().take(said);
      out.any = true;
    }
    if (one) {
      out.bookings = out.bookings || !one->all_bookings;
      look(*one);
    } else {
      out.missing.push_back(path.key());
    }
  }
  console.all_came();
  return out;
}

/// Gives rows as what was asked for: text, JSON, or a page for the desk.
class Answer {
 public:
  Answer(const Options& options, Workshop& shop, Console& console)
      : options_(options), shop_(shop), console_(console) {}

  Exit due() {
    std::vector<DueRow> rows;
    each([&](const Case& one) {
      if (auto row = due_row(one.pet, one.plan, options_.within)) rows.push_back(*std::move(row));
    });
    unread_.any = unread_.any || unread_.bookings;
    sort_rows(rows);
    const Date by = after(shop_.today(), options_.within);
    return options_.as_page ? page<DueRow>(rows, by, "due")
                            : write(rows, options_.json ? json(rows) : text(rows, by));
  }

  Exit expiring() {
    std::vector<ExpiringRow> rows;
    each([&](const Case& one) {
      for (ExpiringRow& row : expiring_rows(one.pet, one.plan, options_.within)) {
        rows.push_back(std::move(row));
      }
    });
    // A list that lacks a vaccination reads as if nobody lacked it.
    if (shop_.folder(options_.root()).salon().unknown(SalonPart::vaccinations)) {
      return Exit::faults;
    }
    sort_rows(rows);
    return options_.as_page
               ? page<ExpiringRow>(rows, after(shop_.today(), options_.within), "expiring")
               : write(rows, options_.json ? json(rows) : text(rows));
  }

  Exit find() {
    std::vector<FoundRow> rows;
    each([&](const Case& one) {
      if (auto row = found_row(one.pet, options_.words)) rows.push_back(*std::move(row));
    });
    return options_.as_page ? page<FoundRow>(rows, joined(options_.words, " "), "found")
                            : write(rows, options_.json ? json(rows) : text(rows));
  }

 private:
  void each(const std::function<void(const Case&)>& look) {
    unread_ = each_pet(shop_, console_, look);
    console_.show_reports();
  }

  /// That a list lacks somebody is said in it, and that there is nobody only of all.
  template <typename Row>
  Exit write(const std::vector<Row>& rows, std::string out) {
    if (!options_.json && unread_.any) {
      if (rows.empty()) out.clear();
      if (!unread_.missing.empty()) {
        out += fmt::format("missing, as a file has faults: {}\n", joined(unread_.missing, ", "));
      } else if (!unread_.pets) {  // that there are no pets, or none can be listed, says itself
        out += "not everything can be read: see the messages\n";
      }
    }
    if (!options_.json) out = visible_lines(out);
    const bool file = !options_.output.empty() && options_.output != "-";
    const bool written = file ? write_new(options_.output, out, shop_.sink(), shop_.disk())
                              : write_whole("-", out, Replaces::own, shop_.sink(), shop_.disk());
    console_.show_reports();
    return !unread_.any && written ? Exit::ok : Exit::faults;
  }

  template <typename Row, typename About>
  Exit page(const std::vector<Row>& rows, const About& about, std::string_view name) {
    if (unread_.pets) return Exit::faults;
    SalonFolder& folder = shop_.folder(options_.root());
    const auto paper =
        folder.good() ? shop_.paper(folder.salon(), shop_.sink()) : std::optional<Paper>();
    const auto voice = paper ? shop_.voice(folder, Pet{}, shop_.sink()) : std::nullopt;
    const auto sheet =
        voice ? make_list(std::span<const Row>(rows), about,
                          {folder.salon(), shop_.today(), *paper, unread_.missing, !unread_.any},
                          *voice, shop_.sink())
              : std::nullopt;
    console_.show_reports();
    if (!sheet) return Exit::faults;
    SheetWriter writer(options_, shop_, console_);
    const auto path =
        writer.write(*sheet, fmt::format("{}-{}", name, to_iso(shop_.today())), folder.root());
    return path && !unread_.any ? Exit::ok : Exit::faults;
  }

  const Options& options_;
  Workshop& shop_;
  Console& console_;
  Unread unread_;
};
}  // namespace

Exit front_desk(const Options& options, Workshop& shop, Console& console) {
  if (!may_be_written(options, shop.sink())) {
    console.show_reports();
    return Exit::usage;
  }
  Answer answer(options, shop, console);
  if (options.command == Command::due) return answer.due();
  return options.command == Command::expiring ? answer.expiring() : answer.find();
}
}  // namespace furnish
