#include "trade/stock.h"

#include <catch2/catch.hpp>

#include <set>
#include <string>

namespace furnish::test {

TEST_CASE("there are phrases of every kind, none twice", "[stock]") {
  std::set<std::string> keys;
  std::set<StockKind> kinds;
  for (const StockPhrase& row : stock_phrases()) {
    INFO(row.words);
    CHECK(keys.insert(stock_key(row.words)).second);
    CHECK_FALSE(row.words.ends_with('.'));
    CHECK(find_stock(row.words) == &row);
    kinds.insert(row.kind);
  }
  CHECK(keys.size() >= 80);
  CHECK(kinds.size() == 9);
}

TEST_CASE("a phrase is known however it begins and ends", "[stock]") {
  for (const char* text : {"vet this week", "Vet this week.", " vet this week "}) {
    INFO(text);
    REQUIRE(find_stock(text));
    CHECK(find_stock(text)->words == "vet this week");
  }
  CHECK(find_stock("go on with the vet’s plan") == find_stock("go on with the vet's plan"));
  CHECK_FALSE(find_stock("vet next week"));
  CHECK_FALSE(find_stock(""));
  CHECK(same_phrase("Bulto.", "bulto"));
  CHECK_FALSE(same_phrase("bulto", "bultos"));
}

TEST_CASE("a near text is told which phrase it nearly is", "[stock]") {
  CHECK(nearest_stock("lump, pea sized") == "lump, pea-sized");
  CHECK(nearest_stock("vet this wek") == "vet this week");
  CHECK(nearest_stock("Lump, pea-sized, under the skin") == "lump, pea-sized");
  CHECK_FALSE(nearest_stock("brings the ball"));
  CHECK_FALSE(nearest_stock("jam"));
  CHECK_FALSE(nearest_stock(""));
}

TEST_CASE("keys are plain", "[stock]") {
  CHECK(stock_key("lump, pea-sized") == "lump-pea-sized");
  CHECK(stock_key("vet's order") == "vets-order");
}
}  // namespace furnish::test
