#include "trade/phrases.h"

#include <catch2/catch.hpp>

#include "trade/vet_words.h"

using namespace furnish;

TEST_CASE("a negation takes back the rest of its clause") {
  CHECK(affirms("force dryer, not on the head", "force dryer"));
  CHECK(denies("force dryer, not on the head", "head"));
  CHECK(denies("no force or cage dryer", "cage dryer"));
  CHECK(affirms("no cage dryer but force dryer", "force dryer"));
  CHECK(affirms("never the cage dryer, then force dryer", "force dryer"));
  CHECK(denies("don't use the cage dryer", "cage dryer"));
  CHECK(denies("don’t use the cage dryer", "cage dryer"));
  CHECK(denies("towel instead of the force dryer", "force dryer"));
  CHECK(affirms("towel instead of the force dryer", "towel"));
}

TEST_CASE("at the end of a clause, or alone, it takes back what went before") {
  CHECK(denies("cage dryer: never", "cage dryer"));
  CHECK(denies("cage dryer never", "cage dryer"));
  CHECK(denies("force dryer not used", "force dryer"));
  CHECK(denies("cage dryer forbidden", "cage dryer"));
  CHECK(affirms("towel, cage dryer: never", "towel"));
}

TEST_CASE("a point ends a sentence before a space and at the end") {
  using Sentences = std::vector<std::string_view>;
  CHECK(sentences_in("Bit at the foot. Two people! Why?  Unclear") ==
        Sentences{"Bit at the foot", "Two people", "Why", "Unclear"});
  CHECK(sentences_in("left at 2.5 mm; rest") == Sentences{"left at 2.5 mm", "rest"});
  CHECK(sentences_in(" . ").empty());
}

TEST_CASE("in doubt a word stands") {
  CHECK(affirms("no cage and force dryer", "force dryer"));
  CHECK(affirms("no cage, force dryer", "force dryer"));
  CHECK_FALSE(affirms("", "force dryer"));
  CHECK_FALSE(affirms("force dryer", ""));
}

TEST_CASE("whole words, their plural, and hyphens as spaces") {
  CHECK(affirms("express the anal sacs", "anal sac"));
  CHECK(affirms("force-dryer", "force dryer"));
  CHECK_FALSE(affirms("enforce dryers", "force dryer"));
  CHECK_FALSE(affirms("force the dryer", "force dryer"));
}

TEST_CASE("mentions: the beginning of a word") {
  CHECK(mentions("colloidal oatmeal", "oat"));
  CHECK(mentions("no oat", "oat"));  // an allergen counts even so
  CHECK_FALSE(mentions("goat milk", "oat"));
  CHECK(mentions("Tea-tree oil", "tea tree"));
  CHECK_FALSE(mentions("tea", "tea tree"));
}

TEST_CASE("text in other scripts is left alone") {
  CHECK(affirms("сушить полотенцем", "полотенцем"));
  CHECK(read_clauses("日本、語").size() == 1);
}

TEST_CASE("veterinarians' work in free words") {
  CHECK(veterinary_task("anal glands if needed") == VetTask::anal_sacs);
  CHECK(veterinary_task("Ear drops, as left") == VetTask::ear_treatment);
  CHECK(veterinary_task("teeth scaling") == VetTask::teeth);
  CHECK(veterinary_task("cut out mats") == VetTask::mats_off);
  CHECK(veterinary_task("give his medication at noon") == VetTask::medication);
  CHECK_FALSE(veterinary_task("no anal glands"));
  CHECK_FALSE(veterinary_task("brush teeth"));
  CHECK_FALSE(veterinary_task("comb out mats"));
}
