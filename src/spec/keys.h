#pragma once

#include <array>
#include <chrono>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "model/audience.h"
#include "spec/bounds.h"

namespace furnish {

/// What stands behind a key. Fields has a way to read each, schema.cpp a shape.
enum class Kind : std::uint8_t {
  text,
  texts,
  free_text,   ///< words, or a table of languages
  free_texts,  ///< a list of them
  staff_text,  ///< the same, with `for`
  flag,
  date,
  birth,  ///< a date, or the year or the month of one
  time,
  number,
  whole,
  minutes,  ///< a whole number, or a duration
  choice,
  choices,
  paper,
  length,
  lengths,
  mass,
  volume,
  duration,
  days,
  dilution,
  language,
  photo,
  place,
  places,
  blade,
  blades,
  product,      ///< its word, or a table
  vaccination,  ///< a date, or a table
  focus,        ///< two shares of a photo
  seams,        ///< pairs of regions
  table,
  tables,
};

struct TableInfo;

/// One key of a file as data: the reader asks by it, and the schemas, the tables of README and
/// KEYS.md and the templates of `new` are made from it.
struct KeyInfo {
  std::string_view name;
  Kind kind{};
  std::string_view doc;      ///< what it is for: a phrase, without a full stop
  std::string_view example;  ///< what may stand behind it, as TOML; of a table, its one line
  bool required = false;
  Audience audience = Audience::everyone;  ///< as model/for_everyone.h has it; of a table, of all
  std::span<const std::string_view> (*words)() = nullptr;  ///< those that may stand there
  bool other_words = false;                ///< what people call the same is read too
  std::string (*bounds)() = nullptr;       ///< "at least …", for people
  const Range<double>* numbers = nullptr;  ///< the same of a plain number
  const TableInfo* table = nullptr;        ///< of what stands in the braces or under the heading
};

/// What keys may stand in a table beside those that are listed, and what behind each of them.
enum class OpenKeys : std::uint8_t { none, names, places, blades };
struct OtherKeys {
  OpenKeys which = OpenKeys::none;
  const KeyInfo* value = nullptr;  ///< `name` is an example of such a key
};

/// A table of a file, or the file itself.
struct TableInfo {
  std::string_view name;  ///< of a file as messages have it: "a pet's file"; else a word of its own
  std::string_view doc;
  std::span<const KeyInfo* const> keys;  ///< in the order in which people best write them
  OtherKeys others = {};
};

// Keys with what their reader needs, so that none can be asked for as something else.

struct TextKey : KeyInfo {};
struct TextsKey : KeyInfo {};
struct FreeTextKey : KeyInfo {};
struct FreeTextsKey : KeyInfo {};
struct StaffTextKey : KeyInfo {};
struct FlagKey : KeyInfo {};
struct DateKey : KeyInfo {};
struct TimeKey : KeyInfo {};
struct NumberKey : KeyInfo {};
struct TableKey : KeyInfo {};
struct TablesKey : KeyInfo {};
struct LanguageKey : TextKey {};
struct PhotoKey : TextKey {};
struct ProductKey : KeyInfo {};
template <typename T>
struct QuantityKey : KeyInfo {
  const Range<T>* range = nullptr;
};
template <typename T>
struct ChoiceKey : KeyInfo {
  std::string_view noun;  ///< "kind of ears", for messages
  std::optional<T> (*parse)(std::string_view) = nullptr;
};

namespace make_key {
template <typename T>
constexpr Kind kind_of = Kind::number;
template <>
inline constexpr Kind kind_of<Length> = Kind::length;
template <>
inline constexpr Kind kind_of<Mass> = Kind::mass;
template <>
inline constexpr Kind kind_of<Volume> = Kind::volume;
template <>
inline constexpr Kind kind_of<std::chrono::seconds> = Kind::duration;
template <>
inline constexpr Kind kind_of<std::chrono::days> = Kind::days;
template <>
inline constexpr Kind kind_of<CalendarSpan> = Kind::days;

template <const auto& range>
std::string bounds_text() {
  return to_text(range);
}

/// A key of any kind: a name, an example and what it is for.
template <typename K = KeyInfo>
constexpr K of(Kind kind, std::string_view name, std::string_view example, std::string_view doc) {
  K key{};
  key.name = name;
  key.kind = kind;
  key.example = example;
  key.doc = doc;
  return key;
}

constexpr TextKey text(std::string_view name, std::string_view example, std::string_view doc) {
  return of<TextKey>(Kind::text, name, example, doc);
}
constexpr TextsKey texts(std::string_view name, std::string_view example, std::string_view doc) {
  return of<TextsKey>(Kind::texts, name, example, doc);
}
constexpr FreeTextKey free_text(std::string_view name, std::string_view example,
                                std::string_view doc) {
  return of<FreeTextKey>(Kind::free_text, name, example, doc);
}
constexpr StaffTextKey staff_text(std::string_view name, std::string_view example,
                                  std::string_view doc) {
  return of<StaffTextKey>(Kind::staff_text, name, example, doc);
}
constexpr FlagKey flag(std::string_view name, std::string_view example, std::string_view doc) {
  return of<FlagKey>(Kind::flag, name, example, doc);
}
constexpr DateKey date(std::string_view name, std::string_view example, std::string_view doc) {
  auto key = of<DateKey>(Kind::date, name, example, doc);
  key.bounds = bounds_text<bounds::day>;
  return key;
}
template <const Range<double>& range>
constexpr NumberKey number(Kind kind, std::string_view name, std::string_view example,
                           std::string_view doc) {
  auto key = of<NumberKey>(kind, name, example, doc);
  key.bounds = bounds_text<range>;
  key.numbers = &range;
  return key;
}
template <const auto& range>
constexpr auto quantity(std::string_view name, std::string_view example, std::string_view doc) {
  using T = std::remove_cvref_t<decltype(range.low)>;
  auto key = of<QuantityKey<T>>(kind_of<T>, name, example, doc);
  key.bounds = bounds_text<range>;
  key.range = &range;
  return key;
}
template <typename T>
constexpr ChoiceKey<T> choice(std::string_view name, std::string_view noun,
                              std::optional<T> (*parse)(std::string_view),
                              std::span<const std::string_view> (*words)(),
                              std::string_view example, std::string_view doc) {
  auto key = of<ChoiceKey<T>>(Kind::choice, name, example, doc);
  key.noun = noun;
  key.parse = parse;
  key.words = words;
  return key;
}
/// A list of them.
template <typename T>
constexpr ChoiceKey<T> several(ChoiceKey<T> key) {
  key.kind = Kind::choices;
  return key;
}
constexpr TableKey table(std::string_view name, const TableInfo& table, std::string_view example) {
  auto key = of<TableKey>(Kind::table, name, example, table.doc);
  key.table = &table;
  return key;
}
constexpr TablesKey tables(std::string_view name, const TableInfo& table,
                           std::string_view example) {
  auto key = of<TablesKey>(Kind::tables, name, example, table.doc);
  key.table = &table;
  return key;
}

/// It must be there.
template <typename K>
constexpr K must(K key) {
  key.required = true;
  return key;
}
/// Other words for the same are read too.
template <typename K>
constexpr K or_so_called(K key) {
  key.other_words = true;
  return key;
}
/// For the salon's people alone.
template <typename K>
constexpr K staff(K key) {
  key.audience = Audience::staff;
  return key;
}
}  // namespace make_key
}  // namespace furnish
