#pragma once

#include <catch2/catch.hpp>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "base/diagnostic.h"
#include "plan/plan.h"

/// Small inputs for tests of the plan, made in a line.
namespace furnish::made {

Date day(std::string_view iso);
/// A place in the test's only file, so that what a caution points at can be told apart.
SourceSpan line(std::uint32_t number);
Place at(std::string_view words);
Tool blade(std::string_view name);
Tool comb(Length, std::string_view base = "30");
Tool shears(Shears);
TrimPart part(std::string_view place, Tool, Lay = Lay::against, std::optional<Length> leave = {},
              std::uint32_t line_number = 1);

Salon salon();  ///< metric, no kit
Kit kit(std::vector<std::string_view> blades, std::vector<Length> combs,
        std::vector<Shears> shears = {Shears::straight, Shears::thinning});
Pet pet(std::optional<Coat> = std::nullopt);
Visit visit(std::string_view iso);
RegionState state(std::string_view place, std::optional<Length> length,
                  std::optional<int> mats = {});
Alert avoiding(std::string_view place);
ProductUse product(std::string_view name, std::optional<Dilution> = Dilution{1, 11});

/// A caution's sentence by its data: "mat-wound-past: left hock; 2026-11-24".
std::string said(const CautionText&);
/// Says plans that way, and methods by their keys.
PlanWords words();

/// make_plan() with what it reports.
struct Made {
  Plan plan;
  DiagnosticSink sink;
  bool says(std::string_view code) const;
  const Caution* caution(RuleId) const;  ///< among those of its salience; null if it does not fire
  std::size_t count(RuleId) const;
  const std::vector<Caution>& with(RuleId) const;
};
/// Fails the test if a caution's sentence has none of caution_keys().
Made plan(const Salon&, const Pet&, const std::vector<Visit>& = {},
          std::string_view today = "2026-11-24", const std::vector<Booking>& = {});
Booking booking(std::string_view iso, std::chrono::minutes at = std::chrono::hours(9));
}  // namespace furnish::made
