#include "desk/text_merge.h"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace furnish::desk {
namespace {
using Lines = std::vector<std::string_view>;
constexpr std::size_t none = static_cast<std::size_t>(-1);
/// Lines of one text times those of another that are held against each other; what is longer and
/// differs more is for a person to see to.
constexpr std::size_t most_pairs = std::size_t{4} * 1024 * 1024;

/// Each with its end.
Lines lines_of(std::string_view text) {
  Lines out;
  while (!text.empty()) {
    const std::size_t end = text.find('\n'), size = end == text.npos ? text.size() : end + 1;
    out.push_back(text.substr(0, size));
    text.remove_prefix(size);
  }
  return out;
}

/// For each line of `a` the line of `b` that it still is, or `none`: a longest common subsequence,
/// between what both begin and end with. Empty if that would take too long.
std::optional<std::vector<std::size_t>> kept_lines(const Lines& a, const Lines& b) {
  std::vector<std::size_t> out(a.size(), none);
  std::size_t begin = 0, end_a = a.size(), end_b = b.size();
  for (; begin < std::min(end_a, end_b) && a[begin] == b[begin]; ++begin) out[begin] = begin;
  while (end_a > begin && end_b > begin && a[end_a - 1] == b[end_b - 1]) out[--end_a] = --end_b;
  const std::size_t rows = end_a - begin, columns = end_b - begin, stride = columns + 1;
  if (rows * columns > most_pairs) return std::nullopt;
  // How many lines are common from here on.
  std::vector<std::uint16_t> common((rows + 1) * stride, 0);
  for (std::size_t i = rows; i-- > 0;) {
    for (std::size_t j = columns; j-- > 0;) {
      common[i * stride + j] =
          a[begin + i] == b[begin + j]
              ? static_cast<std::uint16_t>(common[(i + 1) * stride + j + 1] + 1)
              : std::max(common[(i + 1) * stride + j], common[i * stride + j + 1]);
    }
  }
  for (std::size_t i = 0, j = 0; i < rows && j < columns;) {
    if (a[begin + i] == b[begin + j]) {
      out[begin + i++] = begin + j++;
    } else if (common[(i + 1) * stride + j] >= common[i * stride + j + 1]) {
      ++i;
    } else {
      ++j;
    }
  }
  return out;
}
}  // namespace

std::optional<std::string> merged_texts(std::string_view base, std::string_view theirs,
                                        std::string_view yours) {
  const Lines from = lines_of(base), other = lines_of(theirs), own = lines_of(yours);
  const auto in_theirs = kept_lines(from, other), in_yours = kept_lines(from, own);
  if (!in_theirs || !in_yours) return std::nullopt;
  std::string out;
  const auto add = [&](std::span<const std::string_view> lines) {
    for (const std::string_view line : lines) out += line;
  };
  std::size_t at = 0, at_other = 0, at_own = 0;
  for (std::size_t i = 0; i <= from.size(); ++i) {
    const bool end = i == from.size();
    if (!end && ((*in_theirs)[i] == none || (*in_yours)[i] == none)) continue;
    // From the last line that all three have to this one.
    const std::size_t to_other = end ? other.size() : (*in_theirs)[i],
                      to_own = end ? own.size() : (*in_yours)[i];
    const auto old = std::span(from).subspan(at, i - at),
               their_lines = std::span(other).subspan(at_other, to_other - at_other),
               your_lines = std::span(own).subspan(at_own, to_own - at_own);
    if (std::ranges::equal(their_lines, old) || std::ranges::equal(their_lines, your_lines)) {
      add(your_lines);
    } else if (std::ranges::equal(your_lines, old)) {
      add(their_lines);
    } else {
      return std::nullopt;
    }
    if (!end) out += from[i];
    at = i + 1;
    at_other = to_other + 1;
    at_own = to_own + 1;
  }
  return out;
}
}  // namespace furnish::desk
