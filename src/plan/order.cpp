#include "plan/order.h"

#include <algorithm>
#include <array>
#include <iterator>

#include "plan/cutting.h"
#include "plan/handling_rules.h"
#include "plan/places.h"
#include "trade/finish.h"
#include "trade/health.h"
#include "trade/method.h"

namespace furnish {
namespace {
constexpr std::array<std::string_view, 10> stage_names{
    "prepare",   "bath", "wet comb-out", "nails",  "dry",
    "brush-out", "clip", "scissor",      "finish", "check"};
constexpr std::array<std::string_view, 13> task_names{
    "look over", "brush out", "shampoo", "rinse", "conditioner", "comb through",  "product",
    "nails",     "dry",       "brush",   "cut",   "finish",      "judge the line"};

std::string words_of(const std::optional<Located<std::string>>& text) {
  return text ? text->value : std::string();
}

bool brushed(const Pet& pet) {
  return pet.coat != Coat::hairless;
}

void add_bath(std::vector<WorkStep>& out, const Pet& pet, const BathPlan& bath) {
  if (bath.none) return;
  const auto rinse = [&](Stage stage) {
    WorkStep step = make_step(stage, Task::rinse, {}, Method::rinse);
    step.time = bath.rinse;
    out.push_back(step);
  };
  const auto product = [&](const Mix& mix, Task task) {
    WorkStep step = make_step(Stage::bath, task, mix.use.product.name);
    step.time = mix.dwell;
    out.push_back(step);
  };
  const Mix* conditioner = nullptr;
  for (const Mix& mix : bath.mixes) {
    if (pet.bath.conditioner && mix.slot == BathSlot::conditioner) conditioner = &mix;
    if (mix.slot == BathSlot::shampoo ||
        (mix.slot == BathSlot::other && mix.use.product.kind == ProductKind::shampoo)) {
      product(mix, Task::shampoo);
      rinse(Stage::bath);
    }
  }
  // Nobody named a shampoo: there is a bath all the same.
  if (out.empty() || out.back().stage != Stage::bath) {
    out.push_back(make_step(Stage::bath, Task::shampoo));
    rinse(Stage::bath);
  }
  for (const Mix& mix : bath.mixes) {
    if (mix.slot == BathSlot::other && mix.use.product.kind == ProductKind::conditioner) {
      product(mix, Task::conditioner);
      rinse(Stage::bath);
    }
  }
  if (conditioner == nullptr) return;
  product(*conditioner, Task::conditioner);
  const std::string& words = conditioner->use.comb_through;
  const bool coat_needs_it = pet.coat && info(*pet.coat).brush_before_water;
  if (!words.empty() || coat_needs_it) {
    const bool undercoat = pet.coat == Coat::double_coat;
    out.push_back(make_step(Stage::wet_comb_out, Task::comb_through, words,
                            undercoat ? std::optional(Method::conditioner_double) : std::nullopt));
    rinse(Stage::wet_comb_out);
  } else {
    rinse(Stage::bath);
  }
}

void add_nails(std::vector<WorkStep>& out, const Pet& pet, PoseWords held) {
  const std::string words = finish_words(pet, FinishPart::nails);
  const FinishInfo* const known = find_finish(FinishPart::nails, words);
  if (known != nullptr && known->words == "leave") return;
  const auto feet = workable({Region::feet, Side::both}, pet.alerts);
  if (!feet) return;
  WorkStep step =
      make_step(Stage::nails, Task::nails, words, known != nullptr ? known->how : Method::nails);
  step.stance = Stance::foot_lifted;
  step.pose = held;
  step.places = {*feet};
  out.push_back(step);
}

void add_products_after(std::vector<WorkStep>& out, const BathPlan& bath) {
  for (const Mix& mix : bath.mixes) {
    const ProductKind kind = mix.use.product.kind;
    if (mix.slot != BathSlot::other || kind == ProductKind::shampoo ||
        kind == ProductKind::conditioner) {
      continue;
    }
    out.push_back(make_step(Stage::brush_out, Task::other_product, mix.use.product.name));
  }
}

}  // namespace

std::string_view to_text(Stage stage) {
  return stage_names[static_cast<std::size_t>(stage)];
}
std::string_view to_text(Task task) {
  return task_names[static_cast<std::size_t>(task)];
}

Posture posture(const WorkStep& step) {
  const bool foot = step.stance == Stance::foot_lifted;
  if (step.pose.lies) return foot ? Posture::lying_foot_low : Posture::lying;
  if (step.pose.feet_low && foot) return Posture::foot_low;
  if (step.pose.feet_low && step.stance == Stance::forelegs_lifted) return Posture::feet_down;
  return static_cast<Posture>(step.stance);  // the first ones are those of Stance
}

std::vector<WorkStep> order_of_work(const Pet& pet, const BathPlan& bath, std::string_view drying,
                                    std::span<const DrawerGap> gaps,
                                    std::span<const Place> clip_first) {
  const PoseWords held = pose(pet);
  const auto cut = [&](std::vector<WorkStep>& steps, CutTime time) {
    std::ranges::move(cutting(pet, gaps, clip_first, time, held), std::back_inserter(steps));
  };
  std::vector<WorkStep> out{make_step(Stage::prepare, Task::look_over)};
  cut(out, CutTime::before_brushing);
  const bool coat_needs_it = pet.coat && info(*pet.coat).brush_before_water;
  const std::string before = words_of(pet.bath.before);
  if (!bath.none && (!before.empty() || coat_needs_it)) {
    out.push_back(make_step(Stage::prepare, Task::brush_out, before, Method::before_bath));
  }
  cut(out, CutTime::before_bath);
  add_bath(out, pet, bath);
  add_nails(out, pet, held);
  if (!bath.none) out.push_back(make_step(Stage::dry, Task::dry, std::string(drying)));
  if (brushed(pet)) {
    out.push_back(make_step(Stage::brush_out, Task::brush, {}, Method::damp_brush_out));
    out.back().tool = Brush{};
  }
  add_products_after(out, bath);
  cut(out, CutTime::after_bath);
  const std::string extras = finish_words(pet, FinishPart::extras);
  if (!extras.empty()) out.push_back(make_step(Stage::finish, Task::finish, extras));
  out.push_back(make_step(Stage::check, Task::judge, {}, Method::look));
  return out;
}
}  // namespace furnish
