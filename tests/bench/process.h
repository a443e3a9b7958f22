#pragma once

#include <string>
#include <vector>

namespace furnish::bench {

/// What one run of a program took.
struct Cost {
  double wall_ms = 0, cpu_ms = 0;  ///< cpu: user and system
  double peak_mib = 0;
};
/// Runs a program to its end, its output thrown away. Ends this program if it fails. A process
/// counts the memory of the one that started it as its own, so a small one does: this program once
/// more, which `measured_word` tells.
Cost run(const std::vector<std::string>& command);
inline constexpr const char* measured_word = "--measured";
/// What that one does. Gives its exit status.
int measured(char** command);

double median(std::vector<double>);
/// Of each of the three by itself.
Cost median(const std::vector<Cost>&);
}  // namespace furnish::bench
