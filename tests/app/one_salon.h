#pragma once

#include <functional>
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
  /// What else is asked.
  std::function<void(Options&)> more = {};
  /// Its calls are those of another; tried in a long run.
  bool seldom = false;
};

/// A salon of one pet with all that its sheets are made from, in few words, since it is made into
/// sheets a thousand times; and a folder for what is said.
class OneSalon {
 public:
  OneSalon();

  std::string root() const { return folder_.path("salon"); }
  Tree tree() const;
  /// As at first, with the sheets that are given beside what a person wrote.
  void restore(const Tree& sheets) const;
  /// As at first, whatever became of what a person wrote.
  void give_back() const;
  /// In this process; throws nothing.
  Outcome run(const Task& task, std::string_view day, const Files& files, const Disk& disk) const;
  /// What the run says that goes on now, or said that went before.
  std::string said() const;
  void forget_said() const;
  /// What people wrote.
  const Tree& written() const { return written_; }
  /// What the folder holds beyond that.
  Tree made() const;
  bool left_unfinished() const;

 private:
  TemporaryFolder folder_;
  Tree written_;
};

/// Every command that reads or writes a salon's files, but the desk.
const std::vector<Task>& all_tasks();
}  // namespace furnish::test
