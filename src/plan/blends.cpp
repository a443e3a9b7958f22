#include "plan/blends.h"

#include <algorithm>
#include <array>

#include "plan/drawer.h"
#include "plan/handling_rules.h"
#include "plan/places.h"
#include "plan/tool_rules.h"

namespace furnish {
namespace {
/// Kept short for cleanliness; their edge is where they end (common practice, no source).
bool hygiene(Region region) {
  return region == Region::eyes || region == Region::pads || region == Region::sanitary;
}

/// The ear moves over neck and ruff, so that no blend there would stay one (common practice, no
/// source).
bool hangs_over(Seam seam) {
  return seam == Seam{Region::ears, Region::neck} || seam == Seam{Region::ears, Region::ruff};
}

bool wants_line(const Pet& pet, Seam seam) {
  if (!pet.style) return false;
  return std::ranges::any_of(pet.style->lines, [&](Seam line) {
    return line == seam || line == Seam{seam.b, seam.a};
  });
}

bool jumps(Length from, Length to, const BlendSettings& settings) {
  return to - from > settings.step &&
         static_cast<double>(to.um()) > settings.ratio * static_cast<double>(from.um());
}

struct Step {
  Length left;
  Tool tool;
};

/// What the drawer has between the two lengths and may touch `place`, one tool a length.
std::vector<Step> between(Length from, Length to, Place place, const Salon& salon, const Pet& pet,
                          const Visit* latest) {
  std::vector<Step> out;
  for (const Tool& tool : clipper_tools(salon.kit)) {
    const Length left = *nominal_length(tool, salon.kit);
    if (left <= from || left >= to || forbidden(tool, left, place, pet, latest)) continue;
    out.push_back({left, tool});
  }
  std::ranges::stable_sort(out, {}, &Step::left);
  const auto same = [](const Step& a, const Step& b) { return a.left == b.left; };
  out.erase(std::unique(out.begin(), out.end(), same), out.end());
  return out;
}

/// The fewest of `steps` that leave no jump, reaching as far as possible each time; where the
/// drawer leaves a gap, the next it has.
std::vector<Tool> ladder(Length from, Length to, const std::vector<Step>& steps,
                         const BlendSettings& settings) {
  std::vector<Tool> out;
  Length at = from;
  for (auto next = steps.begin(); next != steps.end() && jumps(at, to, settings); ++next) {
    while (next + 1 != steps.end() && !jumps(at, (next + 1)->left, settings)) ++next;
    out.push_back(next->tool);
    at = next->left;
  }
  return out;
}

/// Of the drawer, and not ruled out where the blend is worked.
std::optional<Shears> blending_shears(const std::optional<Kit>& kit, Place place,
                                      std::span<const RuledOut> ruled) {
  for (const Shears shears : {Shears::thinning, Shears::blending}) {
    if (ruling_out(ruled, Scissor{shears}, place) != nullptr) continue;
    if (in_drawer(Scissor{shears}, kit)) return shears;
  }
  return std::nullopt;
}

std::optional<Blend> blend_at(Place a, Place b, const Salon& salon, const Pet& pet,
                              std::span<const PartLength> rows, const Visit* latest,
                              std::span<const RuledOut> ruled) {
  if (avoided(a, pet.alerts) || avoided(b, pet.alerts)) return std::nullopt;
  const auto row_at = [&](Place place) {
    return std::ranges::find_if(rows, [&](const PartLength& r) { return meets(r.place, place); });
  };
  const auto ra = row_at(a), rb = row_at(b);
  if (ra == rows.end() || rb == rows.end() || !ra->left || !rb->left) return std::nullopt;
  if (ra->basis == LengthBasis::natural && rb->basis == LengthBasis::natural) return std::nullopt;
  Blend out{b, a, middle(*ra->left), middle(*rb->left), {}, std::nullopt};
  if (out.from > out.to) {
    std::swap(out.longer, out.shorter);
    std::swap(out.from, out.to);
  }
  if (!jumps(out.from, out.to, salon.blends)) return std::nullopt;
  std::vector<Step> steps = between(out.from, out.to, out.longer, salon, pet, latest);
  std::erase_if(
      steps, [&](const Step& step) { return ruling_out(ruled, step.tool, out.longer) != nullptr; });
  out.steps = ladder(out.from, out.to, steps, salon.blends);
  out.with = blending_shears(salon.kit, out.longer, ruled);
  return out;
}

bool alike(const Blend& a, const Blend& b) {
  return a.longer.region == b.longer.region && a.from == b.from && a.to == b.to &&
         a.steps == b.steps;
}

Place on(Region region, Side side) {
  return {region, info(region).paired ? side : Side::both};
}
}  // namespace

std::vector<Blend> blends(const Salon& salon, const Pet& pet, std::span<const PartLength> rows,
                          const Visit* latest) {
  std::vector<Blend> out;
  const std::vector<RuledOut> ruled = ruled_out(pet);
  for (const Seam seam : seams()) {
    if (hygiene(seam.a) || hygiene(seam.b) || hangs_over(seam) || wants_line(pet, seam)) continue;
    const auto at = [&](Side side) {
      return blend_at(on(seam.a, side), on(seam.b, side), salon, pet, rows, latest, ruled);
    };
    auto left = at(Side::left);
    const auto right = at(Side::right);
    if (left && right && alike(*left, *right)) {
      left->longer.side = left->shorter.side = Side::both;
      out.push_back(*left);
      continue;
    }
    if (left) out.push_back(*left);
    if (right) out.push_back(*right);
  }
  return out;
}
}  // namespace furnish
