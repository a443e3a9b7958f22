#include "sheet/terms.h"

#include <algorithm>
#include <array>
#include <map>

#include "base/text.h"
#include "sheet/shown.h"
#include "sheet/trim_lines.h"
#include "trade/finish.h"
#include "trade/mats.h"
#include "trade/method.h"
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

constexpr std::array<std::string_view, 4> finish_parts{"ears", "tail", "feet", "nails"};

std::string finish_key(const FinishInfo& finish) {
  return std::string(finish_parts[static_cast<std::size_t>(finish.part)]) + "-" +
         hyphened(finish.words);
}

/// Lines for a newer groomer by their English; of one line that two have, the first key.
const std::map<std::string_view, std::string>& how_keys() {
  static const auto keys = [] {
    std::map<std::string_view, std::string> out;
    for (std::size_t i = 0; i < method_count; ++i) {
      const auto method = static_cast<Method>(i);
      out.emplace(how(method), key(method));
    }
    for (const FinishInfo& finish : finishes()) out.emplace(finish.how, finish_key(finish));
    return out;
  }();
  return keys;
}

/// Rules that never say just what their row in the table does.
constexpr std::array<std::string_view, 2> never_plain{"vaccination", "dryer-face"};
/// What rules say besides.
constexpr std::array<std::string_view, 13> rule_variants{
    "vaccination-missing",      "vaccination-expired", "vaccination-not-yet",
    "dryer-face-head",          "dryer-face-ears",     "mat-wound-past",
    "mat-wound-past-do",        "skip-tooth-twin-do",  "dwell-short-no-label-do",
    "thin-skin-mats",           "thin-skin-mats-do",   "against-handling-dryer",
    "against-handling-dryer-do"};
constexpr std::array<std::string_view, 10> unit_keys{"mm", "in", "kg",  "lb", "oz",
                                                     "ml", "fl", "min", "h",  "s"};
constexpr std::array<std::string_view, 25> figure_keys{
    "from-left",       "from-right", "coat-left",     "part",          "part-tool",
    "natural",         "no-tool",    "take-care",     "finding",       "ears-prick",
    "ears-semi-prick", "ears-drop",  "ears-button",   "ears-rose",     "tail-plume",
    "tail-sickle",     "tail-sabre", "tail-otter",    "tail-docked",   "tool-brush",
    "tool-blade",      "tool-comb",  "tool-straight", "tool-thinning", "tool-strip"};

WordArgument said(const CautionFact& fact, const SheetVoice& voice) {
  struct Say {
    const SheetVoice& voice;
    WordArgument operator()(const std::vector<Place>& places) const {
      return places_text(places, voice);
    }
    WordArgument operator()(Date day) const { return voice.locale.long_date(day); }
    WordArgument operator()(Mass mass) const { return shown(mass, voice); }
    WordArgument operator()(std::chrono::seconds time) const { return shown(time, voice); }
    WordArgument operator()(Condition condition) const {
      return condition_name(condition, voice.words);
    }
    WordArgument operator()(const Blade* blade) const { return std::string(blade->name); }
    WordArgument operator()(int number) const { return number; }
    WordArgument operator()(double number) const { return shown_number(number, voice); }
    WordArgument operator()(VetTask task) const {
      return voice.words.term("vet", hyphened(to_text(task)));
    }
    WordArgument operator()(const std::string& words) const { return voice.words.written(words); }
  };
  return std::visit(Say{voice}, fact);
}
}  // namespace

std::string comma(const Words& words) {
  return words.say(Phrase::comma) + " ";
}
std::string semicolon(const Words& words) {
  return words.say(Phrase::semicolon) + " ";
}

std::string place_name(Place place, const Words& words) {
  const RegionInfo& row = info(place.region);
  if (place.side == Side::both) return words.term("place", row.key);
  const std::string side(to_text(place.side));
  if (row.paired) return words.term("place", side + "-" + hyphened(row.one));
  return words.term("place", side + "-of", {words.term("place", row.key)});
}
std::string group_name(Group group, const Words& words) {
  return words.term("group", info(group).key);
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

std::string finish_text(std::string_view part, std::string_view written, const Words& words) {
  const auto* const known = std::ranges::find(finish_parts, part);
  if (known != finish_parts.end()) {
    const FinishInfo* const finish =
        find_finish(static_cast<FinishPart>(known - finish_parts.begin()), written);
    if (finish != nullptr && finish->words == written) {
      return words.term("finish", finish_key(*finish));
    }
  }
  return words.written(written);
}

std::string how_text(std::string_view english, const Words& words) {
  const auto found = how_keys().find(english);
  return found == how_keys().end() ? words.written(english) : words.term("how", found->second);
}

std::string caution_text(const CautionText& text, const SheetVoice& voice) {
  std::vector<WordArgument> arguments;
  for (const CautionFact& fact : text.facts) arguments.push_back(said(fact, voice));
  return voice.words.term("rule", text.key, arguments);
}

std::vector<std::string> term_keys() {
  std::vector<std::string> out;
  const auto add = [&](std::string_view section, std::string_view key) {
    out.push_back(std::string(section) + "." + std::string(key));
  };
  for (const RegionInfo& row : regions()) {
    add("place", row.key);
    if (!row.paired) continue;
    for (const Side side : {Side::left, Side::right}) {
      add("place", std::string(to_text(side)) + "-" + hyphened(row.one));
    }
  }
  add("place", "left-of");
  add("place", "right-of");
  for (const GroupInfo& row : groups()) add("group", row.key);
  for (const std::string_view word : coat_words()) add("coat", word);
  for (const std::string_view word : condition_words()) add("condition", hyphened(word));
  for (std::size_t i = 0; i < vet_task_count; ++i) {
    add("vet", hyphened(to_text(static_cast<VetTask>(i))));
  }
  for (int grade = 1; grade <= worst_mats; ++grade) add("mats", "grade-" + std::to_string(grade));
  for (const SafetyRule& row : safety_rules()) {
    if (std::ranges::find(never_plain, row.key) == never_plain.end()) add("rule", row.key);
    add("rule", std::string(row.key) + "-do");
  }
  for (const std::string_view word : rule_variants) add("rule", word);
  for (const FinishInfo& row : finishes()) add("finish", finish_key(row));
  for (const auto& [english, key] : how_keys()) add("how", key);
  for (const std::string_view word : figure_keys) add("figure", word);
  for (const std::string_view word : unit_keys) add("unit", word);
  return out;
}
}  // namespace furnish
