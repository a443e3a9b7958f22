#include "process.h"

#include <fcntl.h>
#include <spawn.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

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

int measured(char** command) {
  posix_spawn_file_actions_t actions;
  posix_spawn_file_actions_init(&actions);
  posix_spawn_file_actions_addopen(&actions, 1, "/dev/null", O_WRONLY, 0);
  const auto start = std::chrono::steady_clock::now();
  pid_t child = 0;
  int status = -1;
  rusage used{};
  const bool ran = posix_spawnp(&child, command[0], &actions, nullptr, command, environ) == 0 &&
                   wait4(child, &status, 0, &used) == child;
  const std::chrono::duration<double, std::milli> wall = std::chrono::steady_clock::now() - start;
  posix_spawn_file_actions_destroy(&actions);
  if (!ran || status != 0) {
    std::fprintf(stderr, "%s failed\n", command[0]);
    return 1;
  }
  std::printf("%.3f %.3f %.3f\n", wall.count(), ms(used.ru_utime) + ms(used.ru_stime),
              static_cast<double>(used.ru_maxrss) / 1024);
  return 0;
}

Cost run(const std::vector<std::string>& command) {
  std::string self = "/proc/self/exe", word(measured_word);
  std::vector<char*> arguments{self.data(), word.data()};
  for (const std::string& one : command) arguments.push_back(const_cast<char*>(one.c_str()));
  arguments.push_back(nullptr);
  int ends[2] = {-1, -1};
  if (::pipe2(ends, O_CLOEXEC) != 0) std::exit(1);
  posix_spawn_file_actions_t actions;
  posix_spawn_file_actions_init(&actions);
  posix_spawn_file_actions_adddup2(&actions, ends[1], 1);
  pid_t child = 0;
  const bool ran =
      posix_spawn(&child, arguments[0], &actions, nullptr, arguments.data(), environ) == 0;
  posix_spawn_file_actions_destroy(&actions);
  ::close(ends[1]);
  char said[200] = {};
  const bool told = ran && ::read(ends[0], said, sizeof said - 1) > 0;
  ::close(ends[0]);
  int status = -1;
  Cost out;
  const bool known =
      told && ::waitpid(child, &status, 0) == child && status == 0 &&
      std::sscanf(said, "%lf %lf %lf", &out.wall_ms, &out.cpu_ms, &out.peak_mib) == 3;
  if (!known) std::exit(1);
  return out;
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
