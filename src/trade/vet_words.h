#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

namespace furnish {

/// Work that many places reserve to veterinarians. A list, not law: local rules differ; common
/// practice, no source.
enum class VetTask : std::uint8_t { anal_sacs, ear_treatment, teeth, mats_off, medication };
inline constexpr std::size_t vet_task_count = 5;
/// In a catalogue of words: "anal-sacs". Total over VetTask.
std::string_view key(VetTask);

/// The first such task in free words; empty if there is none, or the words take it back ("no anal
/// sacs").
std::optional<VetTask> veterinary_task(std::string_view words);
}  // namespace furnish
