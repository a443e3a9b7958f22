#include "process.h"

#include <fcntl.h>
#include <spawn.h>
#include <sys/resource.h>
#include <sys/wait.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>

extern char** environ;

namespace furnish::bench {
namespace {
double ms(const timeval& time) {
  return static_cast<double>(time.tv_sec) * 1000 + static_cast<double>(time.tv_usec) / 1000;
}
}  // namespace

Cost run(const std::vector<std::string>& command) {
  std::vector<char*> arguments;
  for (const std::string& one : command) arguments.push_back(const_cast<char*>(one.c_str()));
  arguments.push_back(nullptr);
  posix_spawn_file_actions_t actions;
  posix_spawn_file_actions_init(&actions);
  posix_spawn_file_actions_addopen(&actions, 1, "/dev/null", O_WRONLY, 0);
  const auto start = std::chrono::steady_clock::now();
  pid_t child = 0;
  int status = -1;
  rusage used{};
  const bool ran =
      posix_spawnp(&child, arguments[0], &actions, nullptr, arguments.data(), environ) == 0 &&
      wait4(child, &status, 0, &used) == child;
  const std::chrono::duration<double, std::milli> wall = std::chrono::steady_clock::now() - start;
  posix_spawn_file_actions_destroy(&actions);
  if (!ran || status != 0) {
    std::fprintf(stderr, "%s failed\n", command.front().c_str());
    std::exit(1);
  }
  return {wall.count(), ms(used.ru_utime) + ms(used.ru_stime),
          static_cast<double>(used.ru_maxrss) / 1024};
}

double median(std::vector<double> values) {
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  return *middle;
}

Cost median(const std::vector<Cost>& costs) {
  std::vector<double> wall, cpu, peak;
  for (const Cost& one : costs) {
    wall.push_back(one.wall_ms);
    cpu.push_back(one.cpu_ms);
    peak.push_back(one.peak_mib);
  }
  return {median(wall), median(cpu), median(peak)};
}
}  // namespace furnish::bench
