#pragma once

#include <cstdint>
#include <string_view>

namespace furnish {

/// What tells contents apart: FNV-1a (constants from the algorithm's published description). It
/// guards against a slip, not against malice.
inline constexpr std::uint64_t fnv_basis = 14695981039346656037U;

/// The sum with a further byte.
constexpr std::uint64_t fnv(std::uint64_t sum, char byte) {
  return (sum ^ static_cast<unsigned char>(byte)) * 1099511628211U;
}
constexpr std::uint64_t fnv(std::uint64_t sum, std::string_view bytes) {
  for (const char c : bytes) sum = fnv(sum, c);
  return sum;
}
/// Of 32 bits.
constexpr std::uint32_t fnv_32(std::string_view bytes) {
  std::uint32_t sum = 2166136261U;
  for (const char c : bytes) sum = (sum ^ static_cast<unsigned char>(c)) * 16777619U;
  return sum;
}
}  // namespace furnish
