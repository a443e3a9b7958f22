#pragma once

#include <string>
#include <vector>

namespace furnish {

/// What an option or an argument takes, as a shell may complete it.
enum class Takes : unsigned char { nothing, words, file, folder, pet, day, visit, command, other };

struct OptionInfo {
  std::vector<std::string> names;  ///< "-o", "--output"; of an argument its one name, "PET"
  std::string value;               ///< as the help shows it: "FILE", "metric|us"; may be empty
  std::string doc;
  Takes takes = Takes::nothing;
  bool required = false, many = false;
  /// The words it takes, where it takes words.
  std::vector<std::string> words() const;
  friend bool operator==(const OptionInfo&, const OptionInfo&) = default;
};

struct CommandInfo {
  std::string name;  ///< "card", "new visit"
  std::string doc;
  std::vector<OptionInfo> options, arguments;
};

/// Every command that a person may give, in the order of the help: read off the very tree that the
/// program parses by.
std::vector<CommandInfo> command_infos();
/// The first words of commands, each with what it does, in the same order.
std::vector<std::pair<std::string, std::string>> first_words_of_commands();
}  // namespace furnish
