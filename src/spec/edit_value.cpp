#include "spec/edit_value.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/text.h"
#include "spec/toml_text.h"

namespace furnish {
namespace {
/// "9:30" as "09:30:00".
std::string full_time(std::string_view written) {
  std::string out(written);
  if (out.size() > 1 && out[1] == ':') out.insert(0, "0");
  if (out.size() == 5) out += ":00";
  return out;
}

bool same_table(const EditTable& a, const EditTable& b) {
  if (a.size() != b.size()) return false;
  return std::ranges::all_of(a, [&](const EditEntry& one) {
    const EditValue* const other = find(b, one.key);
    return other != nullptr && same(one.value, *other);
  });
}

struct Same {
  bool operator()(const std::string& a, const std::string& b) const { return a == b; }
  bool operator()(std::int64_t a, std::int64_t b) const { return a == b; }
  bool operator()(double a, double b) const { return a == b || (std::isnan(a) && std::isnan(b)); }
  bool operator()(bool a, bool b) const { return a == b; }
  bool operator()(const EditDate& a, const EditDate& b) const { return a.written == b.written; }
  bool operator()(const EditTime& a, const EditTime& b) const {
    return full_time(a.written) == full_time(b.written);
  }
  bool operator()(const EditMoment& a, const EditMoment& b) const { return a.written == b.written; }
  bool operator()(const EditList& a, const EditList& b) const {
    return std::ranges::equal(a, b, [](const auto& x, const auto& y) { return same(x, y); });
  }
  bool operator()(const EditTable& a, const EditTable& b) const { return same_table(a, b); }
  template <typename A, typename B>
  bool operator()(const A&, const B&) const {
    return false;
  }
};

template <typename Value>
Value* walk(Value& root, const EditPath& path) {
  Value* at = &root;
  for (const EditStep& step : path) {
    if (const auto* const key = std::get_if<std::string>(&step)) {
      auto* const table = at->table();
      if (table == nullptr) return nullptr;
      const auto found = std::ranges::find(*table, *key, &EditEntry::key);
      if (found == table->end()) return nullptr;
      at = &found->value;
    } else {
      auto* const list = at->list();
      const std::size_t n = std::get<std::size_t>(step);
      if (list == nullptr || n >= list->size()) return nullptr;
      at = &(*list)[n];
    }
  }
  return at;
}

std::string number(double value) {
  std::string out = fmt::format("{}", value);
  if (std::isfinite(value) && out.find_first_of(".e") == std::string::npos) out += ".0";
  return out;
}

struct Written {
  std::string operator()(const std::string& text) const { return toml_text::quoted(text); }
  std::string operator()(std::int64_t whole) const { return fmt::format("{}", whole); }
  std::string operator()(double value) const { return number(value); }
  std::string operator()(bool flag) const { return flag ? "true" : "false"; }
  std::string operator()(const EditDate& date) const { return date.written; }
  std::string operator()(const EditTime& time) const { return full_time(time.written); }
  std::string operator()(const EditMoment& both) const { return both.written; }
  std::string operator()(const EditList& list) const {
    std::vector<std::string> items;
    for (const EditValue& item : list) items.push_back(toml_text::value(item));
    return "[" + joined(items, ", ") + "]";
  }
  std::string operator()(const EditTable& table) const {
    std::vector<std::pair<std::string, std::string>> rows;
    for (const auto& [key, value] : table) {
      rows.emplace_back(toml_text::key(key), toml_text::value(value));
    }
    return rows.empty() ? "{}" : toml_text::table(rows);
  }
};

bool seen(char c) {
  return static_cast<unsigned char>(c) >= 0x20 && c != 0x7F;
}

/// `'…'` if it can be.
std::string literal(const std::string& text) {
  const bool can = std::ranges::all_of(text, [](char c) { return c != '\'' && seen(c); });
  return can ? "'" + text + "'" : toml_text::quoted(text);
}

/// `"""…"""` if it needs no escapes and has several lines, as what it stands for.
std::string many_lines(std::string_view written, const std::string& text) {
  const bool can = text.find('\n') != std::string::npos && !text.ends_with('"') &&
                   text.find("\"\"\"") == std::string::npos &&
                   std::ranges::all_of(text, [](char c) {
                     return c != '\\' && (seen(c) || c == '\n' || c == '\t');
                   });
  if (!can) return toml_text::quoted(text);
  const bool windows = written.find("\r\n") != std::string_view::npos;
  // A line end behind the opening quotes is none of the text's.
  std::string out = "\"\"\"\n" + text + "\"\"\"";
  for (std::size_t i = 0; windows && (i = out.find('\n', i)) != std::string::npos; i += 2) {
    out.insert(i, "\r");
  }
  return out;
}
}  // namespace

bool same(const EditValue& a, const EditValue& b) {
  return std::visit(Same{}, a.is, b.is);
}

const EditValue* find(const EditTable& table, std::string_view key) {
  const auto found = std::ranges::find(table, key, &EditEntry::key);
  return found == table.end() ? nullptr : &found->value;
}
const EditValue* find(const EditValue& root, const EditPath& path) {
  return walk(root, path);
}
EditValue* find(EditValue& root, const EditPath& path) {
  return walk(root, path);
}

bool erase(EditValue& root, const EditPath& path) {
  if (path.empty() || find(root, path) == nullptr) return false;
  EditValue* const up = find(root, parent_of(path));
  if (const auto* const key = std::get_if<std::string>(&path.back())) {
    return std::erase_if(*up->table(), [&](const EditEntry& one) { return one.key == *key; }) == 1;
  }
  EditList& list = *up->list();
  list.erase(list.begin() + static_cast<std::ptrdiff_t>(std::get<std::size_t>(path.back())));
  return true;
}

bool put(EditValue& root, const EditPath& path, EditValue value) {
  EditValue* at = &root;
  for (std::size_t n = 0; n < path.size(); ++n) {
    EditPath one{path[n]};
    if (EditValue* const there = find(*at, one)) {
      at = there;
      continue;
    }
    const auto* const key = std::get_if<std::string>(&path[n]);
    if (key == nullptr || at->table() == nullptr) return false;
    at->table()->push_back({*key, {EditTable{}}});
    at = &at->table()->back().value;
  }
  *at = std::move(value);
  return true;
}

bool begins_with(const EditPath& path, const EditPath& with) {
  return path.size() >= with.size() && std::ranges::equal(with, std::span(path).first(with.size()));
}
EditPath joined(EditPath path, EditStep step) {
  path.push_back(std::move(step));
  return path;
}
EditPath parent_of(EditPath path) {
  path.pop_back();
  return path;
}

std::string to_text(const EditPath& path) {
  std::string out;
  for (const EditStep& step : path) {
    if (const auto* const key = std::get_if<std::string>(&step)) {
      out += (out.empty() ? "" : ".") + toml_text::key(*key);
    } else {
      out += fmt::format("[{}]", std::get<std::size_t>(step) + 1);
    }
  }
  return out;
}

namespace toml_text {
std::string value(const EditValue& value) {
  return std::visit(Written{}, value.is);
}

std::string value_like(std::string_view written, const EditValue& value) {
  if (const std::string* const text = value.text()) {
    if (written.starts_with("\"\"\"") || written.starts_with("'''")) {
      return many_lines(written, *text);
    }
    if (written.starts_with('\'')) return literal(*text);
  }
  if (const auto* const time = std::get_if<EditTime>(&value.is)) {
    const std::string full = full_time(time->written);
    const bool shorter = written.size() <= 5 && written.find(':') != std::string_view::npos;
    if (shorter && full.size() == 8 && full.ends_with(":00")) return full.substr(0, 5);
  }
  return toml_text::value(value);
}
}  // namespace toml_text
}  // namespace furnish
