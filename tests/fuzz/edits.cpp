#include <nlohmann/json.hpp>

#include "desk/edits_json.h"
#include "fuzz/targets.h"
#include "spec/edit_check.h"
#include "spec/edit_merge.h"

namespace furnish::fuzz {
namespace {
/// As the desk does: nested no deeper than a file may be.
std::vector<Edit> edits_of(std::string_view json) {
  constexpr int deepest = 48;
  bool too_deep = false;
  const auto keep = [&](int depth, nlohmann::ordered_json::parse_event_t, nlohmann::ordered_json&) {
    too_deep = too_deep || depth > deepest;
    return !too_deep;
  };
  const auto parsed = nlohmann::ordered_json::parse(json, keep, false);
  if (too_deep || parsed.is_discarded()) return {};
  try {
    return desk::edits_in(parsed);
  } catch (const nlohmann::json::exception&) {
    return {};
  }
}
}  // namespace

void edits(std::string_view bytes) {
  constexpr std::string_view between = "\n---\n";
  const std::size_t at = bytes.find(between);
  if (at == std::string_view::npos || at > 4096) return;
  const EditedText base = desk::text_to_edit("pet", std::string(bytes.substr(0, at)));
  std::vector<Edit> all = edits_of(bytes.substr(at + between.size()));
  if (all.size() > 8) all.resize(8);
  if (!base.good()) {
    EditedText same = base;
    for (const Edit& edit : all) hold(!same.apply(edit), "what is no TOML is not edited");
    hold(same.text() == base.text(), "and stays as it is");
    return;
  }
  EditedText text = base;
  for (Edit edit : all) {
    const EditedText before = text;
    if (!text.apply(edit)) {
      hold(text.text() == before.text(), "what is refused changes nothing");
      continue;
    }
    hold(text.good(), "an edit leaves TOML");
    edit.path = before.as_written(edit.path);
    const std::string wrong = test::wrong_with(before, text, edit);
    hold(wrong.empty(), wrong.c_str());
  }
  const MergedEdits both = merged(base, all, text);
  hold(both.text.good(), "what is merged is TOML");
  if (!both.fault.empty() || !both.conflicts.empty()) {
    hold(both.text.text() == text.text(), "a conflict changes nothing");
  }
}
}  // namespace furnish::fuzz
