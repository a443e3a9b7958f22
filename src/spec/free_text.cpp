#include "spec/free_text.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"
#include "spec/audience_reader.h"
#include "spec/language.h"
#include "spec/trim_format.h"

namespace furnish {
namespace {
enum class MaySayFor : std::uint8_t { no, yes };

/// A fault unless the key names a language, once.
bool good_tag(const TomlEntry& entry, const std::vector<const TomlEntry*>& before,
              DiagnosticSink& sink) {
  if (entry.key == keys::audience.name) {  // a language has this code, but nobody means it
    sink.error("no-audience", entry.key_span, "this text does not say whom it is for").hint =
        "only 'why' and 'note' of a visit do; take 'for' out";
    return false;
  }
  if (!well_formed_language(entry.key)) {
    sink.error("bad-language", entry.key_span, fmt::format("'{}' is no language", entry.key)).hint =
        "a text has languages as of BCP 47, such as en, es or pt-BR, or text for the salon's own";
    return false;
  }
  for (const TomlEntry* const one : before) {
    if (lower_ascii(one->key) != lower_ascii(entry.key)) continue;
    sink.error("given-twice", entry.key_span, "this language is given twice")
        .notes.emplace_back(one->key_span, "first given here");
    return false;
  }
  return true;
}

FreeText read_languages(const TomlNode& node, std::string_view key, const Fields& parent,
                        MaySayFor audience) {
  const TableInfo& table =
      audience == MaySayFor::yes ? keys::staff_languages::table : keys::languages::table;
  Fields fields(node, fmt::format("'{}'", key), table, parent);
  FreeText out;
  out.span = node.span;
  const std::size_t faults = fields.sink().error_count();
  out.value = fields.words(keys::languages::plain);
  if (audience == MaySayFor::yes) out.audience = read_audience(fields);
  std::vector<const TomlEntry*> seen;
  for (const TomlEntry* const entry : fields.rest()) {
    if (!good_tag(*entry, seen, fields.sink())) continue;
    seen.push_back(entry);
    auto text = as_text(entry->node, entry->key, fields.sink());
    if (!text) continue;
    if (out.value.empty()) {
      out.value = *std::move(text);
      out.language = entry->key;
    } else {
      out.others.push_back({entry->key, *std::move(text)});
    }
  }
  if (out.empty() && fields.sink().error_count() == faults) {
    fields.sink().error("no-text", node.span, fmt::format("'{}' has no text", key)).hint =
        "write text = \"…\", or one by its language: en = \"…\"";
  }
  return out;
}

FreeText read_node(const TomlNode& node, std::string_view key, const Fields& parent,
                   MaySayFor audience) {
  if (std::holds_alternative<TomlTable>(node.value)) {
    return read_languages(node, key, parent, audience);
  }
  FreeText out;
  if (auto text = as_text(node, key, parent.sink())) out.value = *std::move(text);
  out.span = node.span;
  if (audience == MaySayFor::yes) out.audience = Audience::staff;
  return out;
}

FreeText read(Fields& fields, const KeyInfo& key, MaySayFor audience) {
  const TomlEntry* const entry = fields.find(key);
  return entry == nullptr ? FreeText() : read_node(entry->node, key.name, fields, audience);
}

/// Nothing that may be said of a region looks like a language.
bool names_languages(const TomlTable& table) {
  return std::ranges::any_of(table, [](const TomlEntry& entry) {
    return entry.key == keys::languages::plain.name || well_formed_language(entry.key);
  });
}
}  // namespace

FreeText read_free_text(Fields& fields, const FreeTextKey& key) {
  return read(fields, key, MaySayFor::no);
}

FreeText read_staff_text(Fields& fields, const StaffTextKey& key) {
  return read(fields, key, MaySayFor::yes);
}

FreeText read_free_text_unless_region(Fields& fields, const FreeTextKey& key) {
  const TomlNode* const node = fields.peek(key);
  const auto* const table = node == nullptr ? nullptr : std::get_if<TomlTable>(&node->value);
  if (table != nullptr && !names_languages(*table)) return {};
  return read_free_text(fields, key);
}

std::vector<FreeText> read_free_texts(Fields& fields, const FreeTextsKey& key) {
  std::vector<FreeText> out;
  for (const TomlNode& item : fields.items(key)) {
    FreeText text = read_node(item, key.name, fields, MaySayFor::no);
    if (!text.empty()) out.push_back(std::move(text));
  }
  return out;
}
}  // namespace furnish
