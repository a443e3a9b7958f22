#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "spec/values.h"

namespace furnish {

/// Reads one table of a file key by key. Every key asked for is ticked off; finish() reports those
/// that nobody asked for, with the nearest name. Whatever is given but wrong is reported at once
/// and comes back empty, as does what is not there.
class Fields {
 public:
  /// `name` is for messages: "a pet's file", "[pet]". The document or node must outlive this.
  Fields(const Document&, std::string name, DiagnosticSink&);
  /// pre: the node is a table.
  Fields(const TomlNode&, std::string name, const Fields& parent);

  const std::string& name() const { return name_; }
  SourceSpan span() const { return span_; }  ///< a header, a table in braces, or the file
  DiagnosticSink& sink() const { return *sink_; }
  /// False if lines with faults of syntax were left out: then nothing is said to be missing.
  bool complete() const { return complete_; }
  /// Keys asked for so far.
  std::span<const std::string_view> known() const { return known_; }

  const TomlEntry* find(std::string_view key);
  /// Entries whose keys nobody has asked for; they are ticked off by this.
  std::vector<const TomlEntry*> rest();
  /// A fault if `key` is not there. `example` is what to write.
  void require(std::string_view key, std::string_view example);
  void finish();

  std::optional<Located<std::string>> text(std::string_view key);
  std::string words(std::string_view key);  ///< text() or nothing
  /// What stands at a key, without asking for it; null if nothing does.
  const TomlNode* peek(std::string_view key) const;
  bool flag(std::string_view key, bool otherwise);
  std::optional<Located<Date>> date(std::string_view key);
  std::optional<TimeOfDay> time(std::string_view key);
  std::optional<double> number(std::string_view key, const Range<double>&);
  std::optional<int> whole(std::string_view key, const Range<double>&);
  std::vector<Located<std::string>> texts(std::string_view key);
  std::vector<std::string> word_list(std::string_view key);  ///< texts() without their places

  template <typename T>
  std::optional<Located<T>> quantity(std::string_view key, const Range<T>& range) {
    const TomlEntry* const entry = find(key);
    if (entry == nullptr) return std::nullopt;
    const auto value = as_quantity(entry->node, key, range, *sink_);
    if (!value) return std::nullopt;
    return Located<T>{*value, entry->node.span};
  }

  /// One of `words`, as `parse` knows them.
  template <typename T>
  std::optional<Located<T>> choice(std::string_view key, std::string_view noun,
                                   std::optional<T> (*parse)(std::string_view),
                                   std::span<const std::string_view> words) {
    const TomlEntry* const entry = find(key);
    if (entry == nullptr) return std::nullopt;
    return chosen(entry->node, key, noun, parse, words);
  }

  /// A list of them, none twice.
  template <typename T>
  std::vector<Located<T>> choices(std::string_view key, std::string_view noun,
                                  std::optional<T> (*parse)(std::string_view),
                                  std::span<const std::string_view> words) {
    std::vector<Located<T>> out;
    for (const TomlNode& item : items(key)) {
      const auto value = chosen(item, key, noun, parse, words);
      if (!value) continue;
      const Located<T>* first = nullptr;
      for (const Located<T>& other : out) {
        if (other.value == value->value) first = &other;
      }
      if (first == nullptr) {
        out.push_back(*value);
      } else {
        report_twice(noun, value->span, first->span);
      }
    }
    return out;
  }

  /// The table behind a key; its name in messages is `[key]`.
  std::optional<Fields> table(std::string_view key);
  /// The tables behind `[[key]]`.
  std::vector<Fields> tables(std::string_view key);
  /// The entries of a list; none after a fault or without the key.
  std::span<const TomlNode> items(std::string_view key);

  void report_twice(std::string_view noun, SourceSpan again, SourceSpan first) const;

 private:
  template <typename T>
  std::optional<Located<T>> chosen(const TomlNode& node, std::string_view key,
                                   std::string_view noun,
                                   std::optional<T> (*parse)(std::string_view),
                                   std::span<const std::string_view> words) const {
    const auto text = as_text(node, key, *sink_);
    if (!text) return std::nullopt;
    if (const auto value = parse(*text)) return Located<T>{*value, node.span};
    report_unknown("unknown-word", node.span, noun, *text, words, *sink_);
    return std::nullopt;
  }

  const TomlTable* table_;
  SourceSpan span_;
  std::string name_;
  bool complete_;
  DiagnosticSink* sink_;
  std::vector<std::string_view> known_;
};
}  // namespace furnish
