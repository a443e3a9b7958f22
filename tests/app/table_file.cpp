#include "app/table_file.h"

#include <fmt/format.h>

#include <algorithm>

#include "spec/pet_format.h"
#include "spec/visit_format.h"

namespace furnish::test {
namespace {
/// Keys that take no words of anyone's, or not beside the others of their table, and what stands
/// behind them instead; nothing: they are left out.
std::string fixed(const KeyInfo& key) {
  if (&key == &keys::pet_trim::style) return "\"natural-tidy\"";
  if (&key == &keys::work::brush) return "true";                         // work names one tool
  if (&key == &keys::home::bath_every) return std::string(key.example);  // its product needs it
  if (key.required) return std::string(key.example);
  return {};
}
bool stands_alone(const KeyInfo& key) {
  // A product is a word of salon.toml, or written out.
  return &key == &keys::product::product || &key == &keys::pet_trim::style;
}

/// Keys that others of their table want beside them, one way or another.
bool wanted(const KeyInfo& key) {
  return key.required || &key == &keys::work::brush || &key == &keys::product::name ||
         &key == &keys::finding::what || &key == &keys::home::bath_every ||
         &key == &keys::photo::file;
}

Audience narrower(Audience outer, const KeyInfo& key) {
  return outer == Audience::staff ? outer : key.audience;
}

Value seen_by(Audience audience, std::string text) {
  return {text, audience == Audience::staff ? std::string() : text};
}

std::string other_name(const TableInfo& table) {
  // A place that no table has as a key of its own.
  return table.others.which == OpenKeys::places ? "hocks" : std::string(table.others.value->name);
}
}  // namespace

TableFile::TableFile(const TableInfo& file, int first, Dice* dice) : next_(first), dice_(dice) {
  for (const KeyInfo* const key : file.keys) {
    if (key->kind != Kind::table && key->kind != Kind::tables) line(*key, Audience::everyone);
  }
  for (const KeyInfo* const key : file.keys) {
    if (key->kind == Kind::table) section(*key);
    if (key->kind == Kind::tables) repeated(*key);
  }
}

std::set<std::string> TableFile::of(const KeyInfo& key) const {
  const auto found = by_key_.find(&key);
  return found == by_key_.end() ? std::set<std::string>() : found->second;
}

std::string TableFile::marker(const KeyInfo& key, Audience audience) {
  const bool staff = audience == Audience::staff;
  std::string out = fmt::format("{}{}X", staff ? "STAFF" : "OPEN", next_++);
  (staff ? staff_ : everyone_).insert(out);
  by_key_[&key].insert(out);
  return out;
}

Value TableFile::value(const KeyInfo& key, Audience audience) {
  if (stands_alone(key)) return seen_by(audience, fixed(key));
  if (!wanted(key) && left_out()) return {};
  switch (key.kind) {
    case Kind::text:
    case Kind::free_text:
      return seen_by(audience, '"' + marker(key, audience) + '"');
    case Kind::staff_text:
      return {'"' + marker(key, Audience::staff) + '"', {}};
    case Kind::texts:
    case Kind::free_texts:
      return seen_by(audience, "[\"" + marker(key, audience) + "\"]");
    case Kind::photo:
      // A photo has a file, whatever it is called.
      return {
          fmt::format("\"photos/{}.jpg\"", marker(key, audience)),
          audience == Audience::staff && &key != &keys::photo::file ? "" : "\"photos/one.jpg\""};
    case Kind::product:
    case Kind::table: {
      Value out = braces(*key.table, audience);
      // Whom to call when the dog is ill is the owner's own vet: the page says it to the owner.
      if (&key == &keys::owner::vet) out.twin = out.all;
      return out;
    }
    case Kind::tables: {
      const Value one = braces(*key.table, audience);
      return {"[" + one.all + "]", one.twin.empty() ? one.twin : "[" + one.twin + "]"};
    }
    default:
      return seen_by(audience, fixed(key));
  }
}

Value TableFile::other(const TableInfo& table, Audience outer) {
  const KeyInfo& one = *table.others.value;
  return one.kind == Kind::table ? value(one, narrower(outer, one))
                                 : seen_by(narrower(outer, one), std::string(one.example));
}

Value TableFile::braces(const TableInfo& table, Audience outer) {
  Value out;
  const auto add = [&](std::string_view name, const Value& one) {
    for (const auto half : {&Value::all, &Value::twin}) {
      if ((one.*half).empty()) continue;
      out.*half += fmt::format("{}{} = {}", (out.*half).empty() ? "" : ", ", name, one.*half);
    }
  };
  for (const KeyInfo* const key : table.keys) add(key->name, value(*key, narrower(outer, *key)));
  if (table.others.value != nullptr) add(other_name(table), other(table, outer));
  for (const auto half : {&Value::all, &Value::twin}) {
    if (!(out.*half).empty()) out.*half = "{ " + out.*half + " }";
  }
  return out;
}

void TableFile::put(std::string_view name, const Value& one) {
  if (!one.all.empty()) text_ += fmt::format("{} = {}\n", name, one.all);
  if (!one.twin.empty()) twin_ += fmt::format("{} = {}\n", name, one.twin);
}

void TableFile::line(const KeyInfo& key, Audience audience) {
  put(key.name, value(key, narrower(audience, key)));
}

void TableFile::lines(const TableInfo& table, Audience outer) {
  for (const KeyInfo* const key : table.keys) line(*key, outer);
  if (table.others.value != nullptr) put(other_name(table), other(table, outer));
}

void TableFile::head(const std::string& words, Audience audience) {
  text_ += words;
  if (audience == Audience::everyone) twin_ += words;
}

void TableFile::section(const KeyInfo& key) {
  head(fmt::format("[{}]\n", key.name), key.audience);
  lines(*key.table, key.audience);
}

void TableFile::repeated(const KeyInfo& key) {
  const auto& all = key.table->keys;
  const bool says_for = std::ranges::find(all, &keys::audience) != all.end();
  const Audience usual = says_for ? Audience::staff : key.audience;
  if (!left_out()) {
    head(fmt::format("[[{}]]\n", key.name), usual);
    lines(*key.table, usual);
  }
  if (!says_for || left_out()) return;
  head(fmt::format("[[{}]]\nfor = \"everyone\"\n", key.name), Audience::everyone);
  lines(*key.table, Audience::everyone);
}

}  // namespace furnish::test
