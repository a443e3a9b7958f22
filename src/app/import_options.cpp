#include "app/import_options.h"

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include "app/options.h"
#include "spec/client_columns.h"

namespace furnish {
namespace {
std::string valid_choice(const std::string& text) {
  std::string fault;
  parse_column_choice(text, fault);
  return fault;
}

void add_how_to_read(CLI::App& command, Options& o) {
  std::vector<std::string_view> words;
  for (const ClientFactInfo& one : client_facts()) words.push_back(one.word);
  command
      .add_option("--columns", o.columns,
                  fmt::format("what columns are, where their headers do not say it: "
                              "name=2,owner=Client,name2=5; of {}",
                              fmt::join(words, ", ")))
      ->delimiter(',')
      ->type_name("WORD=COLUMN")
      ->check(valid_choice);
  command.add_option("--dates", o.dates, "day-first, month-first or year-first")
      ->check(CLI::IsMember({"day-first", "month-first", "year-first"}))
      ->type_name("");
  command.add_flag("--whole-names", o.whole_names, "\"Salt & Pepper\" is the name of one pet");
}
}  // namespace

CLI::App* add_import(CLI::App& app, Options& o) {
  CLI::App* const command = app.add_subcommand(
      "import", "pets from a client list: shows what they would become, and makes their files");
  command->add_option("CLIENTS", o.from, "a list as CSV, a pet a line")->required()->type_name("");
  command->add_flag("--write", o.write, "make the files; without it nothing is written");
  add_how_to_read(*command, o);
  command->callback([&o] { o.command = Command::import_list; });
  return command;
}

void add_client_list(CLI::App& command, Options& o) {
  command.add_option("--from", o.from, "a client list as CSV; NAME is a pet of it")
      ->type_name("CLIENTS");
  add_how_to_read(command, o);
}
}  // namespace furnish
