#include "trade/coat.h"

#include <algorithm>
#include <array>

#include "base/text.h"

namespace furnish {
namespace {
// Growth, micrometres a day. Coats that keep growing: 250 to 450, about "half an inch a month"
// (0.417 mm a day, common practice) and a beagle's 0.34 to 0.40 (Al-Bagdadi 1977, from memory).
// Double and smooth coats: down to 65, the mean over all hairs of 13 dogs (Schuldenfrei and Pieper,
// Veterinary Dermatology 2020, doi 10.1111/vde.12836), rounded to 60.
constexpr GrowthRate grows{250, 450}, wiry{150, 350}, stops{60, 350}, none{0, 0};

constexpr std::array<CoatInfo, coat_count> table{{
    {Coat::double_coat, "double", stops, false, 50_mm, std::nullopt, true, 6, 10, 1.6},
    {Coat::curly, "curly", grows, true, 150_mm, 25_mm, true, 4, 6, 1.4},
    {Coat::drop, "drop", grows, true, 250_mm, 50_mm, true, 4, 8, 1.4},
    {Coat::silky, "silky", grows, true, 80_mm, 50_mm, false, 4, 8, 1.2},
    {Coat::wire, "wire", wiry, false, 60_mm, 40_mm, false, 8, 12, 1.0},
    {Coat::smooth, "smooth", stops, false, 15_mm, std::nullopt, false, 8, 12, 0.7},
    {Coat::hairless, "hairless", none, false, 0_mm, std::nullopt, false, 4, 4, 0.4},
}};

consteval bool in_order() {
  for (std::size_t i = 0; i < table.size(); ++i) {
    if (static_cast<std::size_t>(table[i].coat) != i) return false;
    if (table[i].growth.low > table[i].growth.high) return false;
  }
  return true;
}
static_assert(in_order(), "one row a coat, in the order of the enumeration, ranges the right way");

constexpr auto words = [] {
  std::array<std::string_view, coat_count> out{};
  for (std::size_t i = 0; i < coat_count; ++i) out[i] = table[i].key;
  return out;
}();

/// Wire coats have furnishings far longer than their jacket: a beard of 60 mm and more is usual.
/// Common practice, no source.
std::optional<Length> wire_furnishing(Region region) {
  switch (region) {
    case Region::muzzle:
      return 75_mm;
    case Region::front_legs:
    case Region::rear_legs:
      return 60_mm;
    case Region::hocks:
      return 45_mm;
    default:
      return std::nullopt;
  }
}
}  // namespace

const CoatInfo& info(Coat coat) {
  return table[static_cast<std::size_t>(coat)];
}
std::span<const CoatInfo> coats() {
  return table;
}
std::optional<Coat> parse_coat(std::string_view word) {
  const auto* const found = std::ranges::find(table, lower_ascii(trimmed(word)), &CoatInfo::key);
  if (found == table.end()) return std::nullopt;
  return found->coat;
}
std::string_view key(Coat coat) {
  return info(coat).key;
}
std::span<const std::string_view> coat_words() {
  return words;
}

Length natural_length(Coat coat, Region region) {
  if (coat == Coat::wire) {
    if (const auto left = wire_furnishing(region)) return *left;
  }
  const double mm = info(coat).natural.in_mm() * info(region).natural;
  return Length::micrometres(static_cast<std::int64_t>(mm + 0.5) * 1000);
}
}  // namespace furnish
