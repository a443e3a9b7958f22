#pragma once

#include <optional>
#include <string>

#include "app/options.h"

namespace CLI {
class App;
}

namespace furnish {

/// The words of a command line, before they are looked at together. Those that are checked one by
/// one are kept as they were written.
struct Asked {
  Options options;
  std::string format, standard, units, on, day, visit, within, booked, old_name, new_name;
  std::string spec_for = "everyone", copy_for = "file", sheet = "card";
};

/// Adds every command with its options to an empty app; parsing then fills what was asked, which
/// has to live as long. What an option takes is its type's name: FILE, FOLDER, DAY, VISIT, or the
/// words themselves with strokes between, "metric|us"; a pet's place is called PET. The help shows
/// it, and the manual and the shells' completions are made from it.
void add_commands(CLI::App&, Asked&);
}  // namespace furnish
