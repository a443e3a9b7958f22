#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <span>
#include <string_view>

#include "base/measures.h"

namespace furnish {

/// What a pet file may list under `[health] conditions`: those a safety rule asks for. Free words
/// go under `notes`, so that a misspelt condition is a fault and never a rule that stays silent.
enum class Condition : std::uint8_t {
  seizures,
  heart_disease,
  thin_skin,
  wrinkles,
  arthritis,
  blind,
  deaf,
  diabetes,
  collapsing_trachea
};
std::optional<Condition> parse_condition(std::string_view);
std::string_view to_text(Condition);
std::span<const std::string_view> condition_words();

enum class NoseLength : std::uint8_t { short_nose, medium, long_nose };

/// Ages and weights at which a dog needs shorter sessions; common practice, no source.
inline constexpr int senior_years = 10, senior_years_giant = 7, puppy_months = 6;
inline constexpr Mass giant = Mass::kg(40);

/// Shares of weight lost since the last visit or the year's highest. More than a tenth: tell the
/// owner to see a vet (veterinary hospital's client leaflet on abnormal weight loss); a twentieth
/// is a quiet mark (common practice, no source).
inline constexpr int weight_loss_percent = 10, weight_change_percent = 5;

/// A medicated product stays on this long where its label does not say (MSD Veterinary Manual,
/// owner's table of topical treatments; its professional edition says 3 to 5 minutes).
inline constexpr std::chrono::minutes medicated_dwell{10};

/// Rabies counts from 28 days after the first dose, at once after a booster (CDC); local rules
/// vary.
inline constexpr std::chrono::days rabies_wait{28};

/// Under this body length a double coat may come back patchy or late (University of Minnesota, open
/// textbook of animal dermatology, 1.13, post-clipping alopecia; the length itself: common
/// practice).
inline constexpr int double_coat_shortest_mm = 25;

/// Clipping on end after which a blade is felt and changed; common practice, no source.
inline constexpr std::chrono::minutes blade_heats_after{10};
}  // namespace furnish
