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
/// The five parts of cutting that follow one another: pads and sanitary first, clipped body,
/// scissored body, tail, head.
int layer_of(Region region, const Tool& tool) {
  if (region == Region::pads || region == Region::sanitary) return 0;
  if (in_group(region, Group::head) || region == Region::eyes) return 4;
  if (region == Region::tail) return 3;
  return std::holds_alternative<Scissor>(tool) ? 2 : 1;
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

std::vector<Method> methods_of(const std::vector<Place>& places) {
  std::vector<Method> out;
  for (const Place place : places) {
    if (const auto method = method_of(place.region)) add_once(out, *method);
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

struct Job {
  int layer = 0;
  std::optional<Tool> tool;  ///< empty: a finish that names none
  bool substitute = false;
  std::vector<Place> places;
  Stance stance = Stance::standing;
};

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

/// Everything from pads to ears; the same for the same trim in whatever order.
std::vector<Job> jobs_of(const Pet& pet, std::span<const DrawerGap> gaps) {
  std::vector<Job> jobs;
  for (const TrimPart& part : pet.trim) {
    const auto place = workable(part.place, pet.alerts);
    if (!place || !cuts(part.entry.tool)) continue;
    const DrawerGap* const gap = find_gap(gaps, *place);
    const bool stands_in = gap != nullptr && gap->use;
    const Tool tool = stands_in ? *gap->use : part.entry.tool;
    add_job(jobs,
            {layer_of(place->region, tool), tool, stands_in, {*place}, info(place->region).stance});
  }
  for (const FinishRow& row : finish_rows) {
    const auto place = workable({row.region, Side::both}, pet.alerts);
    if (!place || finish_words(pet, row.part).empty() || is_cut(pet, row.region)) continue;
    const int layer = layer_of(row.region, Scissor{});
    add_job(jobs, {layer, std::nullopt, false, {*place}, info(row.region).stance});
  }
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
    if (known != nullptr) add_once(step.how, known->how);
  }
}

}  // namespace

WorkStep make_step(Stage stage, Task task, std::string words, std::optional<Method> how) {
  WorkStep step{stage, task, std::nullopt, false, {}, Stance::standing, std::move(words), {}, {}};
  if (how) step.how.push_back(*how);
  return step;
}

std::string finish_words(const Pet& pet, FinishPart part) {
  const FinishLine* const line = find_line(pet.finish, part);
  return line == nullptr ? std::string() : line->words;
}

std::vector<WorkStep> cutting(const Pet& pet, std::span<const DrawerGap> gaps) {
  const std::vector<Job> jobs = jobs_of(pet, gaps);
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
    step.how = methods_of(job.places);
    add_finish(step, pet);
    if (step.how.empty() && job.tool && std::holds_alternative<Scissor>(*job.tool)) {
      step.how.push_back(Method::anywhere);
    }
    out.push_back(step);
  }
  return out;
}
}  // namespace furnish
