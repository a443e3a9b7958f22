#include "sheet/roles.h"

#include <catch2/catch.hpp>

#include <algorithm>

namespace furnish {
namespace {
Length distance(const std::vector<TypeRole>& roles, Role role) {
  return std::ranges::find(roles, role, &TypeRole::role)->distance;
}
}  // namespace

TEST_CASE("every role has a distance on every paper, and is given once", "[roles]") {
  for (const Paper& paper : papers) {
    INFO(paper.name);
    const auto roles = hanging_roles(paper, {});
    CHECK(roles.size() == role_count);
    for (std::size_t i = 0; i < role_count; ++i) {
      CHECK(std::ranges::count(roles, static_cast<Role>(i), &TypeRole::role) == 1);
    }
    for (const TypeRole& role : roles) {
      CHECK(role.most_arc_minutes >= least_arc_minutes);
      // NUREG-0700 rev. 2, 1.3.1-4: running text at most 24 minutes of arc; a name may have more.
      if (role.role != Role::title) CHECK(role.most_arc_minutes <= 24);
    }
  }
}

TEST_CASE("what is needed from further away is set for further away", "[roles]") {
  for (const Paper& paper : papers) {
    INFO(paper.name);
    const auto roles = hanging_roles(paper, {});
    CHECK(distance(roles, Role::title) > distance(roles, Role::alert));
    CHECK(distance(roles, Role::alert) > distance(roles, Role::action));
    CHECK(distance(roles, Role::action) > distance(roles, Role::body));
    CHECK(distance(roles, Role::body) > distance(roles, Role::foot));
  }
  const auto a4 = hanging_roles(*parse_paper("A4"), {}), a5 = hanging_roles(*parse_paper("A5"), {}),
             a6 = hanging_roles(*parse_paper("A6"), {});
  for (const Role role : {Role::title, Role::alert}) {
    CHECK(distance(a4, role) > distance(a5, role));
    CHECK(distance(a5, role) > distance(a6, role));
  }
}

TEST_CASE("classes of paper go by width", "[roles]") {
  CHECK(paper_class(*parse_paper("A6")) == PaperClass::small);
  CHECK(paper_class(*parse_paper("4x6 in")) == PaperClass::small);
  CHECK(paper_class(*parse_paper("A5")) == PaperClass::middle);
  CHECK(paper_class(*parse_paper("half letter")) == PaperClass::middle);
  CHECK(paper_class(*parse_paper("5x8 in")) == PaperClass::middle);
  CHECK(paper_class(*parse_paper("A4")) == PaperClass::large);
  CHECK(paper_class(*parse_paper("letter")) == PaperClass::large);
}

TEST_CASE("a salon's own distances win", "[roles]") {
  ReadingDistances own;
  own.name = 5000_mm;
  own.body = 900_mm;
  const auto roles = hanging_roles(*parse_paper("A5"), own);
  CHECK(distance(roles, Role::title) == 5000_mm);
  CHECK(distance(roles, Role::body) == 900_mm);
  CHECK(distance(roles, Role::label) == 900_mm);
  CHECK(distance(roles, Role::alert) == 1000_mm);
}
}  // namespace furnish
