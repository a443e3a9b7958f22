#include <cstddef>
#include <cstdint>

#include "fuzz/targets.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  furnish::fuzz::FURNISH_FUZZ_TARGET({reinterpret_cast<const char*>(bytes), size});
  return 0;
}
