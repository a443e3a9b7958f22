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

void SealReader::take(std::string_view stretch) {
  held_ += stretch;
  look(false);
}

void SealReader::look(bool at_end) {
  constexpr std::size_t whole = mark.size() + digits + chunk_sum;
  while (marks_.size() <= most_marks) {
    const std::size_t at = held_.find(mark, summed_);
    if (at == held_.npos || (!at_end && held_.size() - at < whole)) break;
    sum_up_to(at + mark.size());
    const std::string_view bytes = held_;
    const bool in_chunk = bytes.substr(0, at).ends_with(keyword);
    const std::string_view left_out = bytes.substr(summed_, digits + (in_chunk ? chunk_sum : 0));
    marks_.push_back({sum_, crc(sum_, left_out), size_ + left_out.size(),
                      std::string(left_out.substr(0, digits))});
  }
  // What may be the beginning of one, and what may stand before one.
  const std::size_t keep = at_end ? 0 : whole;
  if (held_.size() > keep) sum_up_to(std::max(summed_, held_.size() - keep));
  const std::size_t let_go = summed_ - std::min(summed_, keyword.size());
  held_.erase(0, let_go);
  summed_ -= let_go;
}

void SealReader::sum_up_to(std::size_t end) {
  sum_ = seal_sum(sum_, std::string_view(held_).substr(summed_, end - summed_));
  size_ += end - summed_;
  summed_ = end;
}

bool SealReader::holds() {
  look(true);
  if (marks_.size() > most_marks) return false;
  return std::ranges::any_of(marks_, [&](const Mark& one) {
    // The sum of what stands behind the digits: the whole one without what comes before.
    const auto rest = static_cast<z_off_t>(size_ - one.end);
    const uLong behind = ::crc32_combine(one.with_digits, 0, rest) ^ sum_;
    return one.digits == fmt::format("{:08x}", ::crc32_combine(one.before, behind, rest));
  });
}

bool seal_holds(std::string_view bytes) {
  constexpr std::size_t stretch = std::size_t{64} << 10;
  SealReader reader;
  for (std::size_t at = 0; at < bytes.size(); at += stretch) reader.take(bytes.substr(at, stretch));
  return reader.holds();
}
}  // namespace furnish
