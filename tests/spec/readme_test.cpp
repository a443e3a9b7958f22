#include <catch2/catch.hpp>

#include <fmt/format.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>

#include "base/files.h"
#include "spec/file_kinds.h"
#include "spec/product_format.h"
#include "spec/trim_format.h"
#include "spec/visit_format.h"

// README's tables of keys are made from the reader's. Whoever changes a key runs this test once
// with FURNISH_APPROVE=1 in the environment.

namespace furnish::test {
namespace {
const std::filesystem::path readme = std::filesystem::path(FURNISH_SOURCE_DIR) / "README.md";

std::string joined_words(std::span<const std::string_view> words) {
  return fmt::format("{}", fmt::join(words, ", "));
}

/// "`coat` (double, curly, …)", "`name` (what it is called; must be there)".
std::string key_text(const KeyInfo& key) {
  constexpr std::size_t few = 9;
  const bool listed = key.words != nullptr && key.words().size() <= few;
  std::string says = listed ? joined_words(key.words()) : std::string(key.doc);
  if (key.kind == Kind::choices && listed) says = "a list of " + says;
  if (key.required) says += "; must be there";
  return fmt::format("`{}` ({})", key.name, says);
}

std::string row(std::string_view heading, const TableInfo& table) {
  std::string keys;
  for (const KeyInfo* const key : table.keys) {
    keys += (keys.empty() ? "" : ", ") + key_text(*key);
  }
  if (const KeyInfo* const other = table.others.value; other != nullptr) {
    const std::string_view and_also = keys.empty() ? "" : "; and ";
    const bool quoted = table.others.which == OpenKeys::blades;
    keys +=
        quoted
            ? fmt::format("{}`\"{}\" = {}`: {}", and_also, other->name, other->example, other->doc)
            : fmt::format("{}`{} = {}`: {}", and_also, other->name, other->example, other->doc);
  }
  return fmt::format("| {} | {} |\n", heading, keys);
}

/// All sections of a kind of file.
std::string tables_of(const TableInfo& file) {
  std::string plain, out;
  for (const KeyInfo* const key : file.keys) {
    if (key->kind == Kind::table) {
      out += row(fmt::format("`[{}]`", key->name), *key->table);
      const OtherKeys& others = key->table->others;
      if (others.which == OpenKeys::names && others.value->table != nullptr) {
        out += row(fmt::format("`{}.{}`", key->name, others.value->name), *others.value->table);
      }
    } else if (key->kind == Kind::tables) {
      out += row(fmt::format("`[[{}]]`", key->name), *key->table);
    } else {
      plain += (plain.empty() ? "" : ", ") + key_text(*key);
    }
  }
  if (!plain.empty()) out = fmt::format("| at the top | {} |\n", plain) + out;
  return "| table | keys |\n| --- | --- |\n" + out;
}

/// By what stands in README around it.
std::map<std::string, std::string> made() {
  std::map<std::string, std::string> out;
  for (const FileKind& kind : file_kinds()) {
    if (kind.name != "products") out[std::string(kind.name)] = tables_of(*kind.table);
  }
  out["shared"] = "| in braces | keys |\n| --- | --- |\n" +
                  row("a place's work", keys::work::table) +
                  row("a bath's product", keys::product::use) +
                  row("a place that came in or went out", keys::state::table);
  return out;
}

/// README with these tables between their marks; `missing` gets those without.
std::string with_tables(std::string text, std::vector<std::string>& missing) {
  for (const auto& [name, table] : made()) {
    const std::string opening = fmt::format("<!-- keys: {} -->\n", name);
    const std::string closing = "<!-- end of keys -->";
    const std::size_t begin = text.find(opening);
    const std::size_t end = begin == std::string::npos ? begin : text.find(closing, begin);
    if (end == std::string::npos) {
      missing.push_back(name);
      continue;
    }
    text.replace(begin + opening.size(), end - begin - opening.size(), table);
  }
  return text;
}
}  // namespace

TEST_CASE("README's tables of keys are those of the reader", "[readme]") {
  const DiskFiles files;
  const std::string now = files.read(readme.string()).bytes.value();
  std::vector<std::string> missing;
  const std::string then = with_tables(now, missing);
  CHECK(missing.empty());
  if (std::getenv("FURNISH_APPROVE") != nullptr && then != now) {
    std::ofstream(readme, std::ios::binary) << then;
    WARN("approved README.md");
    return;
  }
  CHECK(now == then);
}
}  // namespace furnish::test
