#include "trade/safety.h"

#include <catch2/catch.hpp>
#include <set>

using namespace furnish;

TEST_CASE("signal words in the order of their gravity") {
  CHECK(parse_signal("danger") == Signal::danger);
  CHECK(Signal::danger < Signal::warning);
  CHECK(Signal::warning < Signal::caution);
  CHECK(Signal::caution < Signal::notice);
  for (const std::string_view word : signal_words()) CHECK(to_text(*parse_signal(word)) == word);
  CHECK_FALSE(parse_signal("alarm"));
}

TEST_CASE("every rule is complete, once, and says how sure it is") {
  std::set<std::string_view> keys;
  for (const SafetyRule& row : safety_rules()) {
    INFO(row.key);
    CHECK(keys.insert(row.key).second);
    CHECK(parse_rule(row.key) == row.id);
    CHECK(&rule(row.id) == &row);
    for (const std::string_view words : {row.when, row.source}) {
      CHECK_FALSE(words.empty());
      CHECK_FALSE(words.ends_with('.'));
    }
  }
  CHECK(keys.size() == rule_count);
  CHECK_FALSE(parse_rule("no-such-rule"));
}

// The signal words are this program's choice, after the meanings of ANSI Z535.4.
TEST_CASE("what is gravest") {
  CHECK(rule(RuleId::avoid_region).signal == Signal::danger);
  CHECK(rule(RuleId::mat_wound).signal == Signal::danger);
  CHECK(rule(RuleId::dryer_heat).signal == Signal::warning);
  CHECK(rule(RuleId::allergen).signal == Signal::warning);
  CHECK(rule(RuleId::ear_edge).signal == Signal::caution);
  CHECK(rule(RuleId::weight_loss).signal == Signal::notice);
}
