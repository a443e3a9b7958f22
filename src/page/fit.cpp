#include "page/fit.h"

#include <algorithm>

namespace furnish {

Fit fit_column(std::span<const Spring> springs, Length room) {
  Length wanted, least;
  std::int64_t stretch = 0;
  for (const Spring& spring : springs) {
    wanted += spring.wanted;
    least += spring.least;
    stretch += spring.stretch;
  }
  Fit fit;
  if (least > room) {
    fit.status = Fit::Status::overflow;
    for (const Spring& spring : springs) fit.heights.push_back(spring.least);
    return fit;
  }
  const bool squeezed = wanted > room;
  fit.status = squeezed ? Fit::Status::squeezed : Fit::Status::roomy;
  // Each spring moves from one height towards another by the same share; what is handed out is the
  // difference of rounded running totals, so the sum is exact and no spring passes its least.
  const std::int64_t whole = squeezed ? (wanted - least).um() : stretch,
                     part = squeezed ? (room - least).um() : (room - wanted).um();
  std::int64_t before = 0;
  for (const Spring& spring : springs) {
    const Length base = squeezed ? spring.least : spring.wanted;
    const std::int64_t after =
        before + (squeezed ? (spring.wanted - spring.least).um() : spring.stretch);
    const std::int64_t share = whole > 0 ? part * after / whole - part * before / whole : 0;
    fit.heights.push_back(base + Length::micrometres(share));
    before = after;
  }
  return fit;
}
}  // namespace furnish
