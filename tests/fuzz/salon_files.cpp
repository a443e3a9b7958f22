#include "fuzz/salon_files.h"

#include <cstdio>
#include <cstdlib>

#include "base/text.h"
#include "fuzz/targets.h"

namespace furnish::fuzz {
namespace {
std::map<std::string, std::string> with_styles(std::map<std::string, std::string> files) {
  files.try_emplace(
      "shipped/natural-tidy.toml",
      "[style]\nname = \"Natural tidy\"\ncoats = [\"double\"]\n[trim]\nears = { shears "
      "= \"thinning\", leave = \"20 mm\" }\nfeet = { shears = \"straight\", leave = "
      "\"3 mm\" }\n[finish]\nears = \"tipped\"\n");
  files.try_emplace(
      "styles/own.toml",
      "[style]\nname = \"Own\"\nextends = \"natural-tidy\"\n[trim]\nbelly = { blade = "
      "\"10\" }\n");
  return files;
}
}  // namespace

Reading::Reading(std::map<std::string, std::string> more) : files(with_styles(std::move(more))) {}

void Reading::tell() const {
  for (const Diagnostic& one : sink.all()) {
    const std::string text = to_text(one, sources);
    hold(visible_lines(text) == text, "a message steers a terminal");
  }
}

void hold(bool holds, const char* what) {
  if (holds) return;
  std::fprintf(stderr, "not held: %s\n", what);
  std::abort();
}
}  // namespace furnish::fuzz
