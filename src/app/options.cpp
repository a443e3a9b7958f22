#include "app/options.h"

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include <algorithm>
#include <filesystem>
#include <iostream>
#include <map>
#include <tuple>
#include <utility>

#include "app/sheet_maker.h"
#include "app/visit_name.h"
#include "base/paper.h"
#include "base/quantity.h"
#include "base/text.h"
#include "spec/file_kinds.h"
#include "spec/language.h"

namespace furnish {
namespace {
const std::map<std::string, Format> formats{
    {"pdf", Format::pdf}, {"png", Format::png}, {"svg", Format::svg}, {"text", Format::text}};

const std::map<std::string, Units> unit_words{{"metric", Units::metric}, {"us", Units::us}};

constexpr const char* statuses =
    "Exit status: 0 all is done; 1 a file has faults, a page does not fit or a sheet could not be\n"
    "written (all else is done); 2 the command line is wrong.";

/// A day as the program takes it everywhere else; an empty answer is CLI11's word for "valid".
std::string valid_day(const std::string& text) {
  return parse_date(text) ? "" : "expected a day such as 2026-11-24, found \"" + text + "\"";
}

std::string valid_language(const std::string& tag) {
  if (well_formed_language(tag)) return "";
  return "expected a language tag such as es or pt-BR, found \"" + tag + "\"";
}

std::vector<std::string_view> kind_names() {
  std::vector<std::string_view> out;
  for (const FileKind& kind : file_kinds()) out.push_back(kind.name);
  return out;
}

std::string valid_kind(const std::string& name) {
  if (find_file_kind(name) != nullptr) return "";
  const auto names = kind_names();
  const auto near = nearest(name, names);
  return fmt::format("there is no kind of file \"{}\"; {}", name,
                     near ? fmt::format("did you mean {}?", *near)
                          : fmt::format("one of {}", fmt::join(names, ", ")));
}

std::string valid_visit(const std::string& text) {
  if (parse_visit(text).first) return "";
  return "expected a visit such as 2026-11-24, or 2026-11-24-2 for the second of a day, found \"" +
         text + "\"";
}

/// "2w", "30d", or as files write it.
std::optional<std::chrono::days> span_of(const std::string& text) {
  std::string written = text;
  if (!written.empty() && written.back() == 'w') written += "k";
  if (!written.empty() && written.back() == 'd') written += "ay";
  return parse_days(written).value;
}

/// What the ending of a file's name asks for; a PDF where it asks for nothing.
Format format_of(std::string_view output) {
  constexpr std::pair<std::string_view, Format> endings[] = {
      {".png", Format::png}, {".svg", Format::svg}, {".txt", Format::text}};
  for (const auto& [ending, format] : endings) {
    if (output.ends_with(ending)) return format;
  }
  return Format::pdf;
}

/// The ending of an output's name that no format has; empty if there is none to look at.
std::string unknown_ending(const Options& options) {
  const std::filesystem::path name(options.output);
  const std::string ending = name.extension().string();
  std::error_code ignored;
  if (options.command != Command::sheet || ending.empty() || ending == ".") return {};
  if (std::filesystem::is_directory(name, ignored)) return {};
  for (const char* const known : {".pdf", ".png", ".svg", ".txt"}) {
    if (lower_ascii(ending) == known) return {};
  }
  return ending;
}

std::vector<std::string> command_names(const CLI::App& app) {
  std::vector<std::string> out;
  for (const CLI::App* const one : app.get_subcommands([](const CLI::App*) { return true; })) {
    out.push_back(one->get_name());
  }
  return out;
}

/// For the first word of a command line that is no command; empty if it is one.
std::string unknown_command(const CLI::App& app, const std::string& word) {
  const std::vector<std::string> names = command_names(app);
  if (word.starts_with("-") || std::ranges::find(names, word) != names.end()) return {};
  const std::vector<std::string_view> views(names.begin(), names.end());
  const auto near = nearest(word, views);
  return fmt::format("there is no command \"{}\"; {}\n", word,
                     near ? fmt::format("did you mean {}?", *near)
                          : fmt::format("one of {}", fmt::join(names, ", ")));
}

struct Raw {
  Options options;
  std::optional<Format> format;
  std::string on, day, visit, within, booked, spec_for = "everyone", copy_for = "file";
  bool no_browser = false;
};

void add_common(CLI::App& command, Raw& raw) {
  command.add_option("--on", raw.on, "the day to take for today, as 2026-11-24")->check(valid_day);
  command.add_option("--salon", raw.options.salon, "the salon's folder (else the one you are in)");
  command.add_option("--data", raw.options.data, "folder with fonts/ and styles/");
}

std::string valid_span(const std::string& text) {
  if (span_of(text)) return "";
  return "expected a span such as 2w, 30d or \"3 months\", found \"" + text + "\"";
}

void add_booked(CLI::App& command, Raw& raw) {
  command
      .add_option_function<std::string>(
          "--booked",
          [&raw](const std::string& day) {
            raw.booked = day;
            raw.options.booked = true;
          },
          "the pets booked on DAY (else today), in time order")
      ->expected(0, 1)
      ->default_str("")
      ->check([](const std::string& day) { return day.empty() ? "" : valid_day(day); })
      ->type_name("DAY");
}

/// `due`, `expiring` and `find`.
CLI::App* add_front_desk(CLI::App& app, Raw& raw, const char* name, Command which,
                         const char* what) {
  CLI::App* const command = app.add_subcommand(name, what);
  add_common(*command, raw);
  command->add_flag("--json", raw.options.json, "for another program");
  command->add_option("-o,--output", raw.options.output, "a new file (else the standard output)");
  command->callback([&raw, which] { raw.options.command = which; });
  return command;
}

void add_visit(CLI::App& command, Raw& raw) {
  command.add_option("--visit", raw.visit, "the day of the visit, or DAY-2 (else the last one)")
      ->check(valid_visit);
}

/// Of whatever makes pages.
void add_pages(CLI::App& command, Raw& raw) {
  Options& o = raw.options;
  command.add_option("-o,--output", o.output, "file, folder, or - for the standard output");
  command
      .add_option("--format", raw.format,
                  "pdf, png, svg, or text (the page as marks); else as the output's name ends")
      ->transform(CLI::CheckedTransformer(formats).description(""));
  command.add_option("--paper", o.paper, fmt::format("{}", fmt::join(paper_names(), ", ")));
  command
      .add_option("--language", o.language, "of the sheet, such as es or pt-BR (else the reader's)")
      ->check(valid_language);
  command.add_option("--dpi", o.dpi, "dots an inch of a png")->check(CLI::Range(10, 1200));
  command.add_flag("--strict", o.strict, "warnings count as faults");
  command.add_flag("--force", o.force, "replace a file that furnish did not write, or a link");
}

void add_units(CLI::App& command, Raw& raw) {
  command.add_option("--units", raw.options.units, "metric or us (else the reader's)")
      ->transform(CLI::CheckedTransformer(unit_words).description(""));
}

void add_rendering(CLI::App& command, Raw& raw) {
  Options& o = raw.options;
  command.add_option("PET", o.pets, "pets: files, or names in the salon's pets/; none means all");
  add_pages(command, raw);
  add_units(command, raw);
  command
      .add_option("--with-spec", raw.spec_for,
                  "whom the pet's file inside the PDF is for: everyone, or staff for a file copy")
      ->check(CLI::IsMember({"everyone", "staff"}));
  command.add_flag("--together", o.together, "all pets in one PDF");
}

/// `new salon FOLDER`, `new pet NAME…`, `new style NAME…`, `new day [DATE]`.
void add_new_files(CLI::App& fresh, Raw& raw) {
  const auto add = [&](const char* kind, const char* argument, const char* what) {
    CLI::App* const command = fresh.add_subcommand(kind, what);
    CLI::Option* const given = command->add_option(argument, raw.options.pets)->type_name("");
    add_common(*command, raw);
    command->callback([&raw, kind] {
      raw.options.command = Command::new_files;
      raw.options.kind = kind;
    });
    return given;
  };
  add("salon", "FOLDER", "a salon's folder with its salon.toml, every key in it as a comment")
      ->required()
      ->expected(1);
  add("pet", "NAME", "a pet's file in pets/, every key in it as a comment")->required();
  add("style", "NAME", "a style's file in styles/, every key in it as a comment")->required();
  add("day", "DATE", "a day's file in days/ for its bookings (else today's)")->expected(0, 1);
}

void add_desk(CLI::App& app, Raw& raw) {
  CLI::App* const desk = app.add_subcommand(
      "desk", "a page in the browser of this computer, to find, change and print");
  desk->add_option("FOLDER", raw.options.salon, "the salon's folder (else the one you are in)")
      ->type_name("");
  desk->add_option("--on", raw.on, "the day to take for today, as 2026-11-24")->check(valid_day);
  desk->add_option("--data", raw.options.data, "folder with fonts/ and styles/");
  desk->add_flag("--look", raw.options.look, "nothing can be changed, as for a tablet at the wall");
  desk->add_flag("--no-browser", raw.no_browser, "say where its start page lies, open nothing");
  desk->callback([&raw] {
    raw.options.command = Command::desk;
    raw.options.browser = !raw.no_browser;
  });
}

/// A command that makes a sheet.
CLI::App* add_sheet(CLI::App& app, Raw& raw, const std::string& name, const SheetMaker& sheet,
                    const std::string& what) {
  CLI::App* const command = app.add_subcommand(name, what);
  add_rendering(*command, raw);
  add_common(*command, raw);
  command->callback([&raw, &sheet] {
    raw.options.command = Command::sheet;
    raw.options.sheet = &sheet;
  });
  return command;
}
}  // namespace

ParsedOptions parse_options(int argc, const char* const* argv) {
  Raw raw;
  Options& o = raw.options;
  CLI::App app("The sheets a grooming salon runs on, from plain TOML files.", "furnish");
  app.set_version_flag("--version", "furnish " FURNISH_VERSION);
  app.require_subcommand(1);
  app.footer(statuses);

  CLI::App* card = add_sheet(app, raw, "card", sheets::card,
                             "kennel cards: alerts, handling and trim at a glance");
  card->add_option("--copies-per-sheet", o.copies_per_sheet,
                   "several cards on each sheet of the salon's paper, with cut marks")
      ->check(CLI::Range(1, 64));

  add_booked(*card, raw);

  CLI::App* style = add_sheet(app, raw, "style", sheets::style,
                              "style sheets: a new groomer takes over a regular");
  style->add_flag("--sources", o.sources, "file and line beside each part of the trim");

  add_booked(*style, raw);

  CLI::App* note = add_sheet(app, raw, "note", sheets::note,
                             "visit notes: before and after, what was found and agreed");
  add_visit(*note, raw);
  note->add_option("--for", raw.copy_for,
                   "owner (nothing that is for staff) or file (everything, staff's files inside)")
      ->check(CLI::IsMember({"owner", "file"}));

  CLI::App* care =
      add_sheet(app, raw, "care", sheets::care,
                "care sheets: what the owner does until the next visit, and its calendar entry");
  add_visit(*care, raw);
  add_booked(*care, raw);

  CLI::App* rules = app.add_subcommand(
      "rules", "a page for the wall: the salon's own rules, and what holds with every dog");
  add_pages(*rules, raw);
  add_common(*rules, raw);
  rules->callback([&] { o.command = Command::rules; });

  CLI::App* day = app.add_subcommand(
      "day", "the sheet of a day for the wall: who comes when, by groomer, and what to mix");
  day->add_option("DATE", raw.day, "the day, as 2026-11-24 (else today)")
      ->type_name("")
      ->check(valid_day);
  add_pages(*day, raw);
  add_units(*day, raw);
  add_common(*day, raw);
  day->callback([&] { o.command = Command::day; });

  CLI::App* check = app.add_subcommand("check", "read every file of a salon and say what is wrong");
  check->add_option("FOLDER", o.pets, "the salon's folder, or files of one")->type_name("");
  add_common(*check, raw);
  check->add_flag("--strict", o.strict, "warnings count as faults");
  check->add_flag("-v,--verbose", o.verbose, "with the lines of every warning and what to do");
  check->add_flag("--json", o.json, "for another program, with ranges");
  check->callback([&] { o.command = Command::check; });

  CLI::App* plan = app.add_subcommand("plan", "what is worked out for a pet, as text");
  plan->add_option("PET", o.pets, "pets: files, or names in the salon's pets/")->required();
  add_common(*plan, raw);
  plan->add_flag("--json", o.json, "for another program");
  plan->callback([&] { o.command = Command::plan; });

  CLI::App* due = add_front_desk(app, raw, "due", Command::due,
                                 "who is due: last visit, interval, day, owner's number");
  CLI::App* expiring = add_front_desk(app, raw, "expiring", Command::expiring,
                                      "vaccinations that ran out or soon will");
  for (CLI::App* const one : {due, expiring}) {
    one->add_option("--within", raw.within, "how far ahead: 2w, 30d, \"3 months\"")
        ->check(valid_span);
  }
  CLI::App* find = add_front_desk(app, raw, "find", Command::find,
                                  "pets by name, owner, number or alert; accents and case aside");
  find->add_option("WORDS", o.words, "all of them have to be found")->required()->type_name("");

  CLI::App* rename =
      app.add_subcommand("rename", "give a pet another name of its file, and move its visits too");
  rename->add_option("NAMES", o.pets, "the old name in pets/, and the new one")
      ->required()
      ->expected(2)
      ->type_name("OLD NEW");
  add_common(*rename, raw);
  rename->callback([&] { o.command = Command::rename; });

  CLI::App* fresh = app.add_subcommand("new", "start a file from what is known");
  fresh->require_subcommand(1);
  CLI::App* visit = fresh->add_subcommand(
      "visit", "a visit's file in visits/PET/, filled in as planned, for the desk to change");
  visit->add_option("PET", o.pets, "pets: files, or names in the salon's pets/")->required();
  add_common(*visit, raw);
  visit->callback([&] { o.command = Command::new_visit; });

  add_new_files(*fresh, raw);

  add_desk(app, raw);

  CLI::App* schema = app.add_subcommand(
      "schema", "the JSON Schema of a kind of file, for editors and other programs");
  schema->add_option("KIND", o.kind, fmt::format("{}", fmt::join(kind_names(), ", ")))
      ->required()
      ->type_name("")
      ->check(valid_kind);
  schema->callback([&] { o.command = Command::schema; });

  CLI::App* unpack = app.add_subcommand(
      "unpack", "the pet's file that a sheet carries, from its PDF or the text of its code");
  unpack->add_option("FILE", o.input, "a sheet's PDF, a text, or - for the standard input")
      ->required();
  unpack->add_option("-o,--output", o.output, "a new file (else the standard output)");
  unpack->add_option("--pet", o.only_pet, "which pet, where a PDF carries several");
  add_common(*unpack, raw);
  unpack->callback([&] { o.command = Command::unpack; });

  std::vector<std::string> words(argv + 1, argv + argc);
  if (!words.empty() && words.front() == "help") {  // `help card` is `card --help`
    words.erase(words.begin());
    words.emplace_back("--help");
  }
  if (const std::string fault = words.empty() ? "" : unknown_command(app, words.front());
      !fault.empty()) {
    std::cerr << fault;
    return {std::nullopt, Exit::usage};
  }
  std::ranges::reverse(words);  // as CLI11 takes them
  try {
    app.parse(words);
  } catch (const CLI::ParseError& fault) {
    const bool fine = fault.get_exit_code() == static_cast<int>(CLI::ExitCodes::Success);
    app.exit(fault, std::cout, std::cerr);
    return {std::nullopt, fine ? Exit::ok : Exit::usage};
  }
  if (!raw.on.empty()) o.on = parse_date(raw.on);
  if (!raw.booked.empty() && !o.on) o.on = parse_date(raw.booked);
  if (raw.within.empty()) {
    if (o.command == Command::expiring) o.within = std::chrono::days(30);
  } else {
    o.within = *span_of(raw.within);
  }
  if (o.booked && !o.pets.empty()) {
    std::cerr << "--booked chooses the pets: name none beside it\n";
    return {std::nullopt, Exit::usage};
  }
  if (!raw.day.empty()) o.on = parse_date(raw.day);
  if (!raw.visit.empty()) std::tie(o.visit, o.visit_number) = parse_visit(raw.visit);
  o.format = raw.format.value_or(format_of(o.output));
  if (const std::string ending = unknown_ending(o); !raw.format && !ending.empty()) {
    std::cerr << fmt::format(
        "\"{}\" says not what to make: end the name in .pdf, .png, .svg or .txt, or say "
        "--format\n",
        ending);
    return {std::nullopt, Exit::usage};
  }
  if (raw.copy_for == "owner") o.sheet = &sheets::owner_note;
  if (raw.spec_for == "staff") o.spec_for = Audience::staff;
  return {std::move(o), Exit::ok};
}
}  // namespace furnish
