#include "base/late_library.h"

#include <dlfcn.h>

#include <stdexcept>
#include <string>

namespace furnish {
void* late_function(const char* library, const char* name) {
  // Whoever opens a library again gets the same one.
  void* const opened = ::dlopen(library, RTLD_NOW | RTLD_LOCAL);
  void* const found = opened == nullptr ? nullptr : ::dlsym(opened, name);
  if (found == nullptr) {
    const char* const why = ::dlerror();
    throw std::runtime_error(std::string(library) +
                             " is not to be had on this machine: " + (why == nullptr ? name : why));
  }
  return found;
}
}  // namespace furnish
