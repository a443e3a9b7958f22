#pragma once

#include <list>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/text.h"
#include "spec/keys.h"
#include "spec/values.h"

namespace furnish {

/// Reads one table of a file by the keys that spec/*_format.h lists for it. Every key asked for is
/// ticked off; finish() reports those that nobody asked for, with the nearest name. Whatever is
/// given but wrong is reported at once and comes back empty, as does what is not there.
class Fields {
 public:
  /// What must be there and is not is reported at once. The document or node must outlive this.
  Fields(const Document&, const TableInfo&, DiagnosticSink&);
  /// `name` is for messages: "[pet]", "'chest'". pre: the node is a table.
  Fields(const TomlNode&, std::string name, const TableInfo&, const Fields& parent);

  const std::string& name() const { return name_; }
  SourceSpan span() const { return span_; }  ///< a header, a table in braces, or the file
  DiagnosticSink& sink() const { return *sink_; }
  /// False if lines with faults of syntax were left out: then nothing is said to be missing.
  bool complete() const { return complete_; }
  /// Names of the keys asked for so far.
  std::span<const std::string_view> known() const { return known_; }
  bool empty() const { return table_->empty(); }
  const TableInfo& info() const { return *info_; }
  const TableInfo& file() const { return *file_; }

  const TomlEntry* find(const KeyInfo&);
  /// Entries whose keys nobody has asked for; they are ticked off by this.
  std::vector<const TomlEntry*> rest();
  /// A fault if `key` is not there. `remark` is what the hint says beside the line to write, if not
  /// what the key is for.
  void require(const KeyInfo& key, std::string_view remark = {});
  void finish();

  std::optional<Located<std::string>> text(const TextKey&);
  std::string words(const TextKey&);  ///< text() or nothing
  /// What stands at a key, without asking for it; null if nothing does.
  const TomlNode* peek(const KeyInfo&) const;
  bool flag(const FlagKey&, bool otherwise);
  std::optional<Located<Date>> date(const DateKey&);
  std::optional<TimeOfDay> time(const TimeKey&);
  std::optional<double> number(const NumberKey&);
  std::optional<int> whole(const NumberKey&);
  std::vector<Located<std::string>> texts(const TextsKey&);
  std::vector<std::string> word_list(const TextsKey&);  ///< texts() without their places

  template <typename T>
  std::optional<Located<T>> quantity(const QuantityKey<T>& key) {
    const TomlEntry* const entry = find(key);
    if (entry == nullptr) return std::nullopt;
    const auto value = as_quantity(entry->node, key.name, *key.range, *sink_);
    if (!value) return std::nullopt;
    return Located<T>{*value, entry->node.span};
  }

  template <typename T>
  std::optional<Located<T>> choice(const ChoiceKey<T>& key) {
    const TomlEntry* const entry = find(key);
    if (entry == nullptr) return std::nullopt;
    return chosen(entry->node, key);
  }

  /// A list of them, none twice.
  template <typename T>
  std::vector<Located<T>> choices(const ChoiceKey<T>& key) {
    std::vector<Located<T>> out;
    for (const TomlNode& item : items(key)) {
      const auto value = chosen(item, key);
      if (!value) continue;
      const Located<T>* first = nullptr;
      for (const Located<T>& other : out) {
        if (other.value == value->value) first = &other;
      }
      if (first == nullptr) {
        out.push_back(*value);
      } else {
        report_twice(key.noun, value->span, first->span);
      }
    }
    return out;
  }

  /// The table behind a key; its name in messages is `[key]`.
  std::optional<Fields> table(const TableKey&);
  /// The tables behind `[[key]]`.
  std::vector<Fields> tables(const TablesKey&);
  /// The entries of a list, or the one thing that stands there by itself ("a, b" where words of
  /// ours are asked for is two); none after a fault or without the key. They live as long as this.
  std::span<const TomlNode> items(const KeyInfo&);

  void report_twice(std::string_view noun, SourceSpan again, SourceSpan first) const;

 private:
  template <typename T>
  std::optional<Located<T>> chosen(const TomlNode& node, const ChoiceKey<T>& key) const {
    const auto text = as_text(node, key.name, *sink_);
    if (!text) return std::nullopt;
    if (const auto value = key.parse(*text)) return Located<T>{*value, node.span};
    if (const auto value = key.parse(lower_ascii(*text))) return Located<T>{*value, node.span};
    report_unknown("unknown-word", node.span, key.noun, *text, key.words(), *sink_);
    return std::nullopt;
  }

  void require_all();
  /// The heading that stands as a comment between this table's own and a key, if the key is one
  /// of its; null otherwise.
  const SleepingHeading* asleep_above(const TomlEntry&) const;
  std::span<const TomlNode> alone(const KeyInfo&, const TomlNode&);

  const TomlTable* table_;
  const TableInfo* info_;
  const TableInfo* file_;  ///< that it is a part of
  std::span<const SleepingHeading> sleeping_;
  SourceSpan span_;
  std::string name_;
  bool complete_;
  DiagnosticSink* sink_;
  std::vector<std::string_view> known_;
  std::list<TomlList> made_;  ///< lists that were written as one string
};

/// What to do with a key that stands in another section of the file than `here`, or in a file of
/// another kind; empty if it is no such key.
std::string where_it_belongs(std::string_view key, const TableInfo& file, const TableInfo* here);
}  // namespace furnish
