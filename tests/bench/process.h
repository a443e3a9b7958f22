#pragma once

#include <string>
#include <vector>

namespace furnish::bench {

/// What one run of a program took.
struct Cost {
  double wall_ms = 0, cpu_ms = 0;  ///< cpu: user and system
  double peak_mib = 0;
};
/// Runs a program to its end, its output thrown away. Ends this program if it fails.
Cost run(const std::vector<std::string>& command);

double median(std::vector<double>);
/// Of each of the three by itself.
Cost median(const std::vector<Cost>&);
}  // namespace furnish::bench
