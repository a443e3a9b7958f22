#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "model/pet.h"
#include "model/salon.h"
#include "plan/bath.h"
#include "plan/drawer.h"
#include "trade/method.h"
#include "trade/pose.h"

namespace furnish {

/// Stages of a visit, in the order of the trade; common practice, no source.
enum class Stage : std::uint8_t {
  prepare,
  bath,
  wet_comb_out,
  nails,
  dry,
  brush_out,
  clip,
  scissor,
  finish,
  check
};
std::string_view to_text(Stage);

enum class Task : std::uint8_t {
  look_over,
  brush_out,
  shampoo,
  rinse,
  conditioner,
  comb_through,
  other_product,
  nails,
  dry,
  brush,
  cut,
  finish,
  judge
};
std::string_view to_text(Task);

/// One step: one task with one tool, the dog in one position.
struct WorkStep {
  Stage stage = Stage::prepare;
  Task task = Task::look_over;
  std::optional<Tool> tool;                  ///< of a cut, and of brushing
  bool substitute = false;                   ///< `tool` stands in for one the drawer lacks
  std::vector<Place> places;                 ///< in order of place; empty: the whole dog
  Stance stance = Stance::standing;          ///< where nothing speaks against it
  PoseWords pose{};                          ///< what speaks against it; see posture()
  std::string words;                         ///< the pet's own: how it is brushed, product, finish
  std::vector<Method> how;                   ///< for a newer groomer, of these places; may be empty
  std::optional<std::chrono::seconds> time;  ///< dwell, rinse
  bool before_bath = false;                  ///< a cut on the unwashed coat
};

/// How the dog is held for a step: as the place asks for, unless it is to lie or keep its feet low,
/// when no foot is lifted higher than its joint and no foreleg at all (then the hind legs bear the
/// weight; common practice, no source).
enum class Posture : std::uint8_t {
  standing,
  facing,
  from_behind,
  foot_lifted,
  forelegs_lifted,
  foot_low,
  feet_down,
  lying,
  lying_foot_low
};
Posture posture(const WorkStep&);

/// All steps, stage by stage, but for what is cut before the bath: stripping on a dry coat, what
/// the pet's file says, and what is clipped at `clip_first` (see felted_places()). Places that an
/// alert avoids do not appear. Of all orders that keep the precedence, one with the fewest changes
/// of tool and, among those, of position; see plan/work_order.h. `drying`: the stricter line that
/// says how, see drying().
std::vector<WorkStep> order_of_work(const Pet&, const BathPlan&, std::string_view drying,
                                    std::span<const DrawerGap>, std::span<const Place> clip_first);
}  // namespace furnish
