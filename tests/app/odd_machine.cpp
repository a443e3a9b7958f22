// Loaded before all else, a machine that agrees with no other: its clocks jump at each look, and
// its folders list their files from the last to the first.

#include <dirent.h>
#include <dlfcn.h>
#include <sys/time.h>
#include <time.h>

#include <algorithm>
#include <cstring>
#include <map>
#include <vector>

namespace {
template <typename Function>
Function* next(const char* name) {
  return reinterpret_cast<Function*>(::dlsym(RTLD_NEXT, name));
}

/// A year and more, forwards and back.
long jump() {
  static long looks = 0;
  ++looks;
  return (looks % 2 == 0 ? -1 : 1) * 40'000'000L * (looks % 7);
}

struct Listing {
  std::vector<dirent> entries;
  std::size_t at = 0;
};
std::map<DIR*, Listing>& listings() {
  static std::map<DIR*, Listing> all;
  return all;
}
}  // namespace

extern "C" {
time_t time(time_t* out) {
  const time_t now = next<time_t(time_t*)>("time")(nullptr) + jump();
  if (out != nullptr) *out = now;
  return now;
}

int clock_gettime(clockid_t clock, timespec* out) {
  const int status = next<int(clockid_t, timespec*)>("clock_gettime")(clock, out);
  // Who waits by the steady clock waits as long as ever.
  if (status == 0 && clock == CLOCK_REALTIME) out->tv_sec += jump();
  return status;
}

int gettimeofday(timeval* out, void* zone) {
  const int status = next<int(timeval*, void*)>("gettimeofday")(out, zone);
  if (status == 0) out->tv_sec += jump();
  return status;
}

dirent* readdir(DIR* folder) {
  Listing& listing = listings()[folder];
  if (listing.entries.empty()) {
    while (const dirent* const entry = next<dirent*(DIR*)>("readdir")(folder)) {
      listing.entries.push_back(*entry);
    }
    std::reverse(listing.entries.begin(), listing.entries.end());
    listing.at = 0;
  }
  return listing.at < listing.entries.size() ? &listing.entries[listing.at++] : nullptr;
}

dirent64* readdir64(DIR* folder) {
  return reinterpret_cast<dirent64*>(readdir(folder));
}

int closedir(DIR* folder) {
  listings().erase(folder);
  return next<int(DIR*)>("closedir")(folder);
}
}
