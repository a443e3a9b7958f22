#include "output/seal.h"

#include <fmt/format.h>
#include <zlib.h>

#include <algorithm>

namespace furnish {
namespace {
using namespace std::string_view_literals;

constexpr std::string_view mark = "furnish-seal:";
constexpr std::size_t digits = 8;
/// A PNG's remark, and its chunk's own check sum, which can only be known when the digits are.
constexpr std::string_view keyword = "Comment\0"sv;
constexpr std::size_t chunk_sum = 4;

std::uint32_t crc(std::uint32_t before, std::string_view bytes) {
  return static_cast<std::uint32_t>(
      ::crc32_z(before, reinterpret_cast<const Bytef*>(bytes.data()), bytes.size()));
}

/// The digits that belong to a seal whose mark begins at `at`.
std::string digits_for(std::string_view bytes, std::size_t at) {
  const std::size_t begin = at + mark.size();
  const bool in_chunk = bytes.substr(0, at).ends_with(keyword);
  const std::size_t end = std::min(begin + digits + (in_chunk ? chunk_sum : 0), bytes.size());
  return fmt::format("{:08x}", crc(crc(0, bytes.substr(0, begin)), bytes.substr(end)));
}

/// Inserts a mark between two texts, and gives it its digits.
std::string with_seal(std::string bytes, std::size_t at, std::string_view before,
                      std::string_view after) {
  bytes.insert(at, fmt::format("{}{}{:0{}}{}", before, mark, 0, digits, after));
  const std::size_t begin = at + before.size();
  bytes.replace(begin + mark.size(), digits, digits_for(bytes, begin));
  return bytes;
}

std::string big_endian(std::uint32_t n) {
  return {static_cast<char>(n >> 24 & 0xFF), static_cast<char>(n >> 16 & 0xFF),
          static_cast<char>(n >> 8 & 0xFF), static_cast<char>(n & 0xFF)};
}

std::string seal_png(std::string bytes) {
  constexpr std::string_view kind = "tEXt";
  constexpr std::size_t last_chunk = 12;  // IEND: length, kind, check sum
  const std::size_t length = keyword.size() + mark.size() + digits;
  const std::string before =
      big_endian(static_cast<std::uint32_t>(length)) + std::string(kind) + std::string(keyword);
  const std::size_t at = bytes.size() - last_chunk;
  bytes = with_seal(std::move(bytes), at, before, "\0\0\0\0"sv);
  const std::size_t body = at + 4;
  const std::string_view summed = std::string_view(bytes).substr(body, kind.size() + length);
  return bytes.replace(body + summed.size(), 4, big_endian(crc(0, summed)));
}
}  // namespace

std::string sealed(std::string bytes, SealedAs kind) {
  const std::size_t end = bytes.size();
  switch (kind) {
    case SealedAs::pdf: {
      const std::size_t at = bytes.rfind("startxref");
      return at == bytes.npos ? bytes : with_seal(std::move(bytes), at, "%", "\n");
    }
    case SealedAs::png:
      return seal_png(std::move(bytes));
    case SealedAs::svg:
      return with_seal(std::move(bytes), end, "<!-- ", " -->\n");
    case SealedAs::calendar: {
      constexpr std::string_view before = "BEGIN:VEVENT";
      const std::size_t at = bytes.find(before);
      return at == bytes.npos ? bytes : with_seal(std::move(bytes), at, "X-", "\r\n");
    }
    case SealedAs::text:
      break;
  }
  return with_seal(std::move(bytes), end, "", "\n");
}

std::uint32_t seal_sum(std::uint32_t sum, std::string_view stretch) {
  return stretch.empty() ? sum : crc(sum, stretch);
}

std::string seal_before(std::uint32_t sum, std::string_view end) {
  const std::string begin = fmt::format("%{}", mark), rest = fmt::format("\n{}", end);
  return fmt::format("{}{:08x}{}", begin, crc(crc(sum, begin), rest), rest);
}

bool seal_holds(std::string_view bytes) {
  for (std::size_t at = bytes.find(mark); at != bytes.npos; at = bytes.find(mark, at + 1)) {
    if (bytes.substr(at + mark.size(), digits) == digits_for(bytes, at)) return true;
  }
  return false;
}
}  // namespace furnish
