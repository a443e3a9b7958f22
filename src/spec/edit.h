#pragma once

#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "base/source.h"
#include "spec/edit_value.h"
#include "spec/keys.h"

namespace furnish {

/// One change of a file, by place.
struct Edit {
  enum class Op : std::uint8_t { set, remove, append };
  Op op{};
  EditPath path;
  EditValue value = {};  ///< not for remove
};

struct ParsedText;
struct Splice;

/// A file of TOML that is changed as its owner would: every change is a splice of the text, parsed
/// again and held against the old tree with the same change made. What would come to mean anything
/// else, or lose or make up a remark unsaid, is refused and changes nothing. So remarks, order,
/// spelling, quotes and line ends of what is not changed stay byte for byte.
///
/// New keys and sections go where the key tables have them. Two spellings of a place ("left hock",
/// left-hock) are one path. A copy is cheap.
class EditedText {
 public:
  /// `file`: the table of the kind of file, null if it is none of ours.
  explicit EditedText(std::string text, const TableInfo* file = nullptr);

  /// False if it is no TOML: fault() says why, and every edit is refused.
  bool good() const { return parsed_ != nullptr; }
  /// Why it is not good, or why the last edit was refused: for people, without a full stop.
  const std::string& fault() const { return fault_; }
  const std::string& text() const { return text_; }
  /// The file as a value, in its order. pre: good()
  const EditValue& tree() const;

  /// Sets a value, new or not; tables on the way are made. Of a list or table that is there, only
  /// what differs is written. What is equal already changes no byte.
  bool set(const EditPath&, const EditValue&);
  /// Takes out a key, a section, an element of a list or a `[[section]]`. False if there is none.
  bool remove(const EditPath&);
  /// Adds an element to a list, or a `[[section]]`; begins either where there is none.
  bool append(const EditPath&, const EditValue&);
  bool apply(const Edit&);
  /// All in their order, or none: then the number of the first that was refused.
  std::optional<std::size_t> apply(const std::vector<Edit>&);

  /// Remarks that went with what was taken out, of all edits so far: "# at his ears".
  const std::vector<std::string>& lost() const { return lost_; }

  /// Where a path is written. Places as diagnostics have them: from 1, columns in code points,
  /// without a byte order mark. Empty if it has no place of its own.
  struct Place {
    Position begin, end;              ///< key and value; a header; an element
    Position value_begin, value_end;  ///< the value; the header again
  };
  std::optional<Place> where(const EditPath&) const;
  /// What is written at a place, for faults at their field; empty above all keys.
  EditPath path_at(Position) const;
  /// The path as the file spells it.
  EditPath as_written(const EditPath&) const;

 private:
  struct Before;
  bool refuse(std::string why);
  bool finish(Before&&, bool done);
  bool set_value(const EditPath&, const EditValue&);
  bool set_table(const EditPath&, const EditTable& old, const EditTable&);
  bool set_list(const EditPath&, const EditList& old, const EditList&);
  bool replace(const EditPath&, const EditValue&);
  bool insert(EditPath, EditValue);
  bool remove_one(const EditPath&);
  bool insert_item(const EditPath& list, std::size_t at, const EditValue&);
  /// Where a word stands for a table that the path needs: `shampoo = "oat"`.
  std::optional<EditPath> word_in_the_way(const EditPath&) const;
  bool spread_out(const EditPath&);
  bool commit(const Splice&, const EditValue& wanted);

  std::string text_, fault_;
  std::shared_ptr<const ParsedText> parsed_;  ///< null if it is no TOML
  const TableInfo* file_;
  std::vector<std::string> lost_;
};
}  // namespace furnish
