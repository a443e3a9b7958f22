#include "sheet/who.h"

#include <catch2/catch.hpp>

#include "sheet/rows.h"

namespace furnish {

TEST_CASE("a weight stands with its day, unless that is the page's", "[card]") {
  const auto facts = [](const std::string& weighed) {
    test::Desk table =
        test::desk("[pet]\nname = \"Rex\"\nsex = \"male\"\nweight = \"4.6 kg\"\n" + weighed,
                   "[salon]\nlanguage = \"en-GB\"\n");
    const test::Kennel kennel = table.kennel();
    const SheetInput input = table.input(kennel);
    return test::without_space(test::text_of(facts_text({input, table.voice()})));
  };
  CHECK(facts("") == "male·4.6kg(undated)");
  CHECK(facts("weighed = 2026-09-29\n") == "male·4.6kg(29Sept)");
  CHECK(facts("weighed = 2025-09-29\n") == "male·4.6kg(29Sept2025)");
  CHECK(facts("weighed = 2026-11-24\n") == "male·4.6kg");
}

TEST_CASE("an age of which a year or a month of birth is known is about so much", "[card]") {
  const auto facts = [](const std::string& born, const std::string& language = "en") {
    test::Desk table = test::desk("[pet]\nname = \"Rex\"\nborn = " + born + "\n",
                                  "[salon]\nlanguage = \"" + language + "\"\n");
    return test::text_of(facts_text({table.input(table.kennel()), table.voice()}));
  };
  // Today is 24 November 2026.
  CHECK(facts("2019") == "about 7\u00A0years");
  CHECK(facts("\"2019-03\"") == "about 7\u00A0years");
  CHECK(facts("\"2019-12\"") == "about 6\u00A0years");
  CHECK(facts("2025") == "about 1\u00A0year");
  CHECK(facts("2026") == "about 5\u00A0months");
  CHECK(facts("\"2026-10\"") == "about 5\u00A0weeks");
  CHECK(facts("2019-03-14") == "7\u00A0years");
  CHECK(facts("2027") == "");
  for (const auto& [language, said] : {std::pair<std::string, std::string>{"de", "etwa 7"},
                                       {"es", "alrededor de 7"},
                                       {"fr", "environ 7"},
                                       {"pt", "cerca de 7"},
                                       {"vi", "khoảng 7"},
                                       {"ar", "تقريبًا"}}) {
    CHECK(facts("2019", language).find(said) != std::string::npos);
  }
}
}  // namespace furnish
