#include "sheet/terms.h"

#include <algorithm>
#include <array>

#include "plan/cautions.h"
#include "sheet/figure_text.h"
#include "sheet/told_words.h"
#include "trade/finish.h"
#include "trade/mats.h"
#include "trade/stock.h"
#include "trade/vet_words.h"

namespace furnish {
namespace {
/// "heart disease" as a key: "heart-disease".
std::string hyphened(std::string_view words) {
  std::string out(words);
  std::erase(out, ',');
  std::ranges::replace(out, ' ', '-');
  return out;
}

/// "place", and "owner-place" for everyone.
std::string section_for(Audience reader, std::string_view section) {
  return (reader == Audience::everyone ? "owner-" : "") + std::string(section);
}

std::string finish_key(const FinishInfo& finish) {
  return std::string(key(finish.part)) + "-" + hyphened(finish.words);
}

constexpr std::array<std::string_view, 10> unit_keys{"mm", "in", "kg",  "lb", "oz",
                                                     "ml", "fl", "min", "h",  "s"};
}  // namespace

std::string comma(const Words& words) {
  return words.say(Phrase::comma) + " ";
}
std::string semicolon(const Words& words) {
  return words.say(Phrase::semicolon) + " ";
}
std::string colon(const Words& words) {
  return words.say(Phrase::colon) + " ";
}

std::string place_name(Place place, const Words& words, Audience reader) {
  const RegionInfo& row = info(place.region);
  const std::string section = section_for(reader, "place");
  if (place.side == Side::both) return words.term(section, row.key);
  const std::string side(to_text(place.side));
  if (row.paired) return words.term(section, side + "-" + hyphened(row.one));
  return words.term(section, side + "-of", {words.term(section, row.key)});
}
std::string group_name(Group group, const Words& words, Audience reader) {
  return words.term(section_for(reader, "group"), info(group).key);
}
std::string coat_name(Coat coat, const Words& words) {
  return words.term("coat", key(coat));
}
std::string condition_name(Condition condition, const Words& words) {
  return words.term("condition", hyphened(to_text(condition)));
}
std::string mat_grade_text(int grade, const Words& words) {
  return words.term("mats", "grade-" + std::to_string(grade));
}

std::string finish_part_name(FinishPart part, const Words& words) {
  constexpr std::array<Phrase, finish_part_count> names{Phrase::finish_ears, Phrase::finish_tail,
                                                        Phrase::finish_feet, Phrase::finish_nails,
                                                        Phrase::finish_extras};
  return words.say(names.at(static_cast<std::size_t>(part)));
}

std::string finish_text(FinishPart part, std::string_view written, const Words& words,
                        Audience reader) {
  const FinishInfo* const known = find_finish(part, written);
  const bool whole = known != nullptr && known->words == written;
  return whole ? words.term(section_for(reader, "finish"), finish_key(*known))
               : words.written(written);
}

std::string how_text(Method method, const Words& words) {
  return words.term("how", key(method));
}

std::vector<std::string> term_keys() {
  std::vector<std::string> out;
  const auto add = [&](std::string_view section, std::string_view key) {
    out.push_back(std::string(section) + "." + std::string(key));
  };
  for (const Audience reader : {Audience::staff, Audience::everyone}) {
    const std::string place = section_for(reader, "place");
    for (const RegionInfo& row : regions()) {
      add(place, row.key);
      if (!row.paired) continue;
      for (const Side side : {Side::left, Side::right}) {
        add(place, std::string(to_text(side)) + "-" + hyphened(row.one));
      }
    }
    add(place, "left-of");
    add(place, "right-of");
    for (const GroupInfo& row : groups()) add(section_for(reader, "group"), row.key);
    for (const FinishInfo& row : finishes()) add(section_for(reader, "finish"), finish_key(row));
  }
  for (const std::string_view word : coat_words()) add("coat", word);
  for (const std::string_view word : condition_words()) add("condition", hyphened(word));
  for (std::size_t i = 0; i < vet_task_count; ++i) {
    add("vet", key(static_cast<VetTask>(i)));
  }
  for (int grade = 1; grade <= worst_mats; ++grade) add("mats", "grade-" + std::to_string(grade));
  for (const std::string& key : caution_keys()) add("rule", key);
  for (std::size_t i = 0; i < method_count; ++i) add("how", key(static_cast<Method>(i)));
  for (const std::string_view word : figure_keys()) add("figure", word);
  for (const std::string_view word : unit_keys) add("unit", word);
  for (const StockPhrase& row : stock_phrases()) add("stock", stock_key(row.words));
  for (const std::string_view word : told_word_keys()) add("desk", word);
  return out;
}
}  // namespace furnish
