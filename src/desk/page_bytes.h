#pragma once

#include <cstddef>
#include <span>
#include <string_view>

namespace furnish::desk {

/// A file of page/, which the build made an array (embed.cmake).
struct PageBytes {
  std::string_view name;
  const unsigned char* bytes;
  std::size_t size;
};
std::span<const PageBytes> page_bytes();
}  // namespace furnish::desk
