#pragma once

#include <span>

namespace furnish {

/// A straight line through the origin, y = slope · x, by ordinary least squares.
struct OriginFit {
  double slope = 0;
  double slope_sd = 0;     ///< standard deviation of the slope; 0 with a single point
  double residual_sd = 0;  ///< with n - 1 degrees of freedom
  int degrees_of_freedom = 0;
};
/// pre: as many x as y, at least one x that is not 0.
OriginFit fit_through_origin(std::span<const double> x, std::span<const double> y);

/// How many standard deviations either way hold 95 %: Student's t at 0.975 (NIST/SEMATECH
/// e-Handbook of Statistical Methods, 1.3.6.7.2). Past 30 degrees of freedom that of 30, which is a
/// little wide. pre: at least 1.
double student_t_95(int degrees_of_freedom);
}  // namespace furnish
