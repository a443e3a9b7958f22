#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace furnish {

/// A key, or the place of an element in a list, from 0.
using EditStep = std::variant<std::string, std::size_t>;
/// Where something stands in a file: {"trim", "ears", "leave"}, {"alert", 0, "text"}.
using EditPath = std::vector<EditStep>;

struct EditValue;
struct EditEntry;
using EditList = std::vector<EditValue>;
using EditTable = std::vector<EditEntry>;  ///< in the order of the file
struct EditDate {
  std::string written;  ///< "2026-11-24"
};
struct EditTime {
  std::string written;  ///< "09:30:00"; "9:30" is the same
};
struct EditMoment {
  std::string written;  ///< a day and a time: "2026-11-24T09:30:00"
};

/// What stands behind a key, without its place: what a form holds, and a whole file.
struct EditValue {
  std::variant<std::string, std::int64_t, double, bool, EditDate, EditTime, EditMoment, EditList,
               EditTable>
      is;

  const EditTable* table() const { return std::get_if<EditTable>(&is); }
  const EditList* list() const { return std::get_if<EditList>(&is); }
  const std::string* text() const { return std::get_if<std::string>(&is); }
  EditTable* table() { return std::get_if<EditTable>(&is); }
  EditList* list() { return std::get_if<EditList>(&is); }
};
struct EditEntry {
  std::string key;
  EditValue value;
};

/// Equal whatever the order of keys; NaN is NaN, and 9:30 is 09:30:00.
bool same(const EditValue&, const EditValue&);

/// Null if nothing is there.
const EditValue* find(const EditTable&, std::string_view key);
const EditValue* find(const EditValue& root, const EditPath&);
EditValue* find(EditValue& root, const EditPath&);
/// Takes out what is there; false if nothing is.
bool erase(EditValue& root, const EditPath&);
/// Sets what is there or not, with the tables on the way; false if something else is in the way.
bool put(EditValue& root, const EditPath&, EditValue);

bool begins_with(const EditPath&, const EditPath& with);
EditPath joined(EditPath, EditStep);
EditPath parent_of(EditPath);
/// "[trim] ears, leave" as messages have it: 'trim.ears.leave', 'alert 2: text'.
std::string to_text(const EditPath&);

namespace toml_text {
/// A value as TOML, tables in braces. A time gets its seconds.
std::string value(const EditValue&);
/// The same in the manner of what stands there: `'…'` and `"""` where words allow, `9:30`.
std::string value_like(std::string_view written, const EditValue&);
}  // namespace toml_text
}  // namespace furnish
