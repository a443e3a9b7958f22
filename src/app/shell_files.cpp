// Makes the manual page and the shells' completions when furnish is built, of the tree of commands
// that it parses by: shell_files manual|bash|zsh|fish.

#include <cstdio>
#include <string>
#include <string_view>

#include "app/completions.h"
#include "app/manual_page.h"

int main(int argc, char** argv) {
  using namespace furnish;
  const std::string_view what = argc > 1 ? argv[1] : "";
  const auto commands = command_infos();
  const auto firsts = first_words_of_commands();
  std::string out;
  if (what == "manual") out = manual_page(commands, FURNISH_VERSION, FURNISH_RELEASED);
  if (what == "bash") out = bash_completion(commands, firsts);
  if (what == "zsh") out = zsh_completion(commands, firsts);
  if (what == "fish") out = fish_completion(commands, firsts);
  const bool written =
      std::fwrite(out.data(), 1, out.size(), stdout) == out.size() && std::fflush(stdout) == 0;
  return !out.empty() && written ? 0 : 1;
}
