#include "spec/trim_writer.h"

#include <algorithm>

#include "spec/places.h"
#include "spec/word_tables.h"

namespace furnish {
namespace {
using toml_text::Form;

std::optional<NamedPlaces> places_of(const std::string& word) {
  DiagnosticSink unheard;
  return read_places(word, {}, AnySide::no, {}, unheard);
}

/// One entry for each key that the rules were read from, in the order of the file.
std::vector<const PlacedEntry*> by_key(const TrimRules& rules) {
  std::vector<const PlacedEntry*> out;
  for (const PlacedEntry& rule : rules) {
    const bool known = std::ranges::any_of(
        out, [&](const PlacedEntry* one) { return one->entry.written == rule.entry.written; });
    if (!known) out.push_back(&rule);
  }
  std::ranges::stable_sort(out, {}, [](const PlacedEntry* one) { return one->entry.span.begin; });
  return out;
}

/// True if reading those keys gives these rules: not so once a program has changed some of them.
bool say_it(const std::vector<const PlacedEntry*>& keys, const TrimRules& rules) {
  std::vector<Said<TrimEntry>> said;
  for (const PlacedEntry* one : keys) {
    auto where = places_of(one->entry.written);
    if (!where) return false;
    said.push_back({*std::move(where), one->entry, one->entry.written, {}});
  }
  DiagnosticSink sink;
  const auto read = spread(said, same_work, sink);
  return !sink.has_errors() &&
         std::ranges::equal(read, rules, [](const auto& a, const PlacedEntry& b) {
           return a.first == b.place && same_work(a.second, b.entry) &&
                  a.second.written == b.entry.written;
         });
}
}  // namespace

std::vector<std::pair<std::string, std::string>> entry_fields(const TrimEntry& entry, Form form) {
  std::vector<std::pair<std::string, std::string>> out;
  struct Says {
    std::vector<std::pair<std::string, std::string>>& out;
    Form form;
    void operator()(Brush) const { out.emplace_back("brush", "true"); }
    void operator()(Clip c) const { out.emplace_back("blade", toml_text::blade(*c.blade, form)); }
    void operator()(CombOver c) const {
      out.emplace_back("comb", toml_text::quantity(c.comb, form));
      if (c.base != find_blade("30")) out.emplace_back("over", toml_text::blade(*c.base, form));
    }
    void operator()(Scissor s) const {
      out.emplace_back("shears", toml_text::quoted(to_text(s.shears)));
    }
    void operator()(HandStrip s) const {
      out.emplace_back("strip", toml_text::quoted(words::word(words::strip, s.with)));
    }
  };
  std::visit(Says{out, form}, entry.tool);
  if (entry.leave) out.emplace_back("leave", toml_text::quantity(*entry.leave, form));
  if (entry.lay != Lay::with) out.emplace_back("lay", toml_text::quoted(to_text(entry.lay)));
  if (entry.before_bath) out.emplace_back("before_bath", "true");
  if (!entry.note.empty()) out.emplace_back("note", toml_text::quoted(entry.note));
  return out;
}

void write_trim(const TrimRules& rules, toml_text::Section& section) {
  const auto keys = by_key(rules);
  if (say_it(keys, rules)) {
    for (const PlacedEntry* one : keys) {
      section.add(one->entry.written, toml_text::table(entry_fields(one->entry)));
    }
    return;
  }
  for (const PlacedEntry& rule : rules) {
    section.add(toml_text::place(rule.place), toml_text::table(entry_fields(rule.entry)));
  }
}
}  // namespace furnish
