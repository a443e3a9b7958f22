#include "app/booked_day.h"

#include <algorithm>
#include <filesystem>

#include "base/text.h"

namespace furnish {
namespace {
/// How long another pet of the salon is expected to take; empty if nobody knows.
std::optional<Duration> expected(SalonFolder& folder, const std::string& file, Date day) {
  DiagnosticSink unheard;  // its own sheet says it
  const auto pet = folder.pet(file, unheard);
  if (!pet) return std::nullopt;
  bool complete = true;
  const std::vector<Visit> visits = folder.visits(*pet, complete, unheard);
  return make_plan(folder.salon(), *pet, visits, {}, day, unheard).duration;
}

/// True if the groomer of one of this pet's bookings has the other before it.
bool decides(const Booking& other, const Day& day, const std::string& key) {
  return std::ranges::any_of(day.bookings, [&](const Booking& own) {
    return own.pet.value == key && other.at <= own.at && same_groomer(own, other);
  });
}
}  // namespace

std::vector<DayWarning> day_warnings_about(const Case& one, const ReadContext& context) {
  SalonFolder& folder = *one.folder;
  const Day* const day = folder.day(one.today);
  if (day == nullptr) return {};
  std::vector<std::string> keys;
  std::map<std::string, Duration> known;
  if (one.plan.duration) known[one.pet.key] = *one.plan.duration;
  DiagnosticSink unheard;  // a folder that cannot be listed is told where its pets are asked for
  bool complete = true;
  const ReadContext quietly{context.files, context.sources, unheard};
  for (const PetPath& path : all_pets(quietly, folder.root(), complete)) {
    const std::string key = std::filesystem::path(path.file).stem().string();
    keys.push_back(key);
    const bool needed =
        key != one.pet.key && std::ranges::any_of(day->bookings, [&](const Booking& other) {
          return other.pet.value == key && decides(other, *day, one.pet.key);
        });
    if (!needed) continue;
    if (const auto time = expected(folder, path.file, one.today)) known[key] = *time;
  }
  if (!complete) return {};
  std::vector<DayWarning> out = day_warnings(folder.salon(), *day, keys, known);
  std::erase_if(out, [&](const DayWarning& warning) {
    return warning.fault != DayFault::no_pet &&
           std::ranges::find(warning.pets, one.pet.key) == warning.pets.end();
  });
  return out;
}
}  // namespace furnish
