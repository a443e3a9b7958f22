#include <algorithm>

#include "base/text.h"
#include "spec/edit_keys.h"
#include "spec/edit_section.h"
#include "spec/edit_splice.h"
#include "spec/toml_text.h"

namespace furnish {
namespace {
using Rows = std::vector<std::pair<std::string, std::string>>;

/// A line of a table that is written line by line: a key, or a remark that shows one ("# phone =").
struct Neighbour {
  std::string name;
  std::size_t last;                             ///< its last line
  const TextLayout::Pair* statement = nullptr;  ///< null of a remark
};

/// The name of a remark "# phone = …", as files that `new` made have it.
std::string shown_key(std::string_view line) {
  line.remove_prefix(std::min(line.find_first_not_of(" \t"), line.size()));
  if (!line.starts_with("# ")) return {};
  line.remove_prefix(2);
  const std::size_t end = line.find_first_of(" =");
  if (end == 0 || end == std::string_view::npos) return {};
  const std::string_view rest = line.substr(line.find_first_not_of(' ', end));
  return rest.starts_with('=') ? std::string(line.substr(0, end)) : "";
}

/// How the lines of a table are set: the column of their equals signs, if they share one.
struct Manner {
  std::string indent, before = " ", after = " ";
  std::optional<std::size_t> column;

  std::string row(const std::string& key, const std::string& value) const {
    const std::size_t width = code_points(indent + key);
    const bool fits = column && width < *column;
    return indent + key + (fits ? std::string(*column - width, ' ') : before) + "=" + after + value;
  }
};

Manner manner_of(const ParsedText& parsed, const std::vector<Neighbour>& neighbours) {
  Manner out;
  std::optional<std::size_t> column;
  std::size_t lines = 0;
  bool shared = true;
  for (const Neighbour& one : neighbours) {
    if (one.statement == nullptr) continue;
    const std::size_t key_end = one.statement->keys.back().at.end;
    const std::size_t equals = parsed.text.find('=', key_end);
    out.indent = parsed.indent(parsed.first_line(*one.statement));
    out.before = equals == key_end ? "" : " ";
    out.after = parsed.text.substr(equals + 1, one.statement->value.at.begin - equals - 1);
    const std::size_t at = parsed.position(equals).column - 1;
    shared = shared && (!column || *column == at);
    column = at;
    ++lines;
  }
  if (lines > 1 && shared && !out.before.empty()) out.column = column;
  return out;
}

class Insertion {
 public:
  Insertion(const ParsedText& parsed, const TableInfo* file, const EditPath& table,
            const std::string& key)
      : parsed_(parsed), file_(file), table_(table), info_(table_at(file, table)), key_(key) {}

  std::optional<Splice> make(const EditValue& value) {
    if (table_.empty()) return at_top(value);
    const Site site = find_site(parsed_.layout, table_);
    const std::string name = toml_text::key(key_);
    if (site.value != nullptr) return into_braces(*site.value, 0, name, toml_text::value(value));
    if (site.around != nullptr) {  // { a.b = 1 }: beside it in the same way
      const TextLayout::Pair& beside = site.around->pairs[site.parts.front()];
      return into_braces(*site.around, beside.keys.size() - 1,
                         prefix_of(beside, beside.keys.size() - 1) + name, toml_text::value(value));
    }
    const SectionPlace sections(parsed_, file_, table_);
    const bool table = value.table() != nullptr;
    if (table && sections.has_children()) return sections.child(key_, *value.table());
    for (const std::size_t b : site.blocks) {
      if (parsed_.layout.blocks[b].path == table_) return into_block(b, value);
    }
    if (!site.statements.empty()) return beside_dotted(site, value);
    return sections.opened(Rows{{key_, toml_text::value(value)}});
  }

 private:
  std::optional<Splice> at_top(const EditValue& value) {
    const SectionPlace sections(parsed_, file_, {});
    const auto& blocks = parsed_.layout.blocks;
    const bool dotted = blocks.size() == 1 &&
                        std::ranges::any_of(blocks.front().pairs,
                                            [](const auto& pair) { return pair.keys.size() > 1; });
    if (const EditTable* const table = value.table()) {
      if (!dotted || table->empty()) return sections.child(key_, *table);
      return into_block(0, value, true);
    }
    const KeyInfo* const key = key_at(file_, {key_});
    const EditList* const list = value.list();
    const bool headings = key == nullptr || (key->kind == Kind::tables && key->example.empty());
    if (headings && list != nullptr && !list->empty() &&
        std::ranges::all_of(*list, [](const EditValue& one) { return one.table() != nullptr; })) {
      return sections.elements(key_, *list);
    }
    return into_block(0, value);
  }

  /// The nearest line of those that come before the key in its table's order.
  const Neighbour* predecessor(const std::vector<Neighbour>& all) const {
    const std::size_t mine = rank(info_, key_);
    const bool open = info_ == nullptr || mine == info_->keys.size();
    const Neighbour* out = nullptr;
    std::size_t best = 0;
    for (const Neighbour& one : all) {
      const std::size_t other = rank(info_, one.name);
      if (open ? one.statement == nullptr : other > mine) continue;
      if (out != nullptr && !open && other < best) continue;
      out = &one;
      best = other;
    }
    return out;
  }

  /// `dotted`: the value is a table, and written as `key.one = …` line by line.
  Splice into_block(std::size_t b, const EditValue& value, bool dotted = false) const {
    const TextLayout::Block& block = parsed_.layout.blocks[b];
    std::vector<Neighbour> all;
    for (const TextLayout::Pair& pair : block.pairs) {
      all.push_back({pair.keys.front().name, parsed_.last_line(pair), &pair});
    }
    add_shown(b, all);
    const Manner manner = manner_of(parsed_, all);
    const std::string name = toml_text::key(key_);
    std::string text;
    if (dotted) {
      for (const auto& [key, one] : *value.table()) {
        text += (text.empty() ? "" : "\n") +
                manner.row(name + "." + toml_text::key(key), toml_text::value(one));
      }
    } else {
      text = manner.row(name, toml_text::value(value));
    }
    if (const Neighbour* const before = predecessor(all))
      return line_after(parsed_, before->last, text);
    if (b > 0) return line_after(parsed_, parsed_.line_of(block.at.begin), text);
    return first_line(text);
  }

  /// Remarks between the lines of a block that show keys of its table.
  void add_shown(std::size_t b, std::vector<Neighbour>& all) const {
    if (info_ == nullptr) return;
    const auto& blocks = parsed_.layout.blocks;
    const std::size_t first = b == 0 ? 0 : parsed_.line_of(blocks[b].at.begin) + 1;
    const std::size_t end =
        b + 1 < blocks.size() ? parsed_.line_of(blocks[b + 1].at.begin) : parsed_.starts.size();
    for (std::size_t n = first; n < end; ++n) {
      if (b > 0 && parsed_.blank(n)) break;  // what follows is about another section
      const std::string name = shown_key(parsed_.line(n));
      const bool inside = std::ranges::any_of(blocks[b].pairs, [&](const TextLayout::Pair& pair) {
        return n > parsed_.first_line(pair) && n <= parsed_.last_line(pair);
      });
      if (!name.empty() && !inside && rank(info_, name) < info_->keys.size())
        all.push_back({name, n});
    }
    std::ranges::stable_sort(all, {}, &Neighbour::last);
  }

  /// Above all keys of the file, beneath the remark that begins it.
  Splice first_line(const std::string& text) const {
    const TextLayout::Block& top = parsed_.layout.blocks.front();
    const std::string newline = parsed_.newline(0);
    const std::string body = with_newline(text, newline) + newline;
    if (!top.pairs.empty()) {
      const std::size_t first = parsed_.first_line(top.pairs.front());
      const std::size_t lead = parsed_.lead(first);
      return {parsed_.starts[lead == 0 ? first : lead], 0, body};
    }
    if (parsed_.layout.blocks.size() == 1)
      return line_after(parsed_, parsed_.starts.size() - 1, text);
    const std::size_t header = parsed_.line_of(parsed_.layout.blocks[1].at.begin);
    const std::size_t lead = parsed_.lead(header);
    return {parsed_.starts[lead == 0 ? header : lead], 0, body + newline};
  }

  std::string prefix_of(const TextLayout::Pair& pair, std::size_t parts) const {
    return parsed_.text.substr(pair.begin(), pair.keys[parts].at.begin - pair.begin());
  }

  /// trim.ears = … beside which trim.tail = … is written in the same way.
  Splice beside_dotted(const Site& site, const EditValue& value) const {
    const TextLayout::Block& block = parsed_.layout.blocks[site.statements.front().block];
    const std::size_t depth = table_.size() - block.path.size();
    std::vector<Neighbour> all;
    for (const Site::Statement& one : site.statements) {
      const TextLayout::Pair& pair = block.pairs[one.pair];
      all.push_back({pair.keys[depth].name, parsed_.last_line(pair), &pair});
    }
    const Neighbour* const before = predecessor(all);
    const Neighbour& near = before != nullptr ? *before : all.front();
    const std::string text =
        manner_of(parsed_, all)
            .row(prefix_of(*near.statement, depth) + toml_text::key(key_), toml_text::value(value));
    if (before != nullptr) return line_after(parsed_, near.last, text);
    const std::string newline = parsed_.newline(near.last);
    return {parsed_.starts[parsed_.first_line(*near.statement)], 0, text + newline};
  }

  /// `depth`: of which part of the keys in the braces `written` is a sister.
  Splice into_braces(const TextLayout::Value& braces, std::size_t depth, const std::string& written,
                     const std::string& value) const {
    if (braces.pairs.empty()) {
      return {braces.at.begin, braces.at.end - braces.at.begin,
              "{ " + written + " = " + value + " }"};
    }
    const TextLayout::Pair* before = nullptr;
    std::vector<Neighbour> all;
    for (const TextLayout::Pair& pair : braces.pairs) {
      if (pair.keys.size() > depth) all.push_back({pair.keys[depth].name, all.size(), &pair});
    }
    if (const Neighbour* const found = predecessor(all)) before = found->statement;
    const TextLayout::Pair& near = before != nullptr ? *before : braces.pairs.front();
    const std::size_t key_end = near.keys.back().at.end;
    const std::string equals = parsed_.text.substr(key_end, near.value.at.begin - key_end);
    const bool tight = equals == "=";
    const std::string row = written + (tight ? "=" : " = ") + value;
    if (before == nullptr) return {near.begin(), 0, row + (tight ? "," : ", ")};
    return {near.end(), 0, (tight ? "," : ", ") + row};
  }

  const ParsedText& parsed_;
  const TableInfo* file_;
  const EditPath& table_;
  const TableInfo* info_;
  const std::string& key_;
};
}  // namespace

std::string with_newline(std::string text, const std::string& newline) {
  if (newline == "\n") return text;
  for (std::size_t i = 0; (i = text.find('\n', i)) != std::string::npos; i += newline.size()) {
    text.replace(i, 1, newline);
  }
  return text;
}

Splice line_after(const ParsedText& parsed, std::size_t line, const std::string& text) {
  const std::string newline = parsed.newline(line);
  const std::string body = with_newline(text, newline);
  const std::size_t at = parsed.line_end(line);
  const bool ended = at <= parsed.begin || parsed.text[at - 1] == '\n';
  return {at, 0, ended ? body + newline : newline + body};
}

std::optional<Splice> insert_key(const ParsedText& parsed, const TableInfo* file,
                                 const EditPath& table, const std::string& key,
                                 const EditValue& value) {
  return Insertion(parsed, file, table, key).make(value);
}
}  // namespace furnish
