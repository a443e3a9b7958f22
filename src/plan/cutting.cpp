#include "plan/cutting.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <iterator>
#include <tuple>

#include "plan/places.h"
#include "plan/work_order.h"
#include "trade/finish.h"
#include "trade/method.h"

namespace furnish {
namespace {
constexpr int face_layer = -1;  ///< before pads and sanitary area
constexpr int clipped_layer = 1;

bool of_head(Region region) {
  return in_group(region, Group::head) || region == Region::eyes;
}

/// The five parts of cutting that follow one another: pads and sanitary first, clipped body,
/// scissored body, tail, head.
int layer_of(Region region, const Tool& tool) {
  if (is_soiled(region)) return 0;
  if (of_head(region)) return 4;
  if (region == Region::tail) return 3;
  return std::holds_alternative<Scissor>(tool) ? 2 : clipped_layer;
}

Stage stage_of_layer(int layer) {
  return layer < 2 ? Stage::clip : layer == 2 ? Stage::scissor : Stage::finish;
}

/// Order of tools that decides nothing but ties: blades, combs, then the rest, each short to long.
auto tool_rank(const Tool& tool) {
  std::int64_t size = 0;
  const Blade* blade = nullptr;
  if (const auto* const clip = std::get_if<Clip>(&tool)) {
    blade = clip->blade;
  } else if (const auto* const over = std::get_if<CombOver>(&tool)) {
    size = over->comb.um();
    blade = over->base;
  } else if (const auto* const scissor = std::get_if<Scissor>(&tool)) {
    size = static_cast<std::int64_t>(scissor->shears);
  } else if (const auto* const strip = std::get_if<HandStrip>(&tool)) {
    size = static_cast<std::int64_t>(strip->with);
  }
  return std::tuple(tool.index(), size, blade);
}

void add_once(std::vector<Method>& methods, Method method) {
  if (std::ranges::find(methods, method) == methods.end()) methods.push_back(method);
}

struct Job {
  int layer = 0;
  std::optional<Tool> tool;  ///< empty: a finish that names none
  bool substitute = false;
  std::vector<Place> places;
  Stance stance = Stance::standing;
};

/// Of the tool in hand, and for a dog that lies no line for one that stands.
bool is_told(Method method, const std::optional<Tool>& tool, PoseWords pose) {
  return (!tool || suits(method, *tool)) && !(pose.lies && needs_standing(method));
}

std::vector<Method> methods_of(const Job& job, PoseWords pose) {
  std::vector<Method> out;
  for (const Place place : job.places) {
    const auto method = method_of(place.region);
    if (method && is_told(*method, job.tool, pose)) add_once(out, *method);
  }
  return out;
}

struct FinishRow {
  FinishPart part;
  Region region;
};
constexpr std::array finish_rows{FinishRow{FinishPart::feet, Region::feet},
                                 FinishRow{FinishPart::tail, Region::tail},
                                 FinishRow{FinishPart::ears, Region::ears}};

/// Beside the job of the same layer, tool and position, if there is one.
void add_job(std::vector<Job>& jobs, const Job& more) {
  const auto job = std::ranges::find_if(jobs, [&](const Job& j) {
    return j.layer == more.layer && j.tool == more.tool && j.stance == more.stance;
  });
  if (job == jobs.end()) {
    jobs.push_back(more);
    return;
  }
  std::ranges::copy(more.places, std::back_inserter(job->places));
  job->substitute = job->substitute || more.substitute;
}

bool is_cut(const Pet& pet, Region region) {
  return std::ranges::any_of(pet.trim, [&](const TrimPart& part) {
    return part.place.region == region && cuts(part.entry.tool) && workable(part.place, pet.alerts);
  });
}

/// Ears, tail and feet that are finished and not cut.
void add_finishes(std::vector<Job>& jobs, const Pet& pet) {
  for (const FinishRow& row : finish_rows) {
    const auto place = workable({row.region, Side::both}, pet.alerts);
    if (!place || finish_words(pet, row.part).empty() || is_cut(pet, row.region)) continue;
    const int layer = layer_of(row.region, Scissor{});
    add_job(jobs, {layer, std::nullopt, false, {*place}, info(row.region).stance});
  }
}

/// One part of the trim with the tool that is really taken.
struct Cut {
  Place place;
  Tool tool;
  bool substitute = false;
};

CutTime time_of(const TrimEntry& entry, Place place, const Pet& pet,
                std::span<const Place> clip_first) {
  if (pet.bath.none) return CutTime::after_bath;
  if (std::holds_alternative<HandStrip>(entry.tool)) return CutTime::before_bath;
  const bool all = pet.bath.when && pet.bath.when->value == BathWhen::after_clipping;
  const bool felted = std::ranges::any_of(clip_first, [&](Place one) { return meets(one, place); });
  if (entry.before_bath) return CutTime::before_brushing;
  return clips(entry.tool) && (all || felted) ? CutTime::before_brushing : CutTime::after_bath;
}

std::vector<Cut> cuts_at(CutTime time, const Pet& pet, std::span<const DrawerGap> gaps,
                         std::span<const Place> clip_first) {
  std::vector<Cut> out;
  for (const TrimPart& part : pet.trim) {
    const auto place = workable(part.place, pet.alerts);
    if (!place || !cuts(part.entry.tool)) continue;
    if (time_of(part.entry, *place, pet, clip_first) != time) continue;
    const DrawerGap* const gap = find_gap(gaps, *place);
    const bool stands_in = gap != nullptr && gap->use;
    out.push_back({*place, stands_in ? *gap->use : part.entry.tool, stands_in});
  }
  return out;
}

/// True if a clipped region of those that `of` picks has scissor work beside it, or on its other
/// side.
template <typename Of>
bool borders_on_scissors(const std::vector<Cut>& all, Of of) {
  return std::ranges::any_of(all, [&](const Cut& clipped) {
    const Region region = clipped.place.region;
    return of(region) && clips(clipped.tool) && std::ranges::any_of(all, [&](const Cut& other) {
             return std::holds_alternative<Scissor>(other.tool) &&
                    (adjacent(region, other.place.region) || region == other.place.region);
           });
  });
}

/// The blade that meets the skin.
const Blade* blade_of(const Tool& tool) {
  if (const auto* const clip = std::get_if<Clip>(&tool)) return clip->blade;
  if (const auto* const over = std::get_if<CombOver>(&tool)) return over->base;
  return nullptr;
}

/// True if the pads or the sanitary area are cut with this tool or its blade.
bool soiled(const Tool& tool, const std::vector<Cut>& all) {
  return std::ranges::any_of(all, [&](const Cut& cut) {
    const bool same_blade = blade_of(tool) != nullptr && blade_of(tool) == blade_of(cut.tool);
    return is_soiled(cut.place.region) && (cut.tool == tool || same_blade);
  });
}

/// Everything from pads to ears; the same for the same trim in whatever order.
std::vector<Job> jobs_of(const Pet& pet, std::span<const DrawerGap> gaps,
                         std::span<const Place> clip_first, CutTime time) {
  const std::vector<Cut> all = cuts_at(time, pet, gaps, clip_first);
  const auto is_tail = [](Region region) { return region == Region::tail; };
  const bool face_first = borders_on_scissors(all, of_head);
  const bool tail_first = borders_on_scissors(all, is_tail);
  std::vector<Job> jobs;
  for (const Cut& cut : all) {
    const Region region = cut.place.region;
    const bool first =
        clips(cut.tool) && ((face_first && of_head(region)) || (tail_first && is_tail(region)));
    const bool clean = first && of_head(region) && soiled(cut.tool, all);
    add_job(jobs, {clean   ? face_layer
                   : first ? clipped_layer
                           : layer_of(region, cut.tool),
                   cut.tool,
                   cut.substitute,
                   {cut.place},
                   info(region).stance});
  }
  if (time == CutTime::after_bath) add_finishes(jobs, pet);
  std::ranges::sort(jobs, {}, [](const Job& j) {
    return std::tuple(j.layer, !j.tool, j.tool ? tool_rank(*j.tool) : tool_rank(Brush{}), j.stance);
  });
  return jobs;
}

/// Ears, tail and feet as the style says.
void add_finish(WorkStep& step, const Pet& pet) {
  for (const FinishRow& row : finish_rows) {
    const std::string words = finish_words(pet, row.part);
    const bool here =
        std::ranges::find(step.places, row.region, &Place::region) != step.places.end();
    if (words.empty() || !here) continue;
    step.words += (step.words.empty() ? "" : "; ") + std::string(key(row.part)) + ": " + words;
    const FinishInfo* const known = find_finish(row.part, words);
    if (known != nullptr && is_told(known->how, step.tool, step.pose)) {
      add_once(step.how, known->how);
    }
  }
}

}  // namespace

WorkStep make_step(Stage stage, Task task, std::string words, std::optional<Method> how) {
  WorkStep step{stage, task, std::nullopt, false, {}, Stance::standing, {}, std::move(words),
                {},    {}};
  if (how) step.how.push_back(*how);
  return step;
}

std::string finish_words(const Pet& pet, FinishPart part) {
  const FinishLine* const line = find_line(pet.finish, part);
  return line == nullptr ? std::string() : line->words.value;
}

std::vector<WorkStep> cutting(const Pet& pet, std::span<const DrawerGap> gaps,
                              std::span<const Place> clip_first, CutTime time, PoseWords held) {
  const std::vector<Job> jobs = jobs_of(pet, gaps, clip_first, time);
  const std::vector<Cut> all = cuts_at(time, pet, gaps, clip_first);
  std::vector<WorkNode> nodes;
  std::vector<std::optional<Tool>> tools;
  for (const Job& job : jobs) {
    auto tool = std::ranges::find(tools, job.tool);
    if (tool == tools.end()) tool = tools.insert(tools.end(), job.tool);
    nodes.push_back({job.layer, static_cast<int>(tool - tools.begin()), job.stance});
  }
  std::vector<WorkStep> out;
  for (const std::size_t i : best_order(nodes)) {
    const Job& job = jobs[i];
    WorkStep step = make_step(stage_of_layer(job.layer), job.tool ? Task::cut : Task::finish);
    step.tool = job.tool;
    step.substitute = job.substitute;
    step.places = job.places;
    step.stance = job.stance;
    step.pose = held;
    step.before_bath = time != CutTime::after_bath;
    const bool at_head =
        job.layer > 0 && job.tool && std::ranges::any_of(job.places, of_head, &Place::region);
    if (at_head && soiled(*job.tool, all)) step.how.push_back(Method::wash_first);
    std::ranges::copy(methods_of(job, held), std::back_inserter(step.how));
    add_finish(step, pet);
    if (step.how.empty() && job.tool && std::holds_alternative<Scissor>(*job.tool)) {
      step.how.push_back(Method::anywhere);
    }
    out.push_back(step);
  }
  return out;
}
}  // namespace furnish
