#include "plan/least_squares.h"

#include <array>
#include <catch2/catch.hpp>
#include <cmath>

using namespace furnish;

// NIST Statistical Reference Datasets, linear least squares, NoInt1 (line through the origin;
// certified values to fifteen digits).
TEST_CASE("least squares through the origin reproduces NIST's NoInt1") {
  std::array<double, 11> x{}, y{};
  for (std::size_t i = 0; i < x.size(); ++i) {
    x[i] = 60 + static_cast<double>(i);
    y[i] = 130 + static_cast<double>(i);
  }
  const OriginFit fit = fit_through_origin(x, y);
  CHECK(fit.slope == Approx(2.07438016528926).epsilon(1e-13));
  CHECK(fit.slope_sd == Approx(0.0165289256198347).epsilon(1e-12));
  CHECK(fit.residual_sd == Approx(3.56753034006338).epsilon(1e-12));
  CHECK(fit.degrees_of_freedom == 10);
}

// The same source, NoInt2.
TEST_CASE("least squares through the origin reproduces NIST's NoInt2") {
  const std::array<double, 3> x{4, 5, 6}, y{3, 4, 4};
  const OriginFit fit = fit_through_origin(x, y);
  CHECK(fit.slope == Approx(0.727272727272727).epsilon(1e-13));
  CHECK(fit.slope_sd == Approx(0.0420827318078432).epsilon(1e-12));
  CHECK(fit.residual_sd == Approx(0.369274472937998).epsilon(1e-12));
}

TEST_CASE("a single point is its own slope, without an interval") {
  const std::array<double, 1> x{56}, y{19'040};
  const OriginFit fit = fit_through_origin(x, y);
  CHECK(fit.slope == Approx(340));
  CHECK(fit.slope_sd == 0);
  CHECK(fit.degrees_of_freedom == 0);
}

namespace {
/// Share of Student's t between -t and t, by Simpson's rule on its density.
double share_within(double t, int dof) {
  const double n = dof;
  const double scale =
      std::exp(std::lgamma((n + 1) / 2) - std::lgamma(n / 2)) / std::sqrt(n * std::acos(-1.0));
  const auto density = [&](double x) { return scale * std::pow(1 + x * x / n, -(n + 1) / 2); };
  constexpr int steps = 20'000;
  const double h = t / steps;
  double sum = density(0) + density(t);
  for (int i = 1; i < steps; ++i) sum += density(i * h) * (i % 2 == 1 ? 4 : 2);
  return 2 * sum * h / 3;
}
}  // namespace

TEST_CASE("the table of Student's t agrees with its integral") {
  for (int dof = 1; dof <= 30; ++dof) {
    INFO("degrees of freedom " << dof);
    CHECK(share_within(student_t_95(dof), dof) == Approx(0.95).margin(0.0002));
  }
  CHECK(student_t_95(31) == student_t_95(30));
  CHECK(share_within(student_t_95(500), 500) > 0.95);
}
