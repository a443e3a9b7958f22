#include <algorithm>

#include "plan/caution_rules.h"
#include "plan/places.h"
#include "trade/skin.h"

namespace furnish {
namespace {
/// The first part that is cut where some of a place is; null if none is.
const TrimPart* cut_at(Place place, const Pet& pet) {
  const auto found = std::ranges::find_if(pet.trim, [&](const TrimPart& part) {
    const auto worked = workable(part.place, pet.alerts);
    return cuts(part.entry.tool) && worked && meets(*worked, place);
  });
  return found == pet.trim.end() ? nullptr : &*found;
}
}  // namespace

void find_finding_cautions(const CautionInput& in, Found& found) {
  for (const OpenFinding& finding : in.findings) {
    const TrimPart* const part =
        keeps_tools_off(finding.what.value) ? cut_at(finding.place, in.pet) : nullptr;
    if (part == nullptr) continue;
    Caution caution =
        make_caution(RuleId::found_there, finding.span,
                     {{}, {std::vector<Place>{finding.place}, finding.what, finding.seen.back()}});
    caution.places = {finding.place};
    caution.against = part->entry.span;
    found.push_back(std::move(caution));
  }
}
}  // namespace furnish
