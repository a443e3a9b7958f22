#include "app/import.h"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>

#include "app/known_pets.h"
#include "app/new_files.h"
#include "app/stop_request.h"
#include "base/text.h"
#include "output/make_folder.h"
#include "output/write.h"
#include "spec/client_words.h"
#include "spec/file_kinds.h"
#include "spec/pet_format.h"

namespace furnish {
namespace {
namespace fs = std::filesystem;

ClientListRequest request_of(const Options& options) {
  ClientListRequest out;
  std::string unheard;  // the command line was checked
  for (const std::string& text : options.columns) {
    if (auto choice = parse_column_choice(text, unheard)) out.columns.push_back(*std::move(choice));
  }
  if (options.dates == "day-first") out.dates = DateOrder::day_first;
  if (options.dates == "month-first") out.dates = DateOrder::month_first;
  if (options.dates == "year-first") out.dates = DateOrder::year_first;
  out.whole_names = options.whole_names;
  return out;
}

std::string_view text_of(DateOrder order) {
  switch (order) {
    case DateOrder::day_first:
      return "day first";
    case DateOrder::month_first:
      return "month first";
    case DateOrder::year_first:
      return "year first";
  }
  return {};
}

std::string_view text_of(char separator) {
  return separator == ',' ? "commas" : separator == ';' ? "semicolons" : "tabs";
}

std::string counted(std::size_t n, std::string_view one, std::string_view many) {
  return fmt::format("{} {}", n, n == 1 ? one : many);
}

std::string root_of(const Options& options) {
  return options.root();
}

void report_no_file_name(const ClientPet& pet, DiagnosticSink& sink) {
  sink.error("no-name", pet.span, fmt::format("\"{}\" gives no name of a file", pet.name));
}

/// What `import` does in one run.
class Import {
 public:
  Import(const Options& options, Workshop& shop, Console& console)
      : options_(options), shop_(shop), console_(console) {}

  Exit run() {
    if (!in_a_salon(root_of(options_), shop_)) return told(Exit::faults);
    SalonFolder& folder = shop_.folder(root_of(options_));
    if (!folder.whole()) return told(Exit::faults);
    const auto list = read_client_list(shop_.context(), options_.from, request_of(options_),
                                       folder.salon(), shop_.today());
    if (!list) return told(Exit::faults);
    bool complete = true;
    KnownPets known(shop_.context(), root_of(options_), complete);
    if (!complete) return told(Exit::faults);
    choose(*list, known);
    console_.show_reports();
    const Exit exit = options_.write ? write() : show(*list, folder.salon());
    const bool faulty = list->unusable > 0 || unnamed_ > 0;
    console_.say(fmt::format("{}{}", options_.write ? "" : "\n", counts(*list)));
    say_how_to_go_on(*list, folder.salon());
    return told(exit == Exit::ok && faulty ? Exit::faults : exit);
  }

 private:
  struct Chosen {
    const ClientPet* pet;
    std::string name;  ///< of its file
  };

  Exit told(Exit exit) {
    console_.show_reports();
    return exit;
  }

  /// Those that are not there yet, and names for their files.
  void choose(const ClientList& list, KnownPets& known) {
    std::set<std::string> marks;
    for (const ClientPet& pet : list.pets) marks.insert(pet.mark);
    std::map<std::string, const ClientPet*> met;
    for (const ClientPet& pet : list.pets) {
      if (const auto [first, fresh] = met.try_emplace(pet.mark, &pet); !fresh) {
        ++twice_;
        auto& said = shop_.sink().warning("twice", pet.span,
                                          "the same name, owner and number as another line has; it "
                                          "is made once");
        said.notes.emplace_back(first->second->span, "the first of them");
        continue;
      }
      const KnownPets::Found found = known.find(pet, marks);
      if (found.likeness == KnownPets::Likeness::same) {
        ++there_;
        continue;
      }
      if (found.likeness == KnownPets::Likeness::perhaps) {
        ++perhaps_;
        shop_.sink()
            .warning("perhaps-there", pet.span,
                     fmt::format("this may be the pet of pets/{}, which has the same name and no "
                                 "other owner; it is not made",
                                 found.file))
            .hint = "if it is another one: furnish new pet --from, with another name";
        continue;
      }
      std::string name = known.free_name(pet);
      if (name.empty()) {
        ++unnamed_;
        report_no_file_name(pet, shop_.sink());
        continue;
      }
      chosen_.push_back({&pet, std::move(name)});
    }
  }

  std::string text(const ClientPet& pet, std::string_view schema) const {
    const std::string list = fs::path(options_.from).filename().string();
    return known_file(*find_file_kind("pet"), pet.facts, schema,
                      KnownPets::mark_line(list, pet) + pet.remarks);
  }

  std::string path(const Chosen& one) const {
    return path_in(path_in(root_of(options_), "pets"), one.name + ".toml");
  }

  Exit write() {
    const std::string folder = path_in(root_of(options_), "pets");
    if (chosen_.empty()) return Exit::ok;
    if (!make_folder(folder, shop_.sink(), shop_.disk())) return Exit::faults;
    const std::string schema = schema_from(root_of(options_), "pet", 1, shop_);
    if (schema.empty()) return Exit::faults;
    std::vector<NewFile> files;
    for (const Chosen& one : chosen_) files.push_back({path(one), text(*one.pet, schema)});
    StopRequest stop;
    bool stopped = false;
    written_ = write_many_new(files, shop_.sink(), shop_.disk(), [&] {
      stopped = stopped || stop.taken();
      return !stopped;
    });
    if (stopped) {
      shop_.sink().error("stopped", {},
                         fmt::format("stopped after {} of {} pets", written_, files.size()));
      return Exit::stopped;
    }
    return written_ == files.size() ? Exit::ok : Exit::faults;
  }

  /// What each column is, and the first pets.
  Exit show(const ClientList& list, const Salon& salon) {
    console_.say(fmt::format("{}: {}, with {}, {}{}", options_.from, list.encoding,
                             text_of(list.separator), counted(list.lines, "line", "lines"),
                             list.columns.headed ? " under its headers" : ", without headers"));
    std::size_t widest = 0;
    for (const ClientColumn& one : list.columns.columns) {
      widest = std::max(widest, code_points(one.header));
    }
    widest = std::min<std::size_t>(widest, 30);
    for (std::size_t i = 0; i < list.columns.columns.size(); ++i) {
      const ClientColumn& one = list.columns.columns[i];
      const std::size_t wide = code_points(one.header);
      console_.say(fmt::format("{:>4} {}{}  {}{}", i + 1, visible(one.header),
                               std::string(widest - std::min(wide, widest), ' '),
                               info(one.fact).meaning, remark(list, i, salon)));
    }
    constexpr std::size_t shown = 3;
    for (std::size_t i = 0; i < std::min(shown, chosen_.size()); ++i) {
      console_.say(fmt::format("\n{}", path(chosen_[i])));
      std::string indented = "    ";
      for (const char c : text(*chosen_[i].pet, {})) {
        indented += c;
        if (c == '\n') indented += "    ";
      }
      console_.say(std::string_view(indented).substr(0, indented.size() - 5));
    }
    return Exit::ok;
  }

  static std::string remark(const ClientList& list, std::size_t i, const Salon& salon) {
    const ClientColumn& column = list.columns.columns[i];
    std::string out = column.pet == 1 ? "" : fmt::format(" (of the line's pet {})", column.pet);
    if (column.fact == ClientFact::weight) {
      const bool pounds = column.unit.empty() ? salon.units == Units::us : column.unit == "lb";
      out += fmt::format(", in {} unless it says",
                         column.unit.empty() ? (pounds ? "lb" : "kg") : column.unit);
    }
    if (column.fact == ClientFact::born || column.fact == ClientFact::rabies) {
      out += fmt::format(", {}", text_of(list.orders[i]));
    }
    return out;
  }

  std::string counts(const ClientList& list) const {
    std::vector<std::string> out{options_.write ? counted(written_, "pet written", "pets written")
                                                : counted(chosen_.size(), "new pet", "new pets")};
    const auto add = [&](std::size_t n, std::string_view what) {
      if (n > 0) out.push_back(fmt::format("{} {}", n, what));
    };
    add(there_, "there already");
    add(perhaps_, "perhaps there already, not made");
    add(twice_, "twice in the list, made once");
    add(list.unusable + unnamed_,
        list.unusable + unnamed_ == 1 ? "line not used" : "lines not used");
    return joined(out, "; ");
  }

  /// A day under a vaccination's name may be the one it was given on or the one it runs out, and
  /// nothing in the list says which.
  void say_vaccinations(const ClientList& list, const Salon& salon) {
    for (std::size_t i = 0; i < list.columns.columns.size(); ++i) {
      const ClientColumn& column = list.columns.columns[i];
      if (column.fact != ClientFact::comment) continue;
      const std::string header = plain_letters(trimmed(column.header));
      std::string_view named;
      for (const VaccinationRule& rule : salon.vaccinations) {
        if (header.find(plain_letters(rule.name)) != std::string::npos) named = rule.name;
      }
      if (named.empty()) continue;
      console_.say(fmt::format(
          "Column {}, \"{}\", is only a remark in each file: the list does not say whether its day "
          "is the one on which {} was given or the one on which it runs out. {}",
          i + 1, visible(column.header), named,
          named == "rabies" ? fmt::format("If it was given then: --columns rabies={}.", i + 1)
                            : std::string("Write the day it was given under [vaccinations] of "
                                          "each pet.")));
    }
  }

  void say_how_to_go_on(const ClientList& list, const Salon& salon) {
    if (list.unusable > 0) {
      console_.say(
          "Mend those lines in the list and import it again, which makes only what is not there; "
          "or "
          "keep a column as a comment: --columns comment=NUMBER.");
    }
    const bool alerts = std::ranges::any_of(
        chosen_, [](const Chosen& one) { return one.pet->facts.contains(&keys::pet_file::alert); });
    if (alerts) {
      console_.say(
          "Notes became alerts: read them, give each its level, and name illnesses under "
          "[health] conditions, which safety rules ask for.");
    }
    if (!chosen_.empty()) say_vaccinations(list, salon);
    const bool last_visits =
        std::ranges::any_of(list.columns.columns, [](const ClientColumn& column) {
          return column.fact == ClientFact::comment && heads_last_visits(column.header);
        });
    if (last_visits && !chosen_.empty()) {
      console_.say(
          "Last visits are only a remark in each file, which no sheet counts from: "
          "`furnish new visit NAME --on DAY` begins one; with `unfinished` taken out it counts.");
    }
    if (options_.write || chosen_.empty()) return;
    console_.say(
        "Nothing is written yet. If this is right, say it again with --write; if a column is "
        "something else, with --columns, such as --columns name=2,owner=1.");
  }

  const Options& options_;
  Workshop& shop_;
  Console& console_;
  std::vector<Chosen> chosen_;
  std::size_t there_ = 0, perhaps_ = 0, twice_ = 0, unnamed_ = 0, written_ = 0;
};

/// The pets of a list that words name: those whose name they are, else those whose name and owner
/// have them all.
std::vector<const ClientPet*> named(const ClientList& list, const std::string& words) {
  std::vector<const ClientPet*> exact, all;
  const std::string wanted = plain_letters(trimmed(words));
  for (const ClientPet& pet : list.pets) {
    if (plain_letters(pet.name) == wanted) exact.push_back(&pet);
    if (plain_letters(fmt::format("{} {}", pet.name, pet.owner)) == wanted) all.push_back(&pet);
  }
  return exact.empty() ? all : exact;
}

const ClientPet* only_one(const ClientList& list, const std::string& name, DiagnosticSink& said,
                          DiagnosticSink& sink) {
  const auto found = named(list, name);
  if (found.size() == 1) return found.front();
  if (found.empty()) {
    sink.take(said);  // it may be in a line that could not be used
    std::vector<std::string_view> names;
    for (const ClientPet& pet : list.pets) names.push_back(pet.name);
    auto& fault = sink.error("no-pet", {}, fmt::format("the list has no pet \"{}\"", name));
    if (const auto near = nearest(name, names))
      fault.hint = fmt::format("did you mean \"{}\"?", *near);
    return nullptr;
  }
  auto& fault = sink.error("several-pets", {},
                           fmt::format("the list has {} pets \"{}\"", found.size(), name));
  for (const ClientPet* const pet : found) fault.notes.emplace_back(pet->span, pet->owner);
  fault.hint = fmt::format("say whose: \"{} {}\"", found.front()->name, found.front()->owner);
  return nullptr;
}
}  // namespace

Exit import_list(const Options& options, Workshop& shop, Console& console) {
  return Import(options, shop, console).run();
}

bool new_pets_from_list(const Options& options, Workshop& shop, Console& console) {
  const std::string root = root_of(options), folder = path_in(root, "pets");
  SalonFolder& salon = shop.folder(root);
  if (!salon.whole()) return false;
  // What is wrong with other lines than those that are asked for is not asked here.
  DiagnosticSink said;
  const ReadContext& context = shop.context();
  const auto list = read_client_list({context.files, context.sources, said}, options.from,
                                     request_of(options), salon.salon(), shop.today());
  if (!list) {
    shop.sink().take(said);
    return false;
  }
  bool all = true;
  for (const std::string& name : options.pets) {
    const ClientPet* const pet = only_one(*list, name, said, shop.sink());
    const std::string key = pet != nullptr ? file_name(pet->name) : std::string();
    if (pet != nullptr && key.empty()) {
      report_no_file_name(*pet, shop.sink());
      all = false;
      continue;
    }
    const bool ready = pet != nullptr && make_folder(folder, shop.sink(), shop.disk());
    const std::string schema = ready ? schema_from(root, "pet", 1, shop) : std::string();
    if (schema.empty()) {
      all = false;
      continue;
    }
    const std::string file = path_in(folder, key + ".toml");
    const std::string text =
        fmt::format("#:schema {}\n{}{}{}", schema,
                    KnownPets::mark_line(fs::path(options.from).filename().string(), *pet),
                    pet->remarks, file_template(*find_file_kind("pet"), pet->facts, {}));
    if (!write_new(file, text, shop.sink(), shop.disk())) {
      all = false;
      continue;
    }
    console.show_reports();
    console.say(file);
  }
  return all;
}
}  // namespace furnish
