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
}  // namespace furnish
