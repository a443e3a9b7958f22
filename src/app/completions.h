#pragma once

#include <span>
#include <string>
#include <utility>

#include "app/command_info.h"

namespace furnish {
/// The first words of commands with what they do.
using FirstWords = std::span<const std::pair<std::string, std::string>>;

// What a shell reads to complete furnish's commands, options and their words, and pets and days of
// the salon that the line is about. Names of files are never run through the shell again.
std::string bash_completion(std::span<const CommandInfo>, FirstWords);
std::string zsh_completion(std::span<const CommandInfo>, FirstWords);
std::string fish_completion(std::span<const CommandInfo>, FirstWords);
}  // namespace furnish
