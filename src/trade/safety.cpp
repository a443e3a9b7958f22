#include "trade/safety.h"

#include <algorithm>
#include <array>

#include "base/text.h"

namespace furnish {
namespace {
using enum RuleId;
using enum Signal;
using enum Salience;

constexpr std::string_view practice = "common practice, no source";
constexpr std::array<std::string_view, 4> words{"danger", "warning", "caution", "notice"};

constexpr std::array<SafetyRule, rule_count> table{{
    {avoid_region, "avoid-region", danger,
     "a tool is planned on a region that an alert marks to avoid", practice, Touches::cut},
    {sanitary_blade, "sanitary-blade", warning, "sanitary area with any blade but a #10", practice,
     Touches::cut},
    {sanitary_shears, "sanitary-shears", caution, "sanitary area with shears", practice,
     Touches::cut, standing},
    {pads_blade, "pads-blade", caution,
     "pads with a blade longer or more open than a #10, or with skip teeth; comb in the pads",
     practice, Touches::cut},
    {close_blade, "close-blade", warning, "#30, #40 or #50 without a comb anywhere but the pads",
     practice, Touches::cut},
    {skip_tooth, "skip-tooth", warning,
     "skip-tooth blade on thin or folded skin, or on a wrinkled or thin-skinned pet", practice,
     Touches::cut},
    {comb_base, "comb-base", caution, "guard comb over anything but #30 or #40", practice,
     Touches::cut},
    {comb_on_mats, "comb-on-mats", caution, "guard comb where the visit found mats", practice,
     Touches::cut},
    {double_coat_short, "double-coat-short", warning, "body of a double coat planned under 25 mm",
     "University of Minnesota, open textbook of animal dermatology, 1.13", Touches::cut},
    {mats_before_water, "mats-before-water", caution,
     "mats found and the bath comes before the comb-out", practice, Touches::bath},
    {prebrush, "prebrush", notice, "double, curly or drop coat and no brushing before the bath",
     practice, Touches::bath, standing},
    {ear_mats, "ear-mats", warning, "matted ear leathers are to be shaved", practice, Touches::cut},
    {ear_edge, "ear-edge", caution, "ears with shears or clipper", practice, Touches::cut,
     standing},
    {dryer_face, "dryer-face", caution, "force dryer on head or ears", practice, Touches::dryer},
    {dryer_heat, "dryer-heat", warning, "heated or cage dryer at all",
     "Hall, Carter, O'Neill, Scientific Reports 2020 (odds by breed); the rest common practice",
     Touches::dryer},
    {dryer_seizure, "dryer-seizure", warning, "force dryer and seizures or heart disease", practice,
     Touches::dryer},
    {allergen, "allergen", warning,
     "a planned product contains what an alert names, or says that the pet is allergic to",
     practice, Touches::bath},
    {dwell_short, "dwell-short", caution, "product marked medicated, planned dwell under its own",
     "MSD Veterinary Manual, owner's table of topical treatments: 10 min", Touches::bath},
    {mix_age, "mix-age", caution, "a diluted bottle older than the salon's limit",
     "PMC9542640: odds of Pseudomonas 15.5 times those of undiluted, 14 of 117 bottles",
     Touches::bath},
    {blade_heat, "blade-heat", notice, "planned clipping over 10 min on end",
     "contact burns: metal at 49 °C in minutes, at 60 °C in seconds (secondary copy); the limit "
     "common practice",
     Touches::cut, standing},
    {vaccination, "vaccination", notice,
     "a vaccination the salon requires has expired on the day, or is not yet valid",
     "CDC: rabies counts from 28 days after the first dose", Touches::dog},
    {weight_loss, "weight-loss", notice,
     "more than 10 % below the last or the year's highest weight",
     "veterinary hospital's client leaflet on abnormal weight loss", Touches::dog},
    {senior, "senior", notice, "over 10 years, over 7 at 40 kg and more", practice, Touches::dog},
    {puppy, "puppy", notice, "under 6 months", practice, Touches::dog},
    {vet_work, "vet-work", notice, "a step is planned that many places reserve to veterinarians",
     practice, Touches::dog},
    {mat_wound, "mat-wound", danger, "a visit finds a mat encircling a limb or tail",
     "Watson, Niestat, Veterinary Radiology & Ultrasound 2020", Touches::cut},
    {thin_skin, "thin-skin", warning,
     "blade against the lay or shorter than a #10, or a guard comb in mats, on thin or tearing "
     "skin; mats there",
     practice, Touches::lay},
    {felted_coat, "felted-coat", caution,
     "the last visit found felt, and nobody says whether clipper or water comes first",
     "common practice, no source; both ways are taught", Touches::bath},
    {against_handling, "against-handling", caution,
     "the plan dries or cuts with what handling or dislikes rule out", practice, Touches::cut},
    {pads, "pads", caution, "pads with shears or clipper", practice, Touches::cut, standing},
    {noise, "noise", caution,
     "a clipper, a grinder or a force dryer is planned, and the pet's lines name its noise",
     practice, Touches::dog},
    {found_there, "found-there", caution,
     "a visit found a growth, broken or sore skin, nobody closed it, and the place is cut",
     practice, Touches::cut},
}};

consteval bool in_order() {
  for (std::size_t i = 0; i < table.size(); ++i) {
    if (static_cast<std::size_t>(table[i].id) != i || table[i].touches == Touches::unsaid) {
      return false;
    }
  }
  return true;
}
static_assert(in_order(),
              "one row a rule, in the order of the enumeration, which says what it touches");

constexpr auto keys = [] {
  std::array<std::string_view, rule_count> out{};
  for (std::size_t i = 0; i < rule_count; ++i) out[i] = table[i].key;
  return out;
}();
}  // namespace

std::optional<Signal> parse_signal(std::string_view written) {
  const auto* const found = std::ranges::find(words, lower_ascii(trimmed(written)));
  if (found == words.end()) return std::nullopt;
  return static_cast<Signal>(found - words.begin());
}
std::string_view to_text(Signal signal) {
  return words[static_cast<std::size_t>(signal)];
}
std::span<const std::string_view> signal_words() {
  return words;
}

const SafetyRule& rule(RuleId id) {
  return table[static_cast<std::size_t>(id)];
}
std::span<const SafetyRule> safety_rules() {
  return table;
}
std::optional<RuleId> parse_rule(std::string_view key) {
  const auto* const found = std::ranges::find(table, key, &SafetyRule::key);
  if (found == table.end()) return std::nullopt;
  return found->id;
}
std::span<const std::string_view> rule_words() {
  return keys;
}
}  // namespace furnish
