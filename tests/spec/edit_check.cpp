#include "spec/edit_check.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>

namespace furnish::test {
namespace {
bool under(const EditPath& path, const EditPath& top) {
  return path.size() >= top.size() && std::equal(top.begin(), top.end(), path.begin());
}

void gather(const EditValue& value, EditPath& path, std::map<EditPath, std::string>& out) {
  const auto* const table = std::get_if<EditTable>(&value.is);
  const auto* const list = std::get_if<EditList>(&value.is);
  if (table != nullptr) {
    for (const auto& [key, one] : *table) {
      path.emplace_back(key);
      gather(one, path, out);
      path.pop_back();
    }
  }
  for (std::size_t n = 0; list != nullptr && n < list->size(); ++n) {
    path.emplace_back(n);
    gather((*list)[n], path, out);
    path.pop_back();
  }
  const bool leaf = (table == nullptr || table->empty()) && (list == nullptr || list->empty());
  if (leaf) out[path] = fmt::format("{}:{}", value.is.index(), toml_text::value(value));
}

/// Where a byte stands, and back, counted by hand.
std::size_t byte_at(std::string_view text, Position at) {
  std::size_t i = text.starts_with("\xEF\xBB\xBF") ? 3 : 0;
  for (std::uint32_t line = 1; line < at.line; ++line) i = text.find('\n', i) + 1;
  for (std::uint32_t column = 1; column < at.column; ++column) {
    do {
      ++i;
    } while (i < text.size() && (static_cast<unsigned char>(text[i]) & 0xC0U) == 0x80U);
  }
  return i;
}
struct Bytes {
  std::size_t begin, value, value_end;
};
std::optional<Bytes> bytes_of(const EditedText& file, const EditPath& path) {
  const auto place = file.where(path);
  if (!place) return std::nullopt;
  return Bytes{byte_at(file.text(), place->begin), byte_at(file.text(), place->value_begin),
               byte_at(file.text(), place->value_end)};
}
std::string slice(const std::string& text, std::size_t begin, std::size_t end) {
  return begin <= end && end <= text.size() ? text.substr(begin, end - begin) : "no place";
}

bool within(std::string_view few, std::string_view many) {
  std::size_t n = 0;
  for (const char c : many) n += n < few.size() && few[n] == c ? 1 : 0;
  return n == few.size();
}

/// What all values are to be afterwards.
std::map<EditPath, std::string> wanted(const EditedText& before, const Edit& edit) {
  std::map<EditPath, std::string> out;
  EditPath top = edit.path;
  const EditValue* there = find(before.tree(), edit.path);
  for (const auto& [path, value] : leaves(before.tree())) {
    if (const auto to = moved(path, edit)) out[*to] = value;
  }
  if (edit.op == Edit::Op::append) {
    const EditList* const list = there == nullptr ? nullptr : there->list();
    top.emplace_back(list == nullptr ? 0 : list->size());
  }
  if (edit.op != Edit::Op::remove) gather(edit.value, top, out);
  // Nothing is empty any more that something was put into, or empty that was only implied.
  std::erase_if(out, [&](const auto& leaf) {
    return leaf.first.size() < top.size() && under(top, leaf.first);
  });
  return out;
}

/// An edit below or of a word that may be a table or list, as one of that word: `shampoo = "oat"`
/// becomes { product = "oat", … }, of the keys that a word may stand for.
Edit said_plainly(const EditedText& before, const EditedText& after, const Edit& edit) {
  for (std::size_t n = 1; n <= edit.path.size(); ++n) {
    const EditPath top(edit.path.begin(), edit.path.begin() + static_cast<std::ptrdiff_t>(n));
    const EditValue* const word = find(before.tree(), top);
    if (word == nullptr) return edit;
    if (word->table() != nullptr || word->list() != nullptr) continue;
    EditValue value = edit.value;
    if (edit.op == Edit::Op::append) {
      value =
          n == edit.path.size() ? EditValue{EditList{*word, value}} : EditValue{EditList{value}};
    } else if (n == edit.path.size()) {
      return edit;
    }
    for (std::size_t k = edit.path.size(); k > n; --k) {
      value = {EditTable{{std::get<std::string>(edit.path[k - 1]), value}}};
    }
    for (const char* const key : {"text", "product", "on"}) {
      const EditPath there = joined(top, key);
      if (n == edit.path.size() || find(after.tree(), there) == nullptr) continue;
      if (find(value, EditPath{key}) == nullptr) value.table()->push_back({key, *word});
    }
    return {Edit::Op::set, top, value};
  }
  return edit;
}

std::string text_of(const std::map<EditPath, std::string>& all) {
  std::string out;
  for (const auto& [path, value] : all) out += to_text(path) + " " + value + "\n";
  return out;
}

std::string wrong_values(const EditedText& before, const EditedText& after, const Edit& edit) {
  auto now = leaves(after.tree());
  EditPath top = edit.path;
  if (edit.op == Edit::Op::append) top.emplace_back(std::size_t{0});
  std::erase_if(now, [&](const auto& leaf) {
    return leaf.first.size() < top.size() && under(top, leaf.first);
  });
  const auto asked = wanted(before, edit);
  if (now == asked) return {};
  return "asked:\n" + text_of(asked) + "came:\n" + text_of(now);
}

std::string wrong_remarks(const EditedText& before, const EditedText& after) {
  const auto was = remarks_of(before.text());
  auto now = remarks_of(after.text());
  now.insert(now.end(), after.lost().begin() + static_cast<std::ptrdiff_t>(before.lost().size()),
             after.lost().end());
  std::ranges::sort(now);
  return now == was ? "" : "remarks are lost unsaid, or made up";
}

/// Keys and values that nobody asked to change, as they are written.
std::string wrong_spelling(const EditedText& before, const EditedText& after, const Edit& edit) {
  constexpr std::size_t most = 24;  // in large files some of them
  const auto all = leaves(before.tree());
  const std::size_t step = all.size() / most + 1;
  std::size_t n = 0;
  for (const auto& [path, value] : all) {
    const auto to = moved(path, edit);
    if (n++ % step != 0 || !to) continue;
    const auto was = bytes_of(before, path), now = bytes_of(after, *to);
    if (under(edit.path, path)) continue;  // an empty table or list that gets its first part
    if (!was || !now) return to_text(path) + " has no place";
    if (slice(before.text(), was->begin, was->value_end) !=
        slice(after.text(), now->begin, now->value_end)) {
      return to_text(path) + " is written in another way";
    }
  }
  return {};
}

std::string wrong_bytes(const EditedText& before, const EditedText& after, const Edit& edit) {
  const std::string &was = before.text(), &now = after.text();
  const EditValue* const there = find(before.tree(), edit.path);
  if (edit.op == Edit::Op::remove) {
    // Of braces, "{}" may be left.
    const bool less = within(now, was) && now.size() < was.size();
    return less ? "" : "more than a removal";
  }
  if (edit.op == Edit::Op::set && there != nullptr) {
    const bool plain = there->table() == nullptr && there->list() == nullptr;
    const auto place = bytes_of(before, edit.path);
    if (!plain || !place) return {};
    const std::string_view head = std::string_view(was).substr(0, place->value);
    const std::string_view tail = std::string_view(was).substr(place->value_end);
    const bool only =
        now.size() >= head.size() + tail.size() && now.starts_with(head) && now.ends_with(tail);
    return only ? "" : "more than the value is changed";
  }
  if (within(was, now)) return {};
  const EditValue* const up =
      edit.path.empty() ? nullptr : find(before.tree(), parent_of(edit.path));
  const EditValue* const near = there != nullptr ? there : up;
  const bool was_empty = near != nullptr && ((near->table() != nullptr && near->table()->empty()) ||
                                             (near->list() != nullptr && near->list()->empty()));
  return was_empty || (there != nullptr && there->list() != nullptr) ? "" : "more than an addition";
}
}  // namespace

std::vector<std::string> remarks_of(std::string_view text) {
  std::vector<std::string> out;
  for (std::size_t i = 0; i < text.size();) {
    const char c = text[i];
    if (c == '#') {
      const std::size_t end = std::min(text.find_first_of("\r\n", i), text.size());
      out.emplace_back(text.substr(i, end - i));
      i = end;
    } else if (c == '"' || c == '\'') {
      const std::string end(text.substr(i, 3) == std::string(3, c) ? 3 : 1, c);
      for (i += end.size(); i < text.size() && text.substr(i, end.size()) != end; ++i) {
        if (c == '"' && text[i] == '\\') ++i;
      }
      i += end.size();
      while (end.size() == 3 && i < text.size() && text[i] == c) ++i;
    } else {
      ++i;
    }
  }
  std::ranges::sort(out);
  return out;
}

std::map<EditPath, std::string> leaves(const EditValue& tree) {
  std::map<EditPath, std::string> out;
  EditPath path;
  gather(tree, path, out);
  return out;
}

std::optional<EditPath> moved(const EditPath& path, const Edit& edit) {
  if (edit.op == Edit::Op::append) return path;
  if (under(path, edit.path)) return std::nullopt;
  const std::size_t depth = edit.path.size() - 1;
  const EditPath list(edit.path.begin(), edit.path.begin() + static_cast<std::ptrdiff_t>(depth));
  EditPath out = path;
  const auto* const gone = std::get_if<std::size_t>(&edit.path.back());
  if (edit.op != Edit::Op::remove || gone == nullptr || !under(path, list)) return out;
  if (path.size() <= depth) return out;
  auto& place = std::get<std::size_t>(out[depth]);
  if (place > *gone) --place;
  return out;
}

std::string wrong_with(const EditedText& before, const EditedText& after, const Edit& asked) {
  const Edit edit = said_plainly(before, after, asked);
  for (const std::string& fault :
       {wrong_values(before, after, edit), wrong_remarks(before, after),
        wrong_spelling(before, after, edit), wrong_bytes(before, after, edit)}) {
    if (!fault.empty()) return fault;
  }
  return {};
}
}  // namespace furnish::test
