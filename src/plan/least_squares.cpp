#include "plan/least_squares.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace furnish {
namespace {
constexpr std::array t_table{12.706, 4.303, 3.182, 2.776, 2.571, 2.447, 2.365, 2.306, 2.262, 2.228,
                             2.201,  2.179, 2.160, 2.145, 2.131, 2.120, 2.110, 2.101, 2.093, 2.086,
                             2.080,  2.074, 2.069, 2.064, 2.060, 2.056, 2.052, 2.048, 2.045, 2.042};
}  // namespace

OriginFit fit_through_origin(std::span<const double> x, std::span<const double> y) {
  double xx = 0, xy = 0, squares = 0;
  for (std::size_t i = 0; i < x.size(); ++i) {
    xx += x[i] * x[i];
    xy += x[i] * y[i];
  }
  OriginFit fit{xy / xx, 0, 0, static_cast<int>(x.size()) - 1};
  if (fit.degrees_of_freedom < 1) return fit;
  for (std::size_t i = 0; i < x.size(); ++i) {
    const double off = y[i] - fit.slope * x[i];
    squares += off * off;
  }
  fit.residual_sd = std::sqrt(squares / fit.degrees_of_freedom);
  fit.slope_sd = fit.residual_sd / std::sqrt(xx);
  return fit;
}

double student_t_95(int degrees_of_freedom) {
  const auto row = static_cast<std::size_t>(std::max(1, degrees_of_freedom)) - 1;
  return t_table[std::min(row, t_table.size() - 1)];
}
}  // namespace furnish
