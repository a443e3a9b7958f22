#include "spec/trim_reader.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cstdlib>

#include "spec/free_text.h"
#include "spec/offer.h"
#include "spec/places.h"
#include "spec/trim_format.h"

namespace furnish {
namespace {
constexpr std::array<const KeyInfo*, 5> tool_keys{&keys::work::blade, &keys::work::comb,
                                                  &keys::work::shears, &keys::work::brush,
                                                  &keys::work::strip};

const Blade* read_blade(Fields& fields, const KeyInfo& key) {
  const TomlEntry* const entry = fields.find(key);
  return entry == nullptr ? nullptr : as_blade(entry->node, key.name, fields.sink());
}

std::optional<Tool> read_comb(Fields& fields) {
  const auto comb = fields.quantity(keys::work::comb);
  const bool base_given = fields.find(keys::work::over) != nullptr;
  const Blade* const base = base_given ? read_blade(fields, keys::work::over) : find_blade("30");
  if (!comb || base == nullptr) return std::nullopt;
  return CombOver{comb->value, base};
}

std::optional<Tool> read_brush(Fields& fields) {
  const TomlEntry& entry = *fields.find(keys::work::brush);
  const auto brush = as_flag(entry.node, "brush", fields.sink());
  if (!brush) return std::nullopt;
  if (*brush) return Brush{};
  fields.sink().error("no-tool", entry.node.span, "brush = false says nothing").hint =
      "leave the part out where nothing is done to it";
  return std::nullopt;
}

std::optional<Tool> read_tool(Fields& fields, std::string_view key) {
  if (key == "comb") return read_comb(fields);
  if (key == "brush") return read_brush(fields);
  if (key == "blade") {
    const Blade* const blade = read_blade(fields, keys::work::blade);
    return blade == nullptr ? std::nullopt : std::optional<Tool>(Clip{blade});
  }
  if (key == "shears") {
    const auto shears = fields.choice(keys::work::shears);
    return shears ? std::optional<Tool>(Scissor{shears->value}) : std::nullopt;
  }
  const auto strip = fields.choice(keys::work::strip);
  return strip ? std::optional<Tool>(HandStrip{strip->value}) : std::nullopt;
}

/// The key of the one tool that is named; reports none and more than one.
const TomlEntry* only_tool(Fields& fields) {
  const TomlEntry* first = nullptr;
  for (const KeyInfo* const key : tool_keys) {
    const TomlEntry* entry = fields.find(*key);
    if (entry == nullptr) continue;
    if (first == nullptr) {
      first = entry;
      continue;
    }
    const TomlEntry* again = entry;
    if (again->key_span.begin < first->key_span.begin) std::swap(first, again);
    fields.sink()
        .error(
            "two-tools", again->key_span,
            fmt::format("{} is trimmed with one tool; {} is a second", fields.name(), again->key))
        .notes.emplace_back(first->key_span, "the first is here");
  }
  if (first == nullptr && fields.complete()) {
    fields.sink()
        .error("no-tool", fields.span(), fmt::format("{} names no tool", fields.name()))
        .hint = "write one tool beside it, such as shears = \"straight\" or brush = true";
  }
  return first;
}

void refuse_leave(const TomlEntry& leave, std::string_view tool, DiagnosticSink& sink) {
  sink.error(
          "leave-with-tool", leave.key_span,
          fmt::format("'leave' cannot be chosen with a {0}: the {0} decides what it leaves", tool))
      .hint = "take 'leave' out, or trim this part with shears";
}

std::optional<TrimEntry> read_entry(const TomlEntry& entry, const Fields& trim, Why why) {
  DiagnosticSink& sink = trim.sink();
  if (!std::holds_alternative<TomlTable>(entry.node.value)) {
    Diagnostic& fault = report_type(entry.node, entry.key, "a table that names a tool", sink);
    const auto* const word = std::get_if<std::string>(&entry.node.value);
    const bool blade = word != nullptr && find_blade(*word) != nullptr;
    offer(fault, fmt::format("{{ blade = \"{}\" }}", blade ? *word : "10"));
    if (!blade) fault.instead.clear();  // only an example
    return std::nullopt;
  }
  const TableInfo& table = why == Why::yes ? keys::work_done::table : keys::work::table;
  Fields fields(entry.node, fmt::format("'{}'", entry.key), table, trim);
  TrimEntry out;
  out.written = entry.key;
  out.span = entry.key_span;
  const TomlEntry* const named = only_tool(fields);
  const std::string_view tool_key = named == nullptr ? std::string_view() : named->key;
  const auto tool = named == nullptr ? std::nullopt : read_tool(fields, tool_key);
  if (const TomlEntry* over = fields.find(keys::work::over);
      over != nullptr && tool_key != "comb") {
    sink.error("over-without-comb", over->key_span, "'over' is the blade under a guard comb").hint =
        "name the comb too, or take 'over' out";
  }
  if (const auto leave = fields.quantity(keys::work::leave)) out.leave = leave->value;
  if (tool_key == "blade" || tool_key == "comb") {
    if (const TomlEntry* leave = fields.find(keys::work::leave))
      refuse_leave(*leave, tool_key, sink);
  }
  if (const auto lay = fields.choice(keys::work::lay)) {
    out.lay = lay->value;
    out.lay_given = true;
  }
  out.before_bath = fields.flag(keys::work::before_bath, false);
  out.note = fields.words(keys::work::note);
  if (why == Why::yes) out.why = read_staff_text(fields, keys::work_done::why);
  fields.finish();
  if (!tool) return std::nullopt;
  out.tool = *tool;
  return out;
}
}  // namespace

/// The blades on either side of a number, or how blades are named.
void offer_blades(Diagnostic& fault, std::string_view written) {
  const std::size_t first = written.find_first_of("0123456789");
  if (first == std::string_view::npos) {
    fault.hint = "write the number of a blade, such as \"10\" or \"7F\"";
    return;
  }
  const auto number = [](std::string_view name) {
    int n = 0;
    std::from_chars(name.data(), name.data() + name.size(), n);
    return n;
  };
  const int wanted = number(written.substr(first));
  std::vector<std::string_view> names;
  for (const Blade& blade : blades()) names.push_back(blade.name);
  std::ranges::stable_sort(names, {},
                           [&](std::string_view name) { return std::abs(number(name) - wanted); });
  names.resize(3);
  offer_choice(fault, names);
  fault.hint = fmt::format("the nearest are {}", quoted_list(names));
}

const Blade* known_blade(std::string_view written, SourceSpan at, DiagnosticSink& sink) {
  if (const Blade* const blade = find_blade(written)) return blade;
  offer_blades(sink.error("unknown-blade", at, fmt::format("no blade '{}'", written)), written);
  return nullptr;
}

const Blade* as_blade(const TomlNode& given, std::string_view what, DiagnosticSink& sink) {
  const TomlNode& node = only_one(given);
  if (const auto* const number = std::get_if<std::int64_t>(&node.value)) {
    return known_blade(std::to_string(*number), node.span, sink);
  }
  if (const auto* const table = std::get_if<TomlTable>(&node.value)) {
    Diagnostic& fault = report_type(node, what, "the name of a blade", sink);
    const bool again = !table->empty() && table->front().key == what;
    const auto* const inner =
        again ? std::get_if<std::string>(&table->front().node.value) : nullptr;
    offer_words(fault, inner != nullptr ? *inner : "10");
    if (inner == nullptr) fault.instead.clear();  // only an example
    return nullptr;
  }
  const auto word = as_text(node, what, sink);
  return word ? known_blade(*word, node.span, sink) : nullptr;
}

TrimRules read_trim_rules(Fields& trim, Why why) {
  std::vector<Said<TrimEntry>> said;
  const std::vector<std::string_view> others(trim.known().begin(), trim.known().end());
  for (const TomlEntry* const entry : trim.rest()) {
    const auto where = read_key_places(*entry, AnySide::no, others, trim);
    // A misspelt key of another kind is one fault, not two.
    if (!where && !std::holds_alternative<TomlTable>(entry->node.value)) continue;
    auto value = read_entry(*entry, trim, why);
    if (where && value) said.push_back({*where, *std::move(value), entry->key, entry->key_span});
  }
  TrimRules rules;
  for (auto& [place, entry] : spread(said, same_work, trim.sink())) {
    rules.push_back({place, std::move(entry)});
  }
  return rules;
}

Finish read_finish(Fields& finish) {
  const auto text = [&](const FreeTextKey& part) -> std::optional<FreeText> {
    FreeText read = read_free_text(finish, part);
    return read.empty() ? std::nullopt : std::optional(std::move(read));
  };
  Finish out{text(keys::finish::ears), text(keys::finish::tail), text(keys::finish::feet),
             text(keys::finish::nails), text(keys::finish::extras)};
  finish.finish();
  return out;
}
}  // namespace furnish
