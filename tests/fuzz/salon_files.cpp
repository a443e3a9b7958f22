#include "fuzz/salon_files.h"

#include <cstdio>
#include <cstdlib>

#include "base/text.h"
#include "fuzz/targets.h"

namespace furnish::fuzz {
namespace {
void list_into(std::map<std::string, bool>& names, const Texts& texts, const std::string& folder) {
  for (auto one = texts.lower_bound(folder); one != texts.end(); ++one) {
    if (!one->first.starts_with(folder)) break;
    const std::string name = one->first.substr(folder.size());
    if (name.find('/') == std::string::npos && name.ends_with(".toml")) names[name] = true;
  }
}
}  // namespace

FileContent TextsBefore::read_up_to(const std::string& path, std::size_t most) const {
  auto found = own_.find(path);
  if (found == own_.end()) {
    found = others_.find(path);
    if (found == others_.end()) return {std::nullopt, "there is no such file"};
  }
  if (found->second.size() > most) return {std::nullopt, "is too large"};
  return {found->second, {}};
}

FolderContent TextsBefore::list(const std::string& folder) const {
  std::map<std::string, bool> names;
  for (const Texts* const some : {&own_, &others_}) {
    list_into(names, *some, folder + "/");
  }
  FolderContent out;
  for (const auto& [name, there] : names) out.names.push_back(name);
  return out;
}

const Texts& two_styles() {
  static const Texts all{
      {"shipped/natural-tidy.toml",
       "[style]\nname = \"Natural tidy\"\ncoats = [\"double\"]\n[trim]\nears = { shears "
       "= \"thinning\", leave = \"20 mm\" }\nfeet = { shears = \"straight\", leave = "
       "\"3 mm\" }\n[finish]\nears = \"tipped\"\n"},
      {"styles/own.toml",
       "[style]\nname = \"Own\"\nextends = \"natural-tidy\"\n[trim]\nbelly = { blade = "
       "\"10\" }\n"}};
  return all;
}

void tell(const DiagnosticSink& sink, const SourceSet& sources) {
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
