#include "spec/fault_case.h"

#include <fstream>
#include <iterator>
#include <sstream>
#include <stdexcept>

#include "spec/document.h"
#include "spec/reader.h"
#include "spec/said.h"

namespace furnish::test {
namespace {
std::string main_path(const std::string& name) {
  if (name.starts_with("salon-")) return "salon.toml";
  if (name.starts_with("pet-")) return "pets/rex.toml";
  if (name.starts_with("style-")) return "styles/own.toml";
  if (name.starts_with("visit-")) return "visits/rex/2026-11-24.toml";
  if (name.starts_with("day-")) return "days/2026-11-24.toml";
  throw std::runtime_error("tests/spec/faults: what is " + name + "?");
}

bool read_main(const FaultCase& test, const ReadContext& context) {
  StyleLibrary styles(context, "house", "styles");
  std::optional<Salon> salon;
  const bool is_salon = test.main == "salon.toml";
  if (is_salon || test.files.contains("salon.toml")) salon = read_salon(context, "salon.toml");
  if (is_salon) return salon && salon->whole;
  const Salon* const own = salon ? &*salon : nullptr;
  if (test.main.starts_with("styles/")) return styles.find("own", {}) != nullptr;
  if (test.main.starts_with("pets/")) {
    return read_pet(context, test.main, own, styles).has_value();
  }
  if (test.main.starts_with("days/")) {
    const auto day = read_day(context, test.main);
    return day && day->unread.empty();
  }
  std::optional<Pet> pet;
  if (test.files.contains("pets/rex.toml")) pet = read_pet(context, "pets/rex.toml", own, styles);
  return read_visit(context, test.main, own, pet ? &*pet : nullptr).has_value();
}
}  // namespace

FaultCase load_fault_case(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  if (!in) throw std::runtime_error("cannot read " + path);
  FaultCase out;
  out.path = path;
  out.main = main_path(stem(path));
  std::string current = out.main;
  out.files[current];
  for (std::string line; std::getline(in, line);) {
    if (line.starts_with("#!")) {
      out.expected += line.size() > 3 ? line.substr(3) + "\n" : "\n";
      continue;
    }
    out.body += line + "\n";
    if (line.starts_with("#= ")) {
      current = line.substr(3);
      out.files[current];
    } else {
      out.files[current] += line + "\n";
    }
  }
  return out;
}

Reading read_fault_case(const FaultCase& test, std::vector<Diagnostic>* errors) {
  auto files = test.files;
  files["house/natural-tidy.toml"] = "[style]\nname = \"Natural tidy\"\n";
  files["house/curly-short.toml"] = "[style]\nname = \"Curly, short\"\n";
  const MemoryFiles memory(std::move(files));
  SourceSet sources;
  DiagnosticSink sink;
  Reading out;
  out.value = read_main(test, {memory, sources, sink});
  out.said = said(sink, sources);
  for (const Diagnostic& one : in_reading_order(sink.all())) {
    const bool here =
        one.span.file != SourceSpan::no_file && sources.at(one.span.file).path() == test.main;
    if (errors != nullptr && here && one.severity == Severity::error) errors->push_back(one);
  }
  return out;
}

void approve(const FaultCase& test, const std::string& text) {
  std::ofstream out(test.path, std::ios::binary);
  out << test.body;
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) {
    out << (line.empty() ? "#!" : "#! " + line) << '\n';
  }
}
}  // namespace furnish::test
