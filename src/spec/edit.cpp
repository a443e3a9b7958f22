#include "spec/edit.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>

#include "spec/edit_keys.h"
#include "spec/edit_splice.h"

namespace furnish {
namespace {
/// Sorted.
std::vector<std::string> remarks(const ParsedText& parsed) {
  std::vector<std::string> out;
  for (const TextLayout::Span one : parsed.layout.comments) out.emplace_back(parsed.of(one));
  std::ranges::sort(out);
  return out;
}
std::vector<std::string> only_in(const std::vector<std::string>& a,
                                 const std::vector<std::string>& b) {
  std::vector<std::string> out;
  std::ranges::set_difference(a, b, std::back_inserter(out));
  return out;
}

/// What a table has instead of the word that may stand for it: `shampoo = "oat"`. Empty if none
/// may.
std::string_view short_for(const KeyInfo* key) {
  if (key == nullptr) return {};
  switch (key->kind) {
    case Kind::product:
      return "product";
    case Kind::vaccination:
      return "on";
    case Kind::free_text:
    case Kind::free_texts:
    case Kind::staff_text:
      return "text";
    default:
      return {};
  }
}
bool is_list(const KeyInfo* key) {
  if (key == nullptr) return false;
  constexpr Kind lists[] = {Kind::texts,   Kind::free_texts, Kind::choices,
                            Kind::lengths, Kind::places,     Kind::blades};
  return std::ranges::find(lists, key->kind) != std::end(lists);
}

/// Takes out the tables above a path that are empty now and were only implied by it.
void prune(EditValue& tree, const TextLayout& layout, EditPath path) {
  for (path.pop_back(); !path.empty(); path.pop_back()) {
    const EditValue* const up = find(tree, path);
    const bool empty = up != nullptr && ((up->table() != nullptr && up->table()->empty()) ||
                                         (up->list() != nullptr && up->list()->empty()));
    if (!empty || find_site(layout, path).value != nullptr) return;
    const bool header = std::ranges::any_of(
        layout.blocks, [&](const TextLayout::Block& block) { return block.path == path; });
    if (header) return;
    erase(tree, path);
  }
}
}  // namespace

struct EditedText::Before {
  std::string text;
  std::shared_ptr<const ParsedText> parsed;
  EditValue wanted;  ///< what all is to mean afterwards
};

EditedText::EditedText(std::string text, const TableInfo* file)
    : text_(std::move(text)), parsed_(parse_for_edits(text_, fault_)), file_(file) {}

const EditValue& EditedText::tree() const {
  return parsed_->tree;
}

bool EditedText::refuse(std::string why) {
  fault_ = std::move(why);
  return false;
}

bool EditedText::finish(Before&& before, bool done) {
  if (done && !same(parsed_->tree, before.wanted)) {
    done = refuse("that cannot be written here without changing something else");
  }
  if (!done) {
    text_ = std::move(before.text);
    parsed_ = std::move(before.parsed);
    return false;
  }
  if (before.parsed == parsed_) return true;
  const auto gone = only_in(remarks(*before.parsed), remarks(*parsed_));
  lost_.insert(lost_.end(), gone.begin(), gone.end());
  return true;
}

bool EditedText::commit(const Splice& splice, const EditValue& wanted) {
  std::string text = text_;
  text.replace(splice.at, splice.length, splice.text);
  std::string fault;
  auto parsed = parse_for_edits(text, fault);
  if (parsed == nullptr) return refuse("that cannot be written here: " + fault);
  if (!same(parsed->tree, wanted) || !only_in(remarks(*parsed), remarks(*parsed_)).empty()) {
    return refuse("that cannot be written here without changing something else");
  }
  text_ = std::move(text);
  parsed_ = std::move(parsed);
  return true;
}

bool EditedText::set(const EditPath& path, const EditValue& value) {
  if (!good()) return false;
  if (path.empty()) return refuse("a file is not set as a whole");
  const EditPath at = as_written(path);
  const EditValue meant = spelled_as_in(tree(), file_, at, value);
  Before before{text_, parsed_, tree()};
  if (const std::optional<EditPath> word = word_in_the_way(at)) {
    if (!spread_out(*word)) return false;
    before.wanted = tree();
  }
  if (!put(before.wanted, at, meant)) {
    return finish(std::move(before), refuse(fmt::format("there is no place for {}", to_text(at))));
  }
  const bool done = set_value(at, meant);
  return finish(std::move(before), done);
}

bool EditedText::remove(const EditPath& path) {
  if (!good()) return false;
  const EditPath at = as_written(path);
  if (at.empty() || find(tree(), at) == nullptr) {
    return refuse(fmt::format("there is no {} to take out", to_text(at)));
  }
  Before before{text_, parsed_, tree()};
  erase(before.wanted, at);
  prune(before.wanted, parsed_->layout, at);
  const bool done = remove_one(at);
  return finish(std::move(before), done);
}

bool EditedText::append(const EditPath& path, const EditValue& value) {
  if (!good()) return false;
  if (path.empty()) return refuse("a file is no list");
  const EditPath at = as_written(path);
  const EditValue* const there = find(tree(), at);
  if (there == nullptr) return set(at, {EditList{value}});
  if (there->list() == nullptr) {
    // One word where a list may stand; "a, b" may be two.
    const std::string* const word = there->text();
    if (word == nullptr || !is_list(key_at(file_, at)) || word->find(',') != std::string::npos) {
      return refuse(fmt::format("{} is no list", to_text(at)));
    }
    Before before{text_, parsed_, tree()};
    put(before.wanted, at, {EditList{*there, value}});
    const TextLayout::Value* const written = find_site(parsed_->layout, at).value;
    const std::string list =
        fmt::format("[{}, {}]", parsed_->of(written->at), toml_text::value(value));
    const EditValue wanted = before.wanted;
    const bool done =
        commit({written->at.begin, written->at.end - written->at.begin, list}, wanted);
    return finish(std::move(before), done);
  }
  Before before{text_, parsed_, tree()};
  EditList& list = *find(before.wanted, at)->list();
  list.push_back(value);
  const bool done = insert_item(at, list.size() - 1, value);
  return finish(std::move(before), done);
}

bool EditedText::apply(const Edit& edit) {
  switch (edit.op) {
    case Edit::Op::set:
      return set(edit.path, edit.value);
    case Edit::Op::remove:
      return remove(edit.path);
    case Edit::Op::append:
      break;
  }
  return append(edit.path, edit.value);
}

std::optional<std::size_t> EditedText::apply(const std::vector<Edit>& edits) {
  EditedText before = *this;
  for (std::size_t n = 0; n < edits.size(); ++n) {
    if (apply(edits[n])) continue;
    before.fault_ = std::move(fault_);
    *this = std::move(before);
    return n;
  }
  return std::nullopt;
}

bool EditedText::set_value(const EditPath& path, const EditValue& value) {
  const EditValue* const there = find(tree(), path);
  if (there == nullptr) return insert(path, value);
  if (same(*there, value)) return true;
  const EditValue old = *there;
  if (old.table() != nullptr && value.table() != nullptr) {
    return set_table(path, *old.table(), *value.table());
  }
  if (old.list() != nullptr && value.list() != nullptr) {
    return set_list(path, *old.list(), *value.list());
  }
  return replace(path, value);
}

bool EditedText::set_table(const EditPath& path, const EditTable& old, const EditTable& value) {
  for (const auto& [key, one] : value) {
    if (!set_value(joined(path, key), one)) return false;
  }
  for (const auto& [key, one] : old) {
    if (find(value, key) == nullptr && !remove_one(joined(path, key))) return false;
  }
  return find(tree(), path) != nullptr || insert(path, {EditTable{}});
}

bool EditedText::set_list(const EditPath& path, const EditList& old, const EditList& value) {
  const bool sections = find_site(parsed_->layout, path).value == nullptr;
  const bool tables =
      std::ranges::all_of(value, [](const auto& one) { return one.table() != nullptr; });
  if (sections && !tables)
    return replace(path, value.empty() ? EditValue{EditList{}} : EditValue{value});
  std::size_t front = 0, back = 0;
  const std::size_t n = old.size(), m = value.size();
  while (front < std::min(n, m) && same(old[front], value[front])) ++front;
  while (back < std::min(n, m) - front && same(old[n - 1 - back], value[m - 1 - back])) ++back;
  std::size_t i = front;
  for (; i < std::min(n, m) - back; ++i) {
    if (!set_value(joined(path, i), value[i])) return false;
  }
  for (std::size_t k = n - back; k-- > i;) {
    if (!remove_one(joined(path, k))) return false;
  }
  for (; i < m - back; ++i) {
    if (!insert_item(path, i, value[i])) return false;
  }
  return find(tree(), path) != nullptr || insert(path, {EditList{}});
}

bool EditedText::replace(const EditPath& path, const EditValue& value) {
  const TextLayout::Value* const written = find_site(parsed_->layout, path).value;
  if (written == nullptr) return remove_one(path) && insert(path, value);
  EditValue wanted = tree();
  put(wanted, path, value);
  const EditValue ordered = in_order(table_at(file_, path), value);
  return commit({written->at.begin, written->at.end - written->at.begin,
                 toml_text::value_like(parsed_->of(written->at), ordered)},
                wanted);
}

bool EditedText::insert(EditPath path, EditValue value) {
  while (path.size() > 1 && find(tree(), parent_of(path)) == nullptr) {
    const auto* const key = std::get_if<std::string>(&path.back());
    if (key == nullptr) break;
    value = {EditTable{{*key, std::move(value)}}};
    path.pop_back();
  }
  const auto* const key = std::get_if<std::string>(&path.back());
  const EditPath table = parent_of(path);
  const EditValue* const up = find(tree(), table);
  if (key == nullptr || up == nullptr || up->table() == nullptr) {
    return refuse(fmt::format("there is no place for {}", to_text(path)));
  }
  value = in_order(table_at(file_, path), std::move(value));
  const auto splice = insert_key(*parsed_, file_, table, *key, value);
  if (!splice) return refuse(fmt::format("there is no place for {}", to_text(path)));
  EditValue wanted = tree();
  put(wanted, path, std::move(value));
  return commit(*splice, wanted);
}

bool EditedText::insert_item(const EditPath& path, std::size_t at, const EditValue& value) {
  EditValue wanted = tree();
  EditList& list = *find(wanted, path)->list();
  list.insert(list.begin() + static_cast<std::ptrdiff_t>(at), value);
  const EditValue ordered = in_order(table_at(file_, path), value);
  if (const TextLayout::Value* const written = find_site(parsed_->layout, path).value) {
    return commit(furnish::insert_item(*parsed_, *written, at, toml_text::value(ordered)), wanted);
  }
  const EditTable* const table = ordered.table();
  if (table == nullptr) return refuse(fmt::format("what stands in {} are sections", to_text(path)));
  const auto splice = insert_section(*parsed_, path, at, *table);
  if (!splice) return refuse(fmt::format("there is no place for {}", to_text(path)));
  return commit(*splice, wanted);
}

bool EditedText::remove_one(const EditPath& path) {
  const Site site = find_site(parsed_->layout, path);
  if (site.empty()) return refuse(fmt::format("there is no {} to take out", to_text(path)));
  if (site.around == nullptr) {
    EditValue wanted = tree();
    erase(wanted, path);
    prune(wanted, parsed_->layout, path);
    return commit(remove_lines(*parsed_, site), wanted);
  }
  // One part after another: { a.b = 1, c = 2, a.d = 3 }.
  EditPath part = path;
  if (!site.around->pairs.empty()) {
    const auto& keys = site.around->pairs[site.parts.back()].keys;
    for (std::size_t n = site.below; n < keys.size(); ++n) part.emplace_back(keys[n].name);
  }
  EditValue wanted = tree();
  erase(wanted, part);
  prune(wanted, parsed_->layout, part);
  if (!commit(remove_part(*parsed_, *site.around, site.parts.back()), wanted)) return false;
  return site.parts.size() == 1 || remove_one(path);
}

std::optional<EditPath> EditedText::word_in_the_way(const EditPath& path) const {
  for (std::size_t n = 1; n < path.size(); ++n) {
    const EditPath above(path.begin(), path.begin() + static_cast<std::ptrdiff_t>(n));
    const EditValue* const there = find(tree(), above);
    if (there == nullptr) return std::nullopt;
    const bool plain = there->table() == nullptr && there->list() == nullptr;
    if (plain && std::holds_alternative<std::string>(path[n])) return above;
  }
  return std::nullopt;
}

bool EditedText::spread_out(const EditPath& path) {
  const std::string key(short_for(key_at(file_, path)));
  if (key.empty()) return refuse(fmt::format("{} is no table", to_text(path)));
  const TextLayout::Value* const written = find_site(parsed_->layout, path).value;
  if (written == nullptr) return refuse(fmt::format("{} is no table", to_text(path)));
  EditValue wanted = tree();
  put(wanted, path, {EditTable{{key, *find(tree(), path)}}});
  return commit({written->at.begin, written->at.end - written->at.begin,
                 fmt::format("{{ {} = {} }}", key, parsed_->of(written->at))},
                wanted);
}

EditPath EditedText::as_written(const EditPath& path) const {
  return good() ? spelled_as_in(tree(), file_, path) : path;
}
}  // namespace furnish
