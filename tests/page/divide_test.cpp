#include <catch2/catch.hpp>

#include "lines_request.h"
#include "support.h"

using namespace furnish;
using test::lines_request;

namespace {
/// Lines as the pieces of a division, numbered from `first`.
Division::Pieces pieces_of(int first, int count) {
  return [=] {
    std::vector<BlockPtr> out;
    for (int i = 0; i < count; ++i) {
      out.push_back(paragraph("piece " + std::to_string(first + i), TextStyle{}, {"piece", {}}));
    }
    return out;
  };
}
/// Too much for one page; with a foot that counts.
PageRequest divided_request() {
  PageRequest request = lines_request(60);
  request.foot_of = [](int side, int sides) {
    return paragraph(std::to_string(side) + "/" + std::to_string(sides), {.role = Role::foot});
  };
  request.again = paragraph("again");
  return request;
}
std::string text_of_sides(const ComposedPage& page) {
  std::string out;
  for (const Frame& side : sides(page)) out += test::text_of(side) + " | ";
  return out;
}
}  // namespace

TEST_CASE("a division that asks for room is taken only where its front has it", "[page][divide]") {
  test::Desk desk;
  PageRequest request = divided_request();
  const auto chosen = [&] {
    const auto page = compose(request, desk.shaper, desk.sink);
    REQUIRE(page);
    return page->layout;
  };
  Division roomy{"roomy", pieces_of(1, 2), {pieces_of(3, 2)}},
      full{"full", pieces_of(1, 4), {pieces_of(5, 1)}};
  roomy.least_step = request.steps;
  request.divisions = {roomy, full};
  CHECK(chosen() == "roomy");
  request.divisions.front().front = pieces_of(1, 50);
  CHECK(chosen() == "full");
  // Nor where the rest does not stand on one side.
  request.divisions.front().front = pieces_of(1, 2);
  request.divisions.front().rest = {pieces_of(3, 60)};
  CHECK(chosen() == "full");
  CHECK_FALSE(desk.sink.has_errors());
}

TEST_CASE("a front that several divisions ask for is made once", "[page][divide]") {
  test::Desk desk;
  PageRequest request = divided_request();
  int made = 0;
  const auto front = [&] {
    ++made;
    return pieces_of(1, 4)();
  };
  Division roomy{"front", front, {pieces_of(5, 60)}}, any{"front", front, {pieces_of(5, 1)}};
  roomy.least_step = 0;  // its rest does not stand on one side
  request.divisions = {roomy, any};
  const auto fitted = fit(request, desk.shaper, desk.sink);
  REQUIRE(fitted);
  CHECK(made == 1);
  CHECK(fitted->sides.size() == 2);
  const auto page = compose(request, desk.shaper, desk.sink);
  REQUIRE(page);
  CHECK(text_of_sides(set(request, *fitted, desk.shaper)) == text_of_sides(*page));
  CHECK(page->step == fitted->step);
}

TEST_CASE("the first division whose front fits is taken, and the rest goes over",
          "[page][divide]") {
  test::Desk desk;
  PageRequest request = divided_request();
  request.divisions = {{"too much", pieces_of(1, 50), {pieces_of(51, 1)}},
                       {"nothing over", pieces_of(1, 2), {pieces_of(3, 0)}},
                       {"two", pieces_of(1, 2), {pieces_of(3, 2)}},
                       {"never tried", pieces_of(1, 1), {pieces_of(2, 3)}}};
  const auto page = compose(request, desk.shaper, desk.sink);
  REQUIRE(page);
  CHECK_FALSE(desk.sink.has_errors());
  CHECK(page->layout == "two");
  CHECK(text_of_sides(*page) == "piece 1 piece 2 1/2 | again piece 3 piece 4 2/2 | ");
  for (const Frame& side : sides(*page)) {
    CHECK(side.size == request.size);
    CHECK(test::tags_balanced(side));
  }
}

TEST_CASE("what one side does not hold flows, and no piece is cut or lost", "[page][divide]") {
  test::Desk desk;
  PageRequest request = divided_request();
  constexpr int count = 70;
  request.divisions = {{"front", pieces_of(1, 80), {pieces_of(81, 1)}},
                       {"flowing", {}, {pieces_of(1, count)}}};
  const auto page = compose(request, desk.shaper, desk.sink);
  REQUIRE(page);
  CHECK(page->layout == "flowing");
  CHECK(page->step == 0);
  CHECK(page->more.size() >= 2);
  std::string expected;
  for (int i = 1; i <= count; ++i) expected += "piece " + std::to_string(i) + " ";
  std::string said;
  for (const Frame& side : sides(*page)) {
    for (const TextMark* mark : test::marks_of<TextMark>(side)) {
      if (mark->line->text().starts_with("piece")) said += mark->line->text() + " ";
    }
  }
  CHECK(said == expected);
}

TEST_CASE("only a piece that is taller than a whole side is refused", "[page][divide]") {
  test::Desk desk;
  PageRequest request = divided_request();
  request.divisions = {
      {"flowing", {}, {[] { return std::vector<BlockPtr>{lines_request(60).layouts[0].make()}; }}}};
  CHECK_FALSE(compose(request, desk.shaper, desk.sink));
  REQUIRE(desk.sink.all().size() == 1);
  CHECK(desk.sink.all()[0].code == "page-overflow");
}
