#include "spec/file_template.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>
#include <vector>

#include "base/text.h"
#include "spec/toml_text.h"
#include "trade/region.h"
#include "trade/tools.h"

namespace furnish {
namespace {
constexpr std::size_t widest_line = 100;

/// `key = value` lines of one section, their remarks in a column of their own.
class Lines {
 public:
  void add(std::string said, std::string remark) {
    lines_.emplace_back(std::move(said), std::move(remark));
  }
  std::string text() const {
    constexpr std::size_t furthest = 44;
    std::size_t column = 0;
    for (const auto& [said, remark] : lines_) column = std::max(column, said.size());
    column = std::min(column, furthest);
    std::string out;
    for (const auto& [said, remark] : lines_) {
      out += fmt::format("{:<{}}  # {}\n", said, column, remark);
    }
    return out;
  }

 private:
  std::vector<std::pair<std::string, std::string>> lines_;
};

/// "# Places: muzzle, cheeks, …", in lines that are not too long.
std::string word_list(std::string_view title, std::span<const std::string_view> words) {
  std::string out, line = fmt::format("# {}:", title);
  for (const std::string_view word : words) {
    const std::string next = fmt::format(" {}{}", word, word == words.back() ? "." : ",");
    if (line.size() + next.size() > widest_line) {
      out += line + "\n";
      line = "#  ";
    }
    line += next;
  }
  return out + line + "\n";
}

std::string remark(const KeyInfo& key) {
  constexpr std::size_t few = 9;
  std::string out(key.doc);
  if (key.words != nullptr && key.words().size() <= few) {
    out += fmt::format(" ({})", fmt::join(key.words(), ", "));
  }
  return out;
}

bool is_heading(const KeyInfo& key) {
  return (key.kind == Kind::table || key.kind == Kind::tables) && key.example.empty();
}

class TemplateMaker {
 public:
  TemplateMaker(const FileKind& kind, const KnownFacts& facts) : kind_(kind), facts_(facts) {}

  std::string text() {
    std::string out = fmt::format(
        "# {}. A line that begins with # is not read: take the # away and change its words.\n",
        capitalised(kind_.table->doc));
    Lines plain;
    for (const KeyInfo* const key : kind_.table->keys) {
      if (!has_heading(*key)) add(plain, *key, Sleeps::unless_required);
    }
    if (const std::string top = plain.text(); !top.empty()) out += "\n" + top;
    for (const KeyInfo* const key : kind_.table->keys) {
      if (has_heading(*key)) out += section(*key);
    }
    return out;
  }

 private:
  enum class Sleeps : std::uint8_t { unless_required, always };

  static bool has_heading(const KeyInfo& key) {
    return is_heading(key) || (key.kind == Kind::table && key.required);
  }

  void add(Lines& lines, const KeyInfo& key, Sleeps sleeps) {
    const auto known = facts_.find(&key);
    const bool awake = known != facts_.end() || (key.required && sleeps == Sleeps::unless_required);
    lines.add(fmt::format("{}{} = {}", awake ? "" : "# ", key.name,
                          known != facts_.end() ? known->second : std::string(key.example)),
              remark(key));
  }

  std::string section(const KeyInfo& key) {
    const bool repeated = key.kind == Kind::tables;
    std::string out;
    if (const auto known = facts_.find(&key); repeated && known != facts_.end()) {
      out = "\n" + known->second;
    }
    out += repeated ? fmt::format("\n# [[{}]]  # {}\n", key.name, key.doc)
                    : fmt::format("\n[{}]  # {}\n", key.name, key.doc);
    Lines lines;
    for (const KeyInfo* const one : key.table->keys) {
      add(lines, *one, repeated ? Sleeps::always : Sleeps::unless_required);
    }
    const OtherKeys& others = key.table->others;
    if (others.value != nullptr) {
      const bool quoted = others.which == OpenKeys::blades;
      const auto known = facts_.find(others.value);
      const bool awake = known != facts_.end();
      lines.add(fmt::format("{0}{1}{2}{1} = {3}", awake ? "" : "# ", quoted ? "\"" : "",
                            others.value->name, awake ? known->second : others.value->example),
                remark(*others.value));
    }
    out += lines.text();
    if (others.which == OpenKeys::places) out += places();
    for (const KeyInfo* const one : key.table->keys) out += in_braces(*one);
    if (others.value != nullptr) out += in_braces(*others.value);
    return out;
  }

  /// What may stand in the braces behind a key, told where it is met first.
  std::string in_braces(const KeyInfo& key) {
    if (key.table == nullptr || std::ranges::find(told_, key.table) != told_.end()) return {};
    told_.push_back(key.table);
    Lines lines;
    for (const KeyInfo* const one : key.table->keys) {
      lines.add(fmt::format("#   {} = {}", one->name, one->example), remark(*one));
    }
    if (key.table->keys.empty()) return {};
    return fmt::format("# In braces, {}:\n", key.table->doc) + lines.text() + blades_of(*key.table);
  }

  std::string places() {
    if (std::exchange(places_told_, true)) return {};
    return word_list("Places", place_words()) +
           "# One side: \"left hock\". The more specific wins.\n";
  }

  static std::string blades_of(const TableInfo& table) {
    const bool any = std::ranges::any_of(
        table.keys, [](const KeyInfo* one) { return one->kind == Kind::blade; });
    if (!any) return {};
    std::vector<std::string_view> names;
    for (const Blade& blade : blades()) names.push_back(blade.name);
    return word_list("Blades", names);
  }

  const FileKind& kind_;
  const KnownFacts& facts_;
  std::vector<const TableInfo*> told_;
  bool places_told_ = false;
};
}  // namespace

std::string file_template(const FileKind& kind, const KnownFacts& facts, std::string_view schema) {
  const std::string first = schema.empty() ? "" : fmt::format("#:schema {}\n", schema);
  return first + TemplateMaker(kind, facts).text();
}

std::string known_file(const FileKind& kind, const KnownFacts& facts, std::string_view schema,
                       std::string_view remarks) {
  std::vector<std::string> sections;
  for (const KeyInfo* const section : kind.table->keys) {
    if (const auto known = facts.find(section); known != facts.end()) {
      sections.push_back(known->second);
      continue;
    }
    if (section->kind != Kind::table) continue;
    toml_text::Section out(fmt::format("[{}]", section->name));
    const auto add = [&](const KeyInfo* key) {
      const auto known = facts.find(key);
      if (key != nullptr && known != facts.end()) out.add(key->name, known->second);
    };
    for (const KeyInfo* const key : section->table->keys) add(key);
    add(section->table->others.value);
    sections.push_back(out.text());
  }
  std::string first = schema.empty() ? "" : fmt::format("#:schema {}\n", schema);
  first += remarks;
  return first.empty() ? toml_text::joined_sections(sections)
                       : first + "\n" + toml_text::joined_sections(sections);
}
}  // namespace furnish
