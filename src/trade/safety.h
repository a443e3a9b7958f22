#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string_view>

namespace furnish {

/// The signal words of ANSI Z535.4, gravest first. Danger will, warning could, cause death or
/// serious injury; caution could cause minor or moderate injury; notice is about practice. That
/// they also speak of the pet is this program's choice.
enum class Signal : std::uint8_t { danger, warning, caution, notice };
std::optional<Signal> parse_signal(std::string_view);
std::string_view to_text(Signal);  ///< "danger"
std::span<const std::string_view> signal_words();

enum class RuleId : std::uint8_t {
  avoid_region,
  sanitary_blade,
  sanitary_shears,
  pads_blade,
  close_blade,
  skip_tooth,
  comb_base,
  comb_on_mats,
  double_coat_short,
  mats_before_water,
  prebrush,
  ear_mats,
  ear_edge,
  dryer_face,
  dryer_heat,
  dryer_seizure,
  allergen,
  dwell_short,
  mix_age,
  blade_heat,
  vaccination,
  weight_loss,
  senior,
  puppy,
  vet_work,
  mat_wound,
  thin_skin,
  felted_coat,
  against_handling,
  pads,
  noise,
  found_there,
};
inline constexpr std::size_t rule_count = 32;

/// What a rule is about: this pet's facts, or a plan that departs from practice; or every pet whose
/// part that tool meets. Standing advice is no alert: alerts that are always there are not read
/// (van der Sijs and others, J Am Med Inform Assoc 2006;13:138–147: 49 to 96 % of them overridden).
enum class Salience : std::uint8_t { particular, standing };

/// What a rule's caution forbids or limits, and so which lines of the work say so beside it.
enum class Touches : std::uint8_t {
  unsaid,  ///< in no row of the table
  dog,     ///< no line of the work: who is worked on, or when to come
  bath,    ///< what is in the tub
  dryer,
  cut,  ///< the cutting of its places: where, with what, or how
  lay,  ///< the same, and with the lay only, whatever else is said
};

/// One safety rule. What decides whether it applies is in plan/; what it says is in the catalogues
/// of words, under [rule].
struct SafetyRule {
  RuleId id;
  std::string_view key;     ///< as named in `[[accept]] rule = "…"`
  Signal signal;            ///< usual; a plan may raise it where the rule says so
  std::string_view when;    ///< it applies, for those who read this table
  std::string_view source;  ///< or how sure it is
  Touches touches;
  Salience salience = Salience::particular;
};
constexpr bool is_standing(const SafetyRule& rule) {
  return rule.salience == Salience::standing;
}

const SafetyRule& rule(RuleId);
std::span<const SafetyRule> safety_rules();
std::optional<RuleId> parse_rule(std::string_view key);
std::span<const std::string_view> rule_words();
}  // namespace furnish
