#include "plan/restraints.h"

#include <algorithm>
#include <iterator>

#include "plan/places.h"

namespace furnish {
namespace {
bool counts(const Caution& one) {
  return !one.accepted && !is_standing(rule(one.rule));
}

bool any_meets(std::span<const Place> some, std::span<const Place> others) {
  return std::ranges::any_of(some, [&](Place one) {
    return std::ranges::any_of(others, [&](Place other) { return meets(one, other); });
  });
}

/// A caution about a product names it first; about the water alone it names none.
bool in_tub(const Caution& one, const WorkStep& step) {
  const auto* const product =
      one.what.facts.empty() ? nullptr : std::get_if<std::string>(&one.what.facts.front());
  if (product == nullptr) return step.task == Task::shampoo;
  const bool takes_one = step.task == Task::shampoo || step.task == Task::conditioner ||
                         step.task == Task::other_product;
  return takes_one && step.words == *product;
}

bool restrains(const Caution& one, const WorkStep& step) {
  switch (rule(one.rule).touches) {
    case Touches::cut:
    case Touches::lay:
      if (step.task == Task::nails) return one.what.key == "against-handling-grinder";
      return (step.task == Task::cut || step.task == Task::finish) &&
             any_meets(one.places, step.places);
    case Touches::bath:
      // Felt is not combed through either.
      return in_tub(one, step) || (one.rule == RuleId::felted_coat && step.task == Task::brush_out);
    case Touches::dryer:
      return step.task == Task::dry;
    case Touches::dog:
    case Touches::unsaid:
      break;
  }
  return false;
}

template <typename Work>
std::vector<Matter> found(std::span<const Caution> cautions, const Work& work) {
  std::vector<Caution> out;
  std::ranges::copy_if(cautions, std::back_inserter(out),
                       [&](const Caution& one) { return counts(one) && restrains(one, work); });
  return out.empty() ? std::vector<Matter>() : matters(out);
}
}  // namespace

bool restrains(const Caution& one, std::span<const Place> places) {
  const Touches touches = rule(one.rule).touches;
  return counts(one) && (touches == Touches::cut || touches == Touches::lay) &&
         any_meets(one.places, places);
}

std::vector<Matter> restraints(std::span<const Caution> cautions, std::span<const Place> places) {
  return found(cautions, places);
}
std::vector<Matter> restraints(std::span<const Caution> cautions, const WorkStep& step) {
  return found(cautions, step);
}

TrimEntry taken(const TrimPart& part, std::span<const Caution> cautions) {
  TrimEntry out = part.entry;
  const bool with_the_lay = std::ranges::any_of(cautions, [&](const Caution& one) {
    return rule(one.rule).touches == Touches::lay && restrains(one, std::span(&part.place, 1));
  });
  if (with_the_lay && out.lay != Lay::with) {
    out.lay = Lay::with;
    out.lay_given = false;
  }
  return out;
}

ResolvedTrim taken(const ResolvedTrim& trim, std::span<const Caution> cautions) {
  ResolvedTrim out = trim;
  for (TrimPart& part : out) {
    TrimEntry entry = taken(part, cautions);
    // What the style says there is not what the pet differs in.
    if (part.house && part.house->lay == part.entry.lay) {
      part.house->lay = entry.lay;
      part.house->lay_given = entry.lay_given;
    }
    part.entry = std::move(entry);
  }
  return out;
}
}  // namespace furnish
