#include "spec/edit_merge.h"

#include <algorithm>

namespace furnish {
namespace {
std::optional<EditValue> copy_of(const EditValue* value) {
  return value == nullptr ? std::nullopt : std::optional(*value);
}
bool same(const EditValue* a, const EditValue* b) {
  return a == nullptr || b == nullptr ? a == b : furnish::same(*a, *b);
}

/// Where an element of `mine` stands in `theirs`: the one that is equal, or the one in its place
/// where none was added or taken out.
std::optional<std::size_t> element_in(const EditList& mine, std::size_t n, const EditList& theirs) {
  if (n < theirs.size() && n < mine.size() && furnish::same(mine[n], theirs[n])) {
    if (mine.size() == theirs.size()) return n;
  }
  if (n >= mine.size()) return std::nullopt;
  const auto equal = [&](const EditValue& one) { return furnish::same(one, mine[n]); };
  if (std::ranges::count_if(mine, equal) == 1 && std::ranges::count_if(theirs, equal) == 1) {
    return static_cast<std::size_t>(std::ranges::find_if(theirs, equal) - theirs.begin());
  }
  if (mine.size() == theirs.size()) return n;
  return std::nullopt;
}

class Merge {
 public:
  Merge(const EditedText& base, const EditedText& now) : base_(base), mine_(base), theirs_(now) {}

  MergedEdits run(const std::vector<Edit>& edits) {
    const EditedText now = theirs_;
    for (const Edit& edit : edits) {
      const EditedText before = mine_;
      if (!mine_.apply(edit)) return {now, {}, mine_.fault()};
      make(edit, before);
    }
    for (EditConflict& one : conflicts_) one.yours = copy_of(find(mine_.tree(), one.path));
    if (conflicts_.empty()) return {std::move(theirs_), {}, {}};
    return {now, std::move(conflicts_), {}};
  }

 private:
  /// `before`: mine, without this edit.
  void make(const Edit& edit, const EditedText& before) {
    const EditPath path = before.as_written(edit.path);
    const bool known = std::ranges::any_of(
        conflicts_, [&](const EditConflict& one) { return begins_with(path, one.path); });
    if (known) return;  // told already
    const auto place = place_in_theirs(before, path);
    if (!place && edit.op == Edit::Op::remove && gone_from_both(before, path)) return;
    if (!place) return conflict(path, before, nullptr);
    const EditValue* const was = find(before.tree(), path);
    const EditValue* const theirs = find(theirs_.tree(), *place);
    const EditValue* const wanted = find(mine_.tree(), path);
    const bool lists = was != nullptr && theirs != nullptr && was->list() && theirs->list();
    if (edit.op != Edit::Op::append && same(wanted, theirs)) return;  // both did the same
    if (edit.op == Edit::Op::set && was != nullptr && theirs != nullptr && was->table() &&
        theirs->table() && edit.value.table()) {
      return make_each(edit, *was->table(), before);
    }
    const bool free = edit.op == Edit::Op::append && (lists || theirs == nullptr);
    const bool renamed = edit.op == Edit::Op::rename && theirs != nullptr;
    if (!free && !renamed && !same(was, theirs)) return conflict(path, before, theirs);
    if (!theirs_.apply({edit.op, *place, edit.value})) conflict(path, before, theirs);
  }

  /// A table as a whole: only keys that differ from what was there are meant.
  void make_each(const Edit& edit, const EditTable& was, const EditedText& before) {
    for (const auto& [key, value] : *edit.value.table()) {
      const EditPath path = before.as_written(joined(edit.path, key));
      if (!same(find(before.tree(), path), &value)) make({Edit::Op::set, path, value}, before);
    }
    for (const auto& [key, value] : was) {
      const EditPath path = joined(before.as_written(edit.path), key);
      if (find(mine_.tree(), path) == nullptr) make({Edit::Op::remove, path, {}}, before);
    }
  }

  /// The same place in theirs, where elements of lists may have moved; empty if it cannot be told.
  std::optional<EditPath> place_in_theirs(const EditedText& before, const EditPath& path) const {
    EditPath out, mine;
    for (const EditStep& step : path) {
      const EditValue* const here = find(before.tree(), mine);
      const EditValue* const there = find(theirs_.tree(), out);
      mine.push_back(step);
      const auto* const n = std::get_if<std::size_t>(&step);
      if (n == nullptr || here == nullptr || here->list() == nullptr) {
        out.push_back(step);
        continue;
      }
      if (there == nullptr || there->list() == nullptr) return std::nullopt;
      const auto element = element_in(*here->list(), *n, *there->list());
      if (!element) return std::nullopt;
      out.emplace_back(*element);
    }
    return theirs_.as_written(out);
  }

  /// Whether an element that is taken out is missing in theirs, and nothing else of its list.
  bool gone_from_both(const EditedText& before, const EditPath& path) const {
    const auto list = place_in_theirs(before, parent_of(path));
    if (!list) return false;
    return same(find(mine_.tree(), parent_of(path)), find(theirs_.tree(), *list));
  }

  void conflict(const EditPath& path, const EditedText& before, const EditValue* theirs) {
    const EditValue* const base = find(base_.tree(), path);
    conflicts_.push_back({path, copy_of(base != nullptr ? base : find(before.tree(), path)),
                          copy_of(theirs), std::nullopt});
  }

  const EditedText& base_;
  EditedText mine_, theirs_;
  std::vector<EditConflict> conflicts_;
};
}  // namespace

MergedEdits merged(const EditedText& base, const std::vector<Edit>& edits, const EditedText& now) {
  return Merge(base, now).run(edits);
}
}  // namespace furnish
