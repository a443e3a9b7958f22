#include <malloc.h>

#include <csignal>
#include <cstdio>
#include <exception>

#include "app/options.h"
#include "app/run.h"

int main(int argc, char** argv) {
  // A reader that closes its pipe early is a fault to report, not a reason to die.
  std::signal(SIGPIPE, SIG_IGN);
  // A thread's heap else grows by one call to the system for every page of memory.
  constexpr int heap_at_once = 4 << 20;
  ::mallopt(M_TOP_PAD, heap_at_once);
  try {
    const furnish::ParsedOptions parsed = furnish::parse_options(argc, argv);
    const furnish::Exit exit =
        parsed.options ? furnish::run(*parsed.options, furnish::DiskFiles()) : parsed.exit;
    return static_cast<int>(exit);
  } catch (const std::exception& fault) {
    std::fprintf(stderr, "furnish: error: %s; please report this with the files that cause it\n",
                 fault.what());
    return static_cast<int>(furnish::Exit::faults);
  }
}
