#include "plan/open_findings.h"

#include <algorithm>

#include "base/text.h"

namespace furnish {
namespace {
/// What it is, without how it looked that day: "still sore, no longer warm" is "sore".
std::string thing(std::string_view what) {
  std::string out = lower_ascii(trimmed(what.substr(0, what.find_first_of(",;:("))));
  for (const std::string_view again : {"still ", "again ", "same ", "the "}) {
    if (out.starts_with(again)) out.erase(0, again.size());
  }
  return out;
}

/// One says no more than the beginning of the other, in whole words.
bool same_thing(std::string_view one, std::string_view other) {
  const std::string a = thing(one), b = thing(other);
  const std::string& shorter = a.size() < b.size() ? a : b;
  const std::string& longer = a.size() < b.size() ? b : a;
  if (shorter.empty()) return longer.empty();
  return longer.starts_with(shorter) &&
         (longer.size() == shorter.size() || longer[shorter.size()] == ' ');
}

Side other(Side side) {
  return side == Side::left ? Side::right : Side::left;
}

/// Closes what is at `place`; of a pair the side that is named. `what` is empty for all of it.
void close(std::vector<OpenFinding>& open, Place place, std::string_view what) {
  std::erase_if(open, [&](OpenFinding& one) {
    if (!meets(one.place, place) || !(what.empty() || same_thing(what, one.what.value)))
      return false;
    const bool half =
        info(place.region).paired && one.place.side == Side::both && place.side != Side::both;
    if (half) one.place.side = other(place.side);
    return !half;
  });
}

void see_again(OpenFinding& known, const Finding& finding, Date day) {
  // Words that nobody must read stay so, also when the other half of the line is newer.
  const bool keeps_advice = finding.advised.empty() && !known.advised.empty();
  const bool staff =
      finding.audience == Audience::staff || (keeps_advice && known.audience == Audience::staff);
  known.audience = staff ? Audience::staff : Audience::everyone;
  known.what = finding.what;
  if (!keeps_advice) known.advised = finding.advised;
  if (known.seen.back() != day) known.seen.push_back(day);
  known.span = finding.span;
  known.seen_since.reset();
}

/// What staff alone may read of tells the rest only that it was looked at.
void see_unsaid(std::vector<OpenFinding>& open, const Finding& finding, Date day) {
  for (OpenFinding& one : open) {
    if (meets(one.place, finding.place.value) && same_thing(one.what.value, finding.what.value)) {
      one.seen_since = day;
    }
  }
}

void see(std::vector<OpenFinding>& open, const Finding& finding, Date day) {
  bool known = false;
  for (OpenFinding& one : open) {
    if (!meets(one.place, finding.place.value) || !same_thing(one.what.value, finding.what.value))
      continue;
    see_again(one, finding, day);
    known = true;
  }
  if (known) return;
  open.push_back({finding.place.value,
                  finding.what,
                  finding.advised,
                  finding.audience,
                  {day},
                  finding.span,
                  {}});
}

/// Of what `reader` may read.
std::vector<OpenFinding> open_to(Audience reader, std::span<const Visit* const> history) {
  std::vector<OpenFinding> open;
  for (const Visit* const visit : history) {
    for (const Place place : visit->came_in.well) close(open, place, {});
    for (const Finding& finding : visit->findings) {
      if (finding.closed) {
        close(open, finding.place.value, finding.what.value);
      } else if (reader == Audience::staff || finding.audience == Audience::everyone) {
        see(open, finding, visit->date.value);
      } else {
        see_unsaid(open, finding, visit->date.value);
      }
    }
  }
  return open;
}
}  // namespace

std::vector<OpenFinding> open_findings(std::span<const Visit* const> history) {
  return open_to(Audience::staff, history);
}

std::vector<OpenFinding> open_for_everyone(std::span<const Visit* const> history) {
  return open_to(Audience::everyone, history);
}
}  // namespace furnish
