#include "app/options.h"

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <iostream>
#include <system_error>
#include <tuple>
#include <utility>

#include "app/command_tree.h"
#include "app/command_values.h"
#include "app/sheet_maker.h"
#include "app/terminal.h"
#include "app/visit_name.h"
#include "base/diagnostic.h"
#include "base/text.h"

namespace furnish {
namespace {
/// What is wrong with a command line, and what to do; nothing where it is good.
struct Slip {
  std::string message, hint;
};

std::vector<std::string> command_names(const CLI::App& app) {
  std::vector<std::string> out;
  for (const CLI::App* const one : app.get_subcommands([](const CLI::App*) { return true; })) {
    out.push_back(one->get_name());
  }
  return out;
}

std::vector<std::string_view> views(const std::vector<std::string>& names) {
  return {names.begin(), names.end()};
}

std::string one_of(const std::vector<std::string>& names) {
  return fmt::format("one of {}", fmt::join(names, ", "));
}

/// "new visit", as a person types it behind the program's name.
std::string path_of(const CLI::App& command) {
  const CLI::App* const above = command.get_parent();
  if (above == nullptr) return {};
  const std::string before = path_of(*above);
  return before.empty() ? command.get_name() : before + " " + command.get_name();
}

std::string see_help(const CLI::App& command) {
  const std::string path = path_of(command);
  return path.empty() ? "see furnish help" : "see furnish help " + path;
}

/// The first words of a command line, where they name a command that is not there.
Slip unknown_command(const CLI::App& app, std::span<const std::string> words) {
  const std::vector<std::string> names = command_names(app);
  if (names.empty() || words.empty() || words.front().starts_with("-")) return {};
  const auto known = std::ranges::find(names, words.front());
  if (known != names.end()) {
    return unknown_command(*app.get_subcommand(*known), words.subspan(1));
  }
  const std::string before = path_of(app).empty() ? "" : path_of(app) + " ";
  const auto near = nearest(words.front(), views(names));
  return {fmt::format("there is no command \"{}{}\"", before, words.front()),
          near ? fmt::format("did you mean {}{}?", before, *near) : one_of(names)};
}

/// The command that a line was about when it went wrong: the innermost that was found.
const CLI::App& innermost(const CLI::App& app) {
  const auto parsed = app.get_subcommands();
  return parsed.empty() ? app : innermost(*parsed.front());
}

/// A word that the command does not take, or none of the commands before it.
Slip unknown_word(const CLI::App& app) {
  const std::vector<std::string> left = app.remaining(false);
  if (left.empty()) return unknown_word(*app.get_subcommands().front());
  const CLI::App& command = app;
  const std::string& word = left.front();
  const std::string path = path_of(command);
  if (!word.starts_with("-")) {
    return {fmt::format("{} does not take \"{}\"", path, word), see_help(command)};
  }
  std::vector<std::string> names;
  for (const CLI::Option* const one : command.get_options()) {
    for (const std::string& name : one->get_lnames()) names.push_back("--" + name);
  }
  const std::string option = word.substr(0, word.find('='));
  const std::string near = meant(option, views(names));
  return {path.empty() ? fmt::format("there is no option {}; options follow the command", option)
                       : fmt::format("{} has no option {}", path, option),
          near.empty() ? see_help(command) : near};
}

/// Of an option that has no value, or too many.
Slip wrong_count(const CLI::App& command, const std::string& said) {
  const std::string name = said.substr(0, said.find(':'));
  const CLI::Option* const option = command.get_option_no_throw(name);
  if (option == nullptr) return {said, see_help(command)};
  if (option->count() > 1) return {name + " may be given once", see_help(command)};
  return {fmt::format("{} needs a value: {}", name, option->get_type_name()), see_help(command)};
}

/// Of an argument or a command that has to be there.
Slip missing(const CLI::App& command, const std::string& said) {
  const std::string path = path_of(command);
  if (const std::vector<std::string> names = command_names(command); !names.empty()) {
    return {path.empty() ? "say what to do" : path + " what?", one_of(names)};
  }
  const std::string name = said.substr(0, said.find(' '));
  const CLI::Option* const option = command.get_option_no_throw(name);
  return {fmt::format("{} needs {}{}", path, name,
                      option == nullptr ? "" : ": " + option->get_description()),
          see_help(command)};
}

Slip slip_of(const CLI::ParseError& fault, const CLI::App& app) {
  const CLI::App& command = innermost(app);
  const std::string said = fault.what();
  switch (static_cast<CLI::ExitCodes>(fault.get_exit_code())) {
    case CLI::ExitCodes::ExtrasError:
      return unknown_word(app);
    case CLI::ExitCodes::ArgumentMismatch:
      return wrong_count(command, said);
    case CLI::ExitCodes::RequiredError:
      return missing(command, said);
    case CLI::ExitCodes::ConversionError:  // of a flag: all else is checked by functions of ours
    case CLI::ExitCodes::InvalidError:
      return {said.substr(said.find("--")) + " is not understood", see_help(command)};
    default:
      break;
  }
  // A check's own words; what to do stands behind a line end.
  const auto end = said.find('\n');
  if (end == std::string::npos) return {said, see_help(command)};
  return {said.substr(0, end), said.substr(end + 1)};
}

ParsedOptions refuse(const Slip& slip) {
  Diagnostic fault{Severity::error, "usage", {}, slip.message, slip.hint, {}};
  const std::string text = to_text(fault, SourceSet{}, colours_of(stderr));
  std::fwrite(text.data(), 1, text.size(), stderr);
  return {std::nullopt, Exit::usage};
}

/// Help that the standard output did not take is no success.
ParsedOptions not_delivered() {
  const std::string why = std::system_category().message(errno);
  std::fprintf(stderr, "furnish: error: cannot write to the standard output: %s\n", why.c_str());
  return {std::nullopt, Exit::faults};
}

/// What only all words together tell.
Slip put_together(const Asked& asked, Options& o) {
  if (!asked.on.empty()) o.on = parse_date(asked.on);
  if (!asked.booked.empty() && !o.on) o.on = parse_date(asked.booked);
  if (!asked.day.empty()) o.on = parse_date(asked.day);
  if (!asked.visit.empty()) std::tie(o.visit, o.visit_number) = parse_visit(asked.visit);
  if (!asked.within.empty()) {
    o.within = *parse_within(asked.within);
  } else if (o.command == Command::expiring) {
    o.within = std::chrono::days(30);
  }
  if (o.booked && !o.pets.empty()) {
    return {"--booked chooses the pets", "name none beside it"};
  }
  if (!asked.standard.empty()) o.standard = value_of(standards(), asked.standard);
  if (!asked.units.empty()) o.units = value_of(unit_words(), asked.units);
  if (asked.copy_for == "owner") o.sheet = &sheets::owner_note;
  if (asked.spec_for == "staff") o.spec_for = Audience::staff;
  o.format = asked.format.empty() ? format_of(o.output) : value_of(formats(), asked.format);
  // A list is text unless a page is asked for, by the name's ending or by --format.
  const std::string name = lower_ascii(o.output);
  const bool named = name.ends_with(".pdf") || name.ends_with(".png") || name.ends_with(".svg");
  o.as_page = may_make_a_page(o.command) && (named || !asked.format.empty());
  if (o.as_page && o.json) return {"--json is for a program, and a page is not", "leave out one"};
  const bool pages = makes_pages(o.command) || (may_make_a_page(o.command) && !o.json);
  const std::string ending =
      pages && asked.format.empty() ? unknown_ending(o.output) : std::string();
  if (ending.empty()) return {};
  return {fmt::format("\"{}\" says not what to make", ending),
          "end the name in .pdf, .png, .svg or .txt, or say --format"};
}
}  // namespace

ParsedOptions parse_options(int argc, const char* const* argv) {
  Asked asked;
  CLI::App app("The sheets a grooming salon runs on, from plain TOML files.", "furnish");
  add_commands(app, asked);

  std::vector<std::string> words(argv + 1, argv + argc);
  if (!words.empty() && words.front() == "help") {  // `help card` is `card --help`
    words.erase(words.begin());
    words.emplace_back("--help");
  }
  if (const Slip slip = unknown_command(app, words); !slip.message.empty()) return refuse(slip);
  std::ranges::reverse(words);  // as CLI11 takes them
  try {
    app.parse(words);
  } catch (const CLI::ParseError& fault) {
    if (fault.get_exit_code() != static_cast<int>(CLI::ExitCodes::Success)) {
      return refuse(slip_of(fault, app));
    }
    app.exit(fault, std::cout, std::cerr);
    return std::cout.flush() ? ParsedOptions{std::nullopt, Exit::ok} : not_delivered();
  }
  if (const Slip slip = put_together(asked, asked.options); !slip.message.empty()) {
    return refuse(slip);
  }
  return {std::move(asked.options), Exit::ok};
}
}  // namespace furnish
