#include "desk/chance.h"

#include <fmt/format.h>
#include <sys/random.h>

#include <array>
#include <stdexcept>

namespace furnish::desk {
std::string chance() {
  std::array<unsigned char, 16> bytes{};
  if (::getrandom(bytes.data(), bytes.size(), 0) != static_cast<::ssize_t>(bytes.size())) {
    throw std::runtime_error("the system gives no random numbers");
  }
  std::string out;
  for (const unsigned char byte : bytes) out += fmt::format("{:02x}", byte);
  return out;
}
}  // namespace furnish::desk
