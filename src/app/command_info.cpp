#include "app/command_info.h"

#include <CLI/CLI.hpp>

#include <sstream>

#include "app/command_tree.h"

namespace furnish {
namespace {
Takes takes_of(const std::string& value) {
  if (value.empty()) return Takes::nothing;
  if (value.find('|') != std::string::npos) return Takes::words;
  if (value == "FILE") return Takes::file;
  if (value == "FOLDER") return Takes::folder;
  if (value == "PET" || value == "OLD" || value == "NAME") return Takes::pet;
  if (value == "DAY" || value == "DATE") return Takes::day;
  if (value == "VISIT") return Takes::visit;
  return Takes::other;
}

OptionInfo info_of(const CLI::Option& option) {
  OptionInfo out;
  out.doc = option.get_description();
  out.required = option.get_required();
  out.many = option.get_items_expected_max() > 1;
  const std::string type = option.get_type_name();
  if (option.get_positional()) {
    out.names = {option.get_name()};
    out.value = type;
    out.takes = takes_of(type.empty() ? option.get_name() : type);
    return out;
  }
  for (const std::string& name : option.get_snames()) out.names.push_back("-" + name);
  for (const std::string& name : option.get_lnames()) out.names.push_back("--" + name);
  // A flag has a type's name too.
  if (option.get_items_expected_max() > 0) out.value = type;
  out.takes = takes_of(out.value);
  return out;
}

std::vector<CLI::App*> commands_of(CLI::App& app) {
  return app.get_subcommands([](CLI::App*) { return true; });
}

void add_infos(CLI::App& app, const std::string& before, std::vector<CommandInfo>& out) {
  for (CLI::App* const one : commands_of(app)) {
    CommandInfo info{before + one->get_name(), one->get_description(), {}, {}};
    if (!commands_of(*one).empty()) {
      add_infos(*one, info.name + " ", out);
      continue;
    }
    for (const CLI::Option* const option : one->get_options()) {
      if (option->get_name() == "--help") continue;
      (option->get_positional() ? info.arguments : info.options).push_back(info_of(*option));
    }
    // A new pet's name is nobody's yet; a check takes a salon's files as well.
    const bool fresh = info.name == "new pet" || info.name == "new style";
    for (OptionInfo& argument : info.arguments) {
      if (fresh) argument.takes = Takes::other;
      if (info.name == "check") argument.takes = Takes::file;
    }
    out.push_back(std::move(info));
  }
}

/// A tree as the program has it, with something to write to.
struct Tree {
  Asked asked;
  CLI::App app{"", "furnish"};
  Tree() { add_commands(app, asked); }
};
}  // namespace

std::vector<std::string> OptionInfo::words() const {
  std::vector<std::string> out;
  if (takes != Takes::words) return out;
  std::istringstream in(value);
  for (std::string word; std::getline(in, word, '|');) out.push_back(word);
  return out;
}

std::vector<CommandInfo> command_infos() {
  Tree tree;
  std::vector<CommandInfo> out;
  add_infos(tree.app, "", out);
  return out;
}

std::vector<std::pair<std::string, std::string>> first_words_of_commands() {
  Tree tree;
  std::vector<std::pair<std::string, std::string>> out;
  for (const CLI::App* const one : commands_of(tree.app)) {
    out.emplace_back(one->get_name(), one->get_description());
  }
  out.emplace_back("help", "what a command takes");
  return out;
}
}  // namespace furnish
