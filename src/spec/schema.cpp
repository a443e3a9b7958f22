#include "spec/schema.h"

#include <fmt/format.h>

#include <nlohmann/json.hpp>
#include <set>

#include "spec/trim_format.h"
#include "trade/region.h"
#include "trade/tools.h"

namespace furnish {
namespace {
using Json = nlohmann::ordered_json;

/// A number with a unit after it, whichever.
constexpr const char* quantity_pattern = "[0-9¼½¾⅓⅔⅛⅜⅝⅞].*[A-Za-z\"″]";

Json words_json(std::span<const std::string_view> words) {
  Json out = Json::array();
  for (const std::string_view word : words) out.push_back(word);
  return out;
}

std::vector<std::string_view> blade_words() {
  std::vector<std::string_view> out;
  for (const Blade& blade : blades()) out.push_back(blade.name);
  return out;
}

class SchemaMaker {
 public:
  Json file(const FileKind& kind) {
    Json out{{"$schema", "http://json-schema.org/draft-07/schema#"},
             {"title", fmt::format("furnish: {}", kind.title)}};
    out.update(table(*kind.table));
    Json definitions = Json::object();
    // Tables name further tables as they are written.
    for (std::size_t done = 0; done < named_.size(); ++done) {
      const TableInfo& one = *named_[done];
      definitions[std::string(one.name)] = table(one);
    }
    if (!definitions.empty()) out["definitions"] = std::move(definitions);
    return out;
  }

 private:
  Json table(const TableInfo& info) {
    Json out{{"description", info.doc}, {"type", "object"}};
    Json properties = Json::object(), required = Json::array();
    for (const KeyInfo* const key : info.keys) {
      properties[std::string(key->name)] = described(*key);
      if (key->required) required.push_back(key->name);
    }
    add_places(info, properties);
    if (!properties.empty()) out["properties"] = std::move(properties);
    if (!required.empty()) out["required"] = std::move(required);
    out["additionalProperties"] =
        info.others.value == nullptr ? Json(false) : value(*info.others.value);
    return out;
  }

  /// The words that may be keys beside those listed, so that editors offer them. Others may stand
  /// there too: "left hock", a name of the salon's own.
  void add_places(const TableInfo& info, Json& properties) {
    if (info.others.which == OpenKeys::places) {
      for (const std::string_view word : place_words()) {
        Json& place = properties[std::string(word)];
        if (place.is_null()) {
          place = described(*info.others.value);
        } else {  // "ears" of a visit: words, or a place
          place = {{"anyOf", Json::array({std::move(place), value(*info.others.value)})}};
        }
      }
    } else if (info.others.which == OpenKeys::blades) {
      for (const std::string_view word : blade_words()) {
        properties[std::string(word)] = described(*info.others.value);
      }
    }
  }

  Json described(const KeyInfo& key) {
    std::string doc(key.doc);
    if (key.bounds != nullptr) doc += fmt::format(" ({})", key.bounds());
    if (key.audience == Audience::staff) doc += "; for staff only";
    if (!key.example.empty()) doc += fmt::format(". Example: {}", key.example);
    Json shape = value(key);
    if (shape.contains("$ref")) shape = {{"allOf", Json::array({std::move(shape)})}};
    Json out{{"description", std::move(doc)}};
    out.update(shape);
    return out;
  }

  Json reference(const TableInfo& info) {
    if (std::ranges::find(named_, &info) == named_.end()) named_.push_back(&info);
    return {{"$ref", fmt::format("#/definitions/{}", info.name)}};
  }

  /// A word, or a list of nothing else.
  static Json word() {
    return {{"type", {"string", "array"}},
            {"minLength", 1},
            {"items", {{"type", "string"}}},
            {"maxItems", 1}};
  }
  /// A list, or the one thing that would be in it.
  static Json list(Json item) {
    return {
        {"anyOf",
         Json::array(
             {Json{{"type", "array"}, {"items", item}, {"maxItems", bounds::list_length}}, item})}};
  }
  /// One of these; other spellings of them are for the reader to tell.
  static Json one_of(std::span<const std::string_view> words, Json otherwise = word()) {
    return {{"anyOf", Json::array({Json{{"enum", words_json(words)}}, std::move(otherwise)})}};
  }
  /// One of these, with capitals or not.
  static Json exactly_one_of(std::span<const std::string_view> words) {
    std::string pattern = "^\\s*(";
    for (const std::string_view word : words) {
      if (word != words.front()) pattern += '|';
      for (const char c : word) {
        const bool letter = c >= 'a' && c <= 'z';
        pattern +=
            letter ? fmt::format("[{}{}]", static_cast<char>(c - 'a' + 'A'), c) : std::string(1, c);
      }
    }
    Json lax = word();
    lax["pattern"] = pattern + ")\\s*$";
    return one_of(words, std::move(lax));
  }
  static Json quantity() {
    Json out = word();
    out["pattern"] = quantity_pattern;
    return out;
  }
  static Json number(const KeyInfo& key, const char* type) {
    Json out{{"type", type}};
    if (key.numbers == nullptr) return out;
    out[key.numbers->at_low == Edge::open ? "exclusiveMinimum" : "minimum"] = key.numbers->low;
    out[key.numbers->at_high == Edge::open ? "exclusiveMaximum" : "maximum"] = key.numbers->high;
    return out;
  }
  static Json date() { return {{"type", "string"}, {"format", "date"}}; }
  static Json blade() {
    Json written = word();
    written["type"].push_back("integer");
    return one_of(blade_words(), std::move(written));
  }
  Json free_text(const TableInfo& languages) {
    return {{"anyOf", Json::array({word(), reference(languages)})}};
  }

  Json value(const KeyInfo& key);

  std::vector<const TableInfo*> named_;
};

Json SchemaMaker::value(const KeyInfo& key) {
  switch (key.kind) {
    case Kind::text:
    case Kind::language:
    case Kind::photo:
    case Kind::dilution:
      return word();
    case Kind::texts:
      return list(word());
    case Kind::free_text:
      return free_text(keys::languages::table);
    case Kind::staff_text:
      return free_text(keys::staff_languages::table);
    case Kind::free_texts:
      return list(free_text(keys::languages::table));
    case Kind::flag:
      return {
          {"type", {"boolean", "string"}},
          {"pattern", "^\\s*([tT][rR][uU][eE]|[fF][aA][lL][sS][eE]|[yY][eE][sS]|[nN][oO])\\s*$"}};
    case Kind::date:
      return date();
    case Kind::birth:
      return {{"anyOf", Json::array({date(), Json{{"type", "integer"}},
                                     Json{{"type", "string"},
                                          {"pattern", "^\\s*[0-9]{4}(-[0-9]{2})?\\s*$"}}})}};
    case Kind::time:
      return {{"type", "string"}, {"format", "time"}};
    case Kind::number:
      return number(key, "number");
    case Kind::whole:
      return number(key, "integer");
    case Kind::minutes:
      return {{"anyOf", Json::array({number(key, "integer"), quantity()})}};
    case Kind::choice:
      return key.other_words ? one_of(key.words()) : exactly_one_of(key.words());
    case Kind::choices:
      return list(key.other_words ? one_of(key.words()) : exactly_one_of(key.words()));
    case Kind::paper:
      return one_of(key.words());
    case Kind::length:
    case Kind::mass:
    case Kind::volume:
    case Kind::duration:
    case Kind::days:
      return quantity();
    case Kind::lengths:
      return list(quantity());
    case Kind::place:
      return one_of(place_words());
    case Kind::places:
      return list(one_of(place_words()));
    case Kind::blade:
      return blade();
    case Kind::blades:
      return list(blade());
    case Kind::product:
      return {{"anyOf", Json::array({word(), reference(*key.table)})}};
    case Kind::vaccination:
      return {{"anyOf", Json::array({date(), reference(*key.table)})}};
    case Kind::focus:
      return {{"type", "array"},
              {"items", {{"type", "number"}, {"minimum", 0}, {"maximum", 1}}},
              {"minItems", 2},
              {"maxItems", 2}};
    case Kind::seams:
      return {{"type", "array"}, {"items", {{"type", "array"}, {"minItems", 2}, {"maxItems", 2}}}};
    case Kind::table:
      return reference(*key.table);
    case Kind::tables:
      return {
          {"type", "array"}, {"items", reference(*key.table)}, {"maxItems", bounds::list_length}};
  }
  return {};
}
}  // namespace

std::string schema(const FileKind& kind) {
  return SchemaMaker().file(kind).dump(2) + "\n";
}
}  // namespace furnish
