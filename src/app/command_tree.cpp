#include "app/command_tree.h"

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include "app/command_values.h"
#include "app/import_options.h"
#include "app/sheet_maker.h"
#include "base/paper.h"

namespace furnish {
namespace {
constexpr const char* statuses =
    "Exit status: 0 all is done; 1 a file has faults, a page does not fit or a sheet could not be\n"
    "written (all else is done); 2 the command line is wrong; 130 Ctrl-C stopped it.";
constexpr const char* pets_named = "files, or names in the salon's pets/";

/// "pdf|png|svg|text"
std::string either(std::span<const std::string_view> words) {
  return fmt::format("{}", fmt::join(words, "|"));
}

/// Lets an option take one of some words.
void take(CLI::Option* option, std::vector<std::string_view> words) {
  option->type_name(either(words))->check([words](const std::string& text) {
    return wrong_word(text, words);
  });
}

void add_common(CLI::App& command, Asked& asked) {
  command.add_option("--on", asked.on, "the day to take for today, as 2026-11-24")
      ->type_name("DAY")
      ->check(wrong_day);
  command
      .add_option("--salon", asked.options.salon, "the salon's folder (else the one you are in)")
      ->type_name("FOLDER");
  command.add_option("--data", asked.options.data, "folder with fonts/ and styles/")
      ->type_name("FOLDER");
  command.add_flag("--strict", asked.options.strict, "warnings count as faults");
}

void add_pets(CLI::App& command, Asked& asked) {
  command.add_option("PET", asked.options.pets, pets_named)->required()->type_name("");
}

void add_booked(CLI::App& command, Asked& asked) {
  command
      .add_option_function<std::string>(
          "--booked",
          [&asked](const std::string& day) {
            asked.booked = day;
            asked.options.booked = true;
          },
          "the pets booked on DAY (else today), in time order")
      ->expected(0, 1)
      ->default_str("")
      ->check([](const std::string& day) { return day.empty() ? "" : wrong_day(day); })
      ->type_name("DAY");
}

void add_visit(CLI::App& command, Asked& asked) {
  command.add_option("--visit", asked.visit, "the day of the visit, or DAY-2 (else the last one)")
      ->type_name("VISIT")
      ->check(wrong_visit);
}

/// Of whatever makes pages.
void add_pages(CLI::App& command, Asked& asked) {
  Options& o = asked.options;
  command.add_option("-o,--output", o.output, "file, folder, or - for the standard output")
      ->type_name("FILE");
  take(command.add_option("--format", asked.format,
                          "else as the output's name ends; text is the page as marks"),
       first_words(formats()));
  take(command.add_option("--standard", asked.standard,
                          "what a PDF claims: ua-1 is PDF/UA-1 and PDF/A-3A (unless you say); ua-2 "
                          "is PDF/UA-2, WTPDF 1.0 and PDF/A-4, in PDF 2.0"),
       first_words(standards()));
  command.add_option("--paper", o.paper, "else the salon's")
      ->type_name(either(paper_names()))
      ->check(wrong_paper);
  command
      .add_option("--language", o.language, "of the sheet, such as es or pt-BR (else the reader's)")
      ->type_name("TAG")
      ->check(wrong_language);
  command.add_option("--dpi", o.dpi, "dots an inch of a png, from 10 to 1200")
      ->type_name("NUMBER")
      ->check([](const std::string& text) { return wrong_number(text, 10, 1200); });
  command.add_flag("--force", o.force, "replace a file that furnish did not write, or a link");
}

void add_units(CLI::App& command, Asked& asked) {
  take(command.add_option("--units", asked.units, "else the reader's"), first_words(unit_words()));
}

void add_jobs(CLI::App& command, Asked& asked) {
  command
      .add_option("-j,--jobs", asked.options.jobs, "how many are made at once (else one a core)")
      ->type_name("NUMBER")
      ->check([](const std::string& text) { return wrong_number(text, 1, 256); });
}

/// A command that makes a sheet of each pet.
CLI::App* add_sheet(CLI::App& app, Asked& asked, const std::string& name, const SheetMaker& sheet,
                    const std::string& what) {
  Options& o = asked.options;
  CLI::App* const command = app.add_subcommand(name, what);
  command->add_option("PET", o.pets, fmt::format("{}; none means all", pets_named))->type_name("");
  add_pages(*command, asked);
  add_units(*command, asked);
  take(command->add_option("--with-spec", asked.spec_for,
                           "whom the pet's file inside the PDF is for; staff for a file copy"),
       {"everyone", "staff"});
  command->add_flag("--together", o.together, "all pets in one PDF");
  command->add_flag("--fresh", o.fresh, "make also those of which nothing changed");
  add_jobs(*command, asked);
  add_common(*command, asked);
  command->callback([&asked, &sheet] {
    asked.options.command = Command::sheet;
    asked.options.sheet = &sheet;
  });
  return command;
}

void add_sheets(CLI::App& app, Asked& asked) {
  Options& o = asked.options;
  CLI::App* card = add_sheet(app, asked, "card", sheets::card,
                             "kennel cards: alerts, handling and trim at a glance");
  card->add_option("--copies-per-sheet", o.copies_per_sheet,
                   "several cards on each sheet of the salon's paper, with cut marks")
      ->type_name("NUMBER")
      ->check([](const std::string& text) { return wrong_number(text, 1, 64); });
  add_booked(*card, asked);

  CLI::App* style = add_sheet(app, asked, "style", sheets::style,
                              "style sheets: a new groomer takes over a regular");
  style->add_flag("--sources", o.sources, "file and line beside each part of the trim");
  add_booked(*style, asked);

  CLI::App* note = add_sheet(app, asked, "note", sheets::note,
                             "visit notes: before and after, what was found and agreed");
  add_visit(*note, asked);
  take(note->add_option("--for", asked.copy_for,
                        "owner (nothing that is for staff) or file (everything, staff's inside)"),
       {"owner", "file"});

  CLI::App* care =
      add_sheet(app, asked, "care", sheets::care,
                "care sheets: what the owner does until the next visit, and its calendar entry");
  add_visit(*care, asked);
  add_booked(*care, asked);
}

/// Pages of no single pet.
void add_walls(CLI::App& app, Asked& asked) {
  CLI::App* rules = app.add_subcommand(
      "rules", "a page for the wall: the salon's own rules, and what holds with every dog");
  add_pages(*rules, asked);
  add_common(*rules, asked);
  rules->callback([&asked] { asked.options.command = Command::rules; });

  CLI::App* day = app.add_subcommand(
      "day", "the sheet of a day for the wall: who comes when, by groomer, and what to mix");
  day->add_option("DATE", asked.day, "the day, as 2026-11-24 (else today)")
      ->type_name("")
      ->check(wrong_day);
  day->add_flag("--week", asked.options.week,
                "seven days from that day on, by groomer: minutes, pets, what cannot go");
  add_pages(*day, asked);
  add_units(*day, asked);
  add_common(*day, asked);
  day->callback([&asked] { asked.options.command = Command::day; });

  CLI::App* book = app.add_subcommand(
      "book", "every pet's card, style sheet and last note in one PDF, for the salon's own binder");
  add_pages(*book, asked);
  add_units(*book, asked);
  add_common(*book, asked);
  book->callback([&asked] {
    asked.options.command = Command::book;
    asked.options.spec_for = Audience::staff;
  });
}

void add_checks(CLI::App& app, Asked& asked) {
  Options& o = asked.options;
  CLI::App* check = app.add_subcommand("check", "read every file of a salon and say what is wrong");
  check->add_option("FOLDER", o.pets, "the salon's folder, or files of one")->type_name("");
  add_common(*check, asked);
  check->add_flag("-v,--verbose", o.verbose, "with the lines of every warning and what to do");
  check->add_flag("--foreign", o.foreign,
                  "also what a page shows in another language than its own");
  check->add_flag("--json", o.json, "for another program, with ranges");
  take(check->add_option("--format", asked.format, "--format json is --json"), {"text", "json"});
  check->callback([&asked] {
    asked.options.command = Command::check;
    if (asked.format == "json") asked.options.json = true;
    asked.format.clear();
  });

  CLI::App* plan = app.add_subcommand("plan", "what is worked out for a pet, as text");
  add_pets(*plan, asked);
  add_common(*plan, asked);
  plan->add_flag("--json", o.json, "for another program; of several pets one list");
  plan->callback([&o] { o.command = Command::plan; });
}

/// `due`, `expiring` and `find`.
void add_front_desk(CLI::App& app, Asked& asked) {
  const auto add = [&](const char* name, Command which, const char* what) {
    CLI::App* const command = app.add_subcommand(name, what);
    add_common(*command, asked);
    command->add_flag("--json", asked.options.json, "for another program");
    add_pages(*command, asked);
    command->callback([&asked, which] { asked.options.command = which; });
    return command;
  };
  CLI::App* due = add("due", Command::due, "who is due: last visit, interval, day, owner's number");
  CLI::App* expiring = add("expiring", Command::expiring, "vaccinations that ran out or soon will");
  for (CLI::App* const one : {due, expiring}) {
    one->add_option("--within", asked.within, "how far ahead: 2w, 30d, \"3 months\"")
        ->type_name("SPAN")
        ->check(wrong_span);
  }
  add("find", Command::find, "pets by name, owner, number or alert; accents and case aside")
      ->add_option("WORDS", asked.options.words, "all of them have to be found")
      ->required()
      ->type_name("");
}

/// `new visit PET…`, `new salon FOLDER`, `new pet NAME…`, `new style NAME…`, `new day [DATE]`.
void add_new_files(CLI::App& app, Asked& asked) {
  CLI::App* fresh = app.add_subcommand("new", "start a file from what is known");
  fresh->require_subcommand(1);
  CLI::App* visit = fresh->add_subcommand(
      "visit", "a visit's file in visits/PET/, filled in as planned, for the desk to change");
  add_pets(*visit, asked);
  add_common(*visit, asked);
  visit->callback([&asked] { asked.options.command = Command::new_visit; });

  const auto add = [&](const char* kind, const char* argument, const char* what, const char* doc) {
    CLI::App* const command = fresh->add_subcommand(kind, what);
    CLI::Option* const given =
        command->add_option(argument, asked.options.pets, doc)->type_name("");
    add_common(*command, asked);
    command->callback([&asked, kind] {
      asked.options.command = Command::new_files;
      asked.options.kind = kind;
    });
    return given;
  };
  add("salon", "FOLDER", "a salon's folder with its salon.toml, every key in it as a comment",
      "a new folder, or an empty one")
      ->required()
      ->expected(1);
  add("pet", "NAME", "a pet's file in pets/, every key in it as a comment", "what it is called")
      ->required();
  add_client_list(*fresh->get_subcommand("pet"), asked.options);
  add("style", "NAME", "a style's file in styles/, every key in it as a comment",
      "what it is called")
      ->required();
  add("day", "DATE", "a day's file in days/ for its bookings", "the day (else today)")
      ->expected(0, 1);
}

void add_desk(CLI::App& app, Asked& asked) {
  CLI::App* const desk = app.add_subcommand(
      "desk", "a page in the browser of this computer, to find, change and print");
  desk->add_option("FOLDER", asked.options.salon, "the salon's folder (else the one you are in)")
      ->type_name("");
  desk->add_option("--on", asked.on, "the day to take for today, as 2026-11-24")
      ->type_name("DAY")
      ->check(wrong_day);
  desk->add_option("--data", asked.options.data, "folder with fonts/ and styles/")
      ->type_name("FOLDER");
  desk->add_flag("--look", asked.options.look,
                 "nothing can be changed, as for a tablet at the wall");
  desk->add_flag("--no-browser", asked.options.no_browser,
                 "say where its start page lies, open nothing");
  desk->callback([&asked] { asked.options.command = Command::desk; });
}

void add_watch(CLI::App& app, Asked& asked) {
  CLI::App* const watch = app.add_subcommand(
      "watch", "makes the salon's sheets, and again those of which a file is saved, until Ctrl-C");
  watch->add_option("FOLDER", asked.options.salon, "the salon's folder (else the one you are in)")
      ->type_name("");
  take(watch->add_option("--sheet", asked.sheet, "which sheets (else cards)"),
       {"card", "style", "note", "care"});
  watch->add_option("--on", asked.on, "the day to take for today, as 2026-11-24")
      ->type_name("DAY")
      ->check(wrong_day);
  watch->add_option("--data", asked.options.data, "folder with fonts/ and styles/")
      ->type_name("FOLDER");
  add_jobs(*watch, asked);
  watch->callback([&asked] {
    Options& o = asked.options;
    o.command = Command::watch;
    for (const SheetMaker* const one : {&sheets::style, &sheets::note, &sheets::care}) {
      if (one->kind.name == asked.sheet) o.sheet = one;
    }
  });
}

void add_others(CLI::App& app, Asked& asked) {
  Options& o = asked.options;
  add_common(*add_import(app, o), asked);

  CLI::App* rename =
      app.add_subcommand("rename", "give a pet another name of its file, and move its visits too");
  rename->add_option("OLD", asked.old_name, "its name in pets/")->required()->type_name("");
  rename->add_option("NEW", asked.new_name, "the new one")->required()->type_name("");
  add_common(*rename, asked);
  rename->callback([&asked] {
    asked.options.command = Command::rename;
    asked.options.pets = {asked.old_name, asked.new_name};
  });

  CLI::App* schema = app.add_subcommand(
      "schema", "the JSON Schema of a kind of file, for editors and other programs");
  take(schema->add_option("KIND", o.kind, "which kind of file")->required(), file_kind_names());
  schema->callback([&o] { o.command = Command::schema; });

  CLI::App* unpack = app.add_subcommand(
      "unpack", "the pet's file that a sheet carries, from its PDF or the text of its code");
  unpack->add_option("FILE", o.input, "a sheet's PDF, a text, or - for the standard input")
      ->required()
      ->type_name("");
  unpack->add_option("-o,--output", o.output, "a new file (else the standard output)")
      ->type_name("FILE");
  unpack->add_option("--pet", o.only_pet, "which pet, where a PDF carries several")
      ->type_name("NAME");
  add_common(*unpack, asked);
  unpack->callback([&o] { o.command = Command::unpack; });
}
}  // namespace

void add_commands(CLI::App& app, Asked& asked) {
  app.set_help_flag("-h,--help", "says this");
  app.set_version_flag("--version", "furnish " FURNISH_VERSION, "says which version this is");
  app.require_subcommand(1);
  app.footer(statuses);
  add_sheets(app, asked);
  add_walls(app, asked);
  add_checks(app, asked);
  add_front_desk(app, asked);
  add_desk(app, asked);
  add_watch(app, asked);
  add_others(app, asked);
  add_new_files(app, asked);
}
}  // namespace furnish
