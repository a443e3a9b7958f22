#include "app/diagnostics_json.h"

#include <nlohmann/json.hpp>

#include "base/text.h"

namespace furnish {
namespace {
using Json = nlohmann::ordered_json;

Json place(Position at) {
  return {{"line", at.line}, {"column", at.column}};
}

void add_place(Json& out, const SourceSpan& span, const SourceSet& sources) {
  if (span.file == SourceSpan::no_file) return;
  out["file"] = sources.at(span.file).path();
  if (span.begin.line == 0) return;
  out["begin"] = place(span.begin);
  out["end"] = place(span.end);
}
}  // namespace

std::string diagnostics_json(std::span<const Diagnostic> list, const SourceSet& sources) {
  Json out = Json::array();
  for (const Diagnostic& one : in_reading_order(list)) {
    Json said{{"severity", one.severity == Severity::error ? "error" : "warning"},
              {"code", one.code},
              {"message", one.message}};
    if (!one.hint.empty()) said["hint"] = one.hint;
    add_place(said, one.span, sources);
    for (const auto& [span, text] : one.notes) {
      Json note{{"message", text}};
      add_place(note, span, sources);
      said["notes"].push_back(std::move(note));
    }
    out.push_back(std::move(said));
  }
  // What is not UTF-8, as a name on the disk may be, is shown as such.
  return visible_json(out.dump(2, ' ', false, Json::error_handler_t::replace)) + "\n";
}
}  // namespace furnish
