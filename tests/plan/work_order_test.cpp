#include "plan/work_order.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <numeric>
#include <random>
#include <set>

#include "plan/allocations.h"
#include "plan/changes.h"

using namespace furnish;

namespace {
std::vector<WorkNode> random_nodes(std::mt19937& random, int count, int tools, int layers,
                                   int stances) {
  std::set<std::tuple<int, int, int>> seen;
  std::vector<WorkNode> out;
  const auto some = [&](int of) { return static_cast<int>(random() % static_cast<unsigned>(of)); };
  for (int tries = 0; tries < 500 && static_cast<int>(out.size()) < count; ++tries) {
    const int layer = some(layers), tool = some(tools), stance = some(stances);
    if (seen.insert({layer, tool, stance}).second) {
      out.push_back({layer, tool, static_cast<Stance>(stance)});
    }
  }
  return out;
}

bool keeps_layers(const std::vector<WorkNode>& nodes, const std::vector<std::size_t>& order) {
  return std::ranges::is_sorted(order, {}, [&](std::size_t i) { return nodes[i].layer; });
}

/// From standing with no tool to standing at the end.
Changes cost_of(std::span<const WorkNode> nodes, std::span<const std::size_t> order) {
  Changes out;
  int tool = -1;
  Stance stance = Stance::standing;
  for (const std::size_t i : order) {
    out.tool += nodes[i].tool != tool ? 1 : 0;
    out.stance += nodes[i].stance != stance ? 1 : 0;
    tool = nodes[i].tool;
    stance = nodes[i].stance;
  }
  out.stance += stance != Stance::standing ? 1 : 0;
  return out;
}
Changes least_by_trying_all(const std::vector<WorkNode>& nodes) {
  std::vector<std::size_t> order(nodes.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  Changes least{1000, 1000};
  do {
    if (keeps_layers(nodes, order)) least = std::min(least, cost_of(nodes, order));
  } while (std::ranges::next_permutation(order).found);
  return least;
}
}  // namespace

TEST_CASE("no order has fewer changes: every order of small cases is tried") {
  std::mt19937 random(11);
  int cases = 0;
  for (int round = 0; round < 900; ++round) {
    const int count = 1 + static_cast<int>(random() % 7);
    const int tools = 1 + static_cast<int>(random() % 4);
    const int layers = 1 + static_cast<int>(random() % 3);
    const auto nodes = random_nodes(random, count, tools, layers, 4);
    const auto order = best_order(nodes);
    REQUIRE(order.size() == nodes.size());
    CHECK(std::set(order.begin(), order.end()).size() == nodes.size());
    CHECK(keeps_layers(nodes, order));
    const Changes least = least_by_trying_all(nodes), got = cost_of(nodes, order);
    CHECK(got == least);
    ++cases;
  }
  CHECK(cases == 900);
}

TEST_CASE("a tool that both neighbours use is worth putting down and taking up again") {
  // Layer 1: tool 0 standing and from behind, tool 1 standing. Tool 0 comes before and goes on
  // after.
  const std::vector<WorkNode> nodes{{0, 0, Stance::from_behind},
                                    {1, 0, Stance::from_behind},
                                    {1, 1, Stance::standing},
                                    {1, 0, Stance::facing},
                                    {2, 0, Stance::facing}};
  CHECK(cost_of(nodes, best_order(nodes)) == least_by_trying_all(nodes));
}

TEST_CASE("eight of a layer, every order tried") {
  std::mt19937 random(5);
  for (int round = 0; round < 6; ++round) {
    const auto nodes = random_nodes(random, 8, 5, 1, 5);
    CHECK(cost_of(nodes, best_order(nodes)) == least_by_trying_all(nodes));
  }
}

// What is alike in layer, tool and position is given as one node; doing it apart never saves a
// change.
TEST_CASE("work that is alike is best done together: every order of it apart is tried") {
  std::mt19937 random(23);
  for (int round = 0; round < 300; ++round) {
    const auto together = random_nodes(random, 2 + round % 4, 3, 2, 3);
    std::vector<WorkNode> apart = together;
    while (apart.size() < 7) apart.push_back(together[random() % together.size()]);
    CHECK(cost_of(together, best_order(together)) == least_by_trying_all(apart));
  }
}

TEST_CASE("nothing to do, and the same input twice") {
  CHECK(best_order({}).empty());
  std::mt19937 random(3);
  const auto nodes = random_nodes(random, 24, 6, 5, 5);
  CHECK(best_order(nodes) == best_order(nodes));
}

TEST_CASE("the hardest trims there can be are ordered within bounds") {
  // 38 places is every region with both sides apart; tools as varied as a trim can have them.
  std::mt19937 random(17);
  std::size_t most = 0;
  for (int round = 0; round < 60; ++round) {
    const int tools = 3 + round % 24;
    const auto nodes = random_nodes(random, 38, tools, 5, 5);
    const std::size_t before = made::allocations();
    const auto order = best_order(nodes);
    most = std::max(most, made::allocations() - before);
    CHECK(order.size() == nodes.size());
  }
  CAPTURE(most);
  // One for each state that the search reached, each of which takes less than a microsecond in
  // release: the bound of the design is 20 ms.
  CHECK(most < 20'000);
}
