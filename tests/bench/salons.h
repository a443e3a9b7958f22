#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "process.h"

namespace furnish::bench {

/// A salon's folder of so many pets, which is gone with it.
class ManyPets {
 public:
  /// The sample's grown pets without photos again and again, each of another weight, so that no two
  /// dogs are drawn alike, and with as many visits.
  ManyPets(std::string folder, int pets, int visits);
  ~ManyPets();
  ManyPets(const ManyPets&) = delete;
  ManyPets& operator=(const ManyPets&) = delete;
  /// What `furnish WHAT … -j JOBS` takes for all of them; without -j for 0 jobs.
  Cost made(const std::string& what, int jobs, const std::vector<std::string>& more = {}) const;
  /// Goes from what was made.
  void forget() const;
  std::string path(const std::string& name) const { return folder_ + "/" + name; }
  int pets() const { return pets_; }

 private:
  std::string folder_;
  int pets_;
};

/// A line of the table.
void show(std::string_view what, const Cost& cost, int pets);
}  // namespace furnish::bench
