#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "app/options.h"
#include "base/files.h"
#include "output/disk.h"
#include "output/tool.h"

namespace furnish::test {

/// Files of a folder by their paths in it.
using Tree = std::map<std::string, std::string>;

struct Outcome {
  Exit exit;
  std::string said;
};

/// What is asked of a salon.
struct Task {
  std::string_view name;
  Command command{};
  const SheetMaker* sheet = nullptr;
  bool again = false;          ///< an older sheet lies there already
  std::string_view kind = {};  ///< of `new`
};

/// A salon of one pet with its visits, and a folder for what is said.
class OneSalon {
 public:
  OneSalon();

  std::string root() const { return folder_.path("salon"); }
  Tree tree() const;
  /// As at first, with the sheets that are given beside what a person wrote.
  void restore(const Tree& sheets) const;
  /// In this process; throws nothing.
  Outcome run(const Task& task, std::string_view day, const Files& files, const Disk& disk) const;
  /// What people wrote.
  const Tree& written() const { return written_; }
  /// What the folder holds beyond that.
  Tree made() const;
  bool left_unfinished() const;

 private:
  static std::string sample();
  void copy(const std::string& name) const;

  TemporaryFolder folder_;
  Tree written_;
};

/// Every command that reads or writes a salon's files, but the desk.
const std::vector<Task>& all_tasks();
}  // namespace furnish::test
