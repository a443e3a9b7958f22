#include "threads_started.h"

#include <dlfcn.h>
#include <pthread.h>

#include <atomic>

namespace {
std::atomic<int> started = 0;
}  // namespace

/// A program's function comes before a library's of the same name.
extern "C" int pthread_create(pthread_t* thread, const pthread_attr_t* attributes,
                              void* (*work)(void*), void* of_work) {
  static const auto original =
      reinterpret_cast<decltype(&pthread_create)>(::dlsym(RTLD_NEXT, "pthread_create"));
  ++started;
  return original(thread, attributes, work, of_work);
}

int furnish::test::threads_started() {
  return started;
}
