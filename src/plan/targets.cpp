#include "plan/targets.h"

#include <algorithm>

#include "plan/places.h"

namespace furnish {
namespace {
bool as_trim_says(const Visit& visit, const TrimPart& part) {
  return std::ranges::all_of(visit.done, [&](const PlacedEntry& done) {
    return !meets(done.place, part.place) ||
           (done.entry.tool == part.entry.tool && done.entry.lay == part.entry.lay);
  });
}

Length median(std::vector<Length> lengths) {
  std::ranges::sort(lengths);
  const std::size_t half = lengths.size() / 2;
  if (lengths.size() % 2 == 1) return lengths[half];
  return (lengths[half - 1] + lengths[half]) / 2;
}
}  // namespace

std::vector<Target> targets(const Pet& pet, std::span<const Visit* const> history) {
  std::vector<Target> out;
  for (const TrimPart& part : pet.trim) {
    std::vector<Length> lengths;
    Date newest;
    for (const Visit* const visit : history) {
      const RegionState* const left = measured_at(visit->went_out, part.place);
      if (left == nullptr || !as_trim_says(*visit, part)) continue;
      lengths.push_back(*left->length);
      newest = visit->date.value;
    }
    if (lengths.empty()) continue;
    const int count = static_cast<int>(lengths.size());
    out.push_back({part.place, median(std::move(lengths)), newest, count});
  }
  return out;
}

const Target* find_target(std::span<const Target> targets, Place place) {
  const auto found = std::ranges::find(targets, place, &Target::place);
  return found == targets.end() ? nullptr : &*found;
}
}  // namespace furnish
