#include "base/csv.h"

#include <catch2/catch.hpp>
#include <string>
#include <vector>

using namespace furnish;

namespace {
using Rows = std::vector<std::vector<std::string>>;

Rows rows(std::string_view text, char separator = ',') {
  const CsvList list = parse_csv(text, separator);
  CHECK(list.faults.empty());
  Rows out;
  for (const CsvLine& line : list.lines) {
    CHECK(line.good);
    auto& row = out.emplace_back();
    for (const CsvCell& cell : line.cells) row.push_back(cell.text);
  }
  return out;
}
}  // namespace

// RFC 4180, section 2: the examples of its points 1 to 7, CRLF as it prints it.
TEST_CASE("a list as RFC 4180 has it", "[csv]") {
  const Rows two{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}};
  CHECK(rows("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n") == two);
  CHECK(rows("aaa,bbb,ccc\r\nzzz,yyy,xxx") == two);
  CHECK(rows("field_name,field_name,field_name\r\naaa,bbb,ccc\r\nzzz,yyy,xxx\r\n").size() == 3);
  CHECK(rows("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx") == two);
  CHECK(rows("\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx") ==
        Rows{{"aaa", "b\r\nbb", "ccc"}, {"zzz", "yyy", "xxx"}});
  CHECK(rows("\"aaa\",\"b\"\"bb\",\"ccc\"") == Rows{{"aaa", "b\"bb", "ccc"}});
  CHECK(rows("aaa,bbb , ccc") == Rows{{"aaa", "bbb ", " ccc"}});  // point 4: spaces are part of it
}

TEST_CASE("what lists have beyond it", "[csv]") {
  CHECK(rows("a;b\n\"c;d\";\"e\"\n", ';') == Rows{{"a", "b"}, {"c;d", "e"}});
  CHECK(rows("a\tb\nc\t\n", '\t') == Rows{{"a", "b"}, {"c", ""}});
  CHECK(rows("a, \"b, c\" ,d") == Rows{{"a", "b, c", "d"}});
  CHECK(rows("5\" tall,x") == Rows{{"5\" tall", "x"}});
  CHECK(rows("a,b\n\n ,\t\nc,d\n") == Rows{{"a", "b"}, {"c", "d"}});
  CHECK(rows("").empty());
}

TEST_CASE("a value knows where it stands", "[csv]") {
  const CsvList list = parse_csv("ab,\"c\nd\",e\nf,g", ',');
  REQUIRE(list.lines.size() == 2);
  CHECK(list.lines[0].cells[1].begin == 3);
  CHECK(list.lines[0].cells[1].end == 8);
  CHECK(list.lines[0].cells[2].begin == 9);
  CHECK(list.lines[1].begin == 11);
}

TEST_CASE("a quote that is not closed costs its own line alone", "[csv]") {
  const CsvList open = parse_csv("a,b\n\"c,d\ne,f\n", ',');
  REQUIRE(open.lines.size() == 3);
  CHECK(open.lines[0].good);
  CHECK_FALSE(open.lines[1].good);
  CHECK(open.lines[2].good);
  CHECK(open.lines[2].cells[1].text == "f");
  REQUIRE(open.faults.size() == 1);
  CHECK(open.faults[0].begin == 4);
  // It would go on to the next quote, lines below.
  const CsvList behind = parse_csv("\"c,d\r\ne,\"f\"\r\ng,h\r\n", ',');
  REQUIRE(behind.lines.size() == 3);
  CHECK_FALSE(behind.lines[0].good);
  CHECK(behind.lines[1].cells[1].text == "f");
  REQUIRE(behind.faults.size() == 1);
  CHECK(behind.faults[0].begin == 0);
  CHECK(behind.faults[0].at == 9);
}

TEST_CASE("what divides the values of a list is seen by its lines", "[csv]") {
  CHECK(csv_separator("name,owner\nRex,\"A; B; C\"\n") == ',');
  CHECK(csv_separator("name;owner\nRex;A, B\n") == ';');
  CHECK(csv_separator("name\towner, first\nRex\tA\n") == '\t');
  CHECK(csv_separator("name;weight\nRex;4,6\nMax;5,1\nFlo;7,2\n") == ';');
  CHECK(csv_separator("name\nRex\n") == ',');
}
