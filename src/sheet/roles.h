#pragma once

#include <vector>

#include "base/paper.h"
#include "model/salon.h"
#include "page/type.h"

namespace furnish {

/// Papers in three classes, by how near they are read.
enum class PaperClass : std::uint8_t { small, middle, large };
/// By width: under 115 mm small (A6, 4 × 6 in), under 160 mm middle (A5, half letter, 5 × 8 in).
PaperClass paper_class(const Paper&);

/// Reading distances of a sheet that hangs: a card on the kennel's door. A name at 3, 2 or 1.2 m by
/// class, alerts at 1.2, 1 or 0.7 m, what to do at 0.8, 0.7 or 0.5 m, all else at 0.6, 0.6 or 0.45
/// m, the foot at 0.4, 0.4 or 0.35 m; the salon's own where it has set them.
std::vector<TypeRole> hanging_roles(const Paper&, const ReadingDistances&);

/// Reading distances of a sheet that is read in the hand, at the table or the desk: the name at
/// 1.5 m, alerts at 0.7 m, heads and what to do about alerts at 0.6 m, all else at 0.5 m, the foot
/// at 0.4 m; the salon's own where it has set them.
std::vector<TypeRole> hand_roles(const Paper&, const ReadingDistances&);

/// Reading distances of a sheet on the wall: the title at 3 m, what to do at 1 m, why at 0.7 m, and
/// sources and the foot at 0.5 m; the salon's own where it has set them. Grows to twice that where
/// there is room.
std::vector<TypeRole> wall_roles(const Paper&, const ReadingDistances&);

/// Reading distances of a day on the wall: the date at 1.5 m, hours and names at 1 m, what can hurt
/// at 0.6 m, and at 0.5 m what is read where one stands to tick; the salon's own where it has set
/// them. Grows to twice that where there is room.
std::vector<TypeRole> day_roles(const Paper&, const ReadingDistances&);

/// The same for the sheet at the table, which is glanced at between two cuts: all that runs on is
/// 10.5 pt or more (half a point over what is legible at 0.5 m; common practice, no source).
std::vector<TypeRole> table_roles(const Paper&, const ReadingDistances&);

/// The same as in hand for an owner's page on the fridge: body 12 pt or more, heads 16 pt or more
/// (a hospital's plain-language checklist: body 12 to 14, headings 16 to 18), and up to 24′, the
/// most for running text (NUREG-0700 rev. 2, 1.3.1-4), where there is room.
std::vector<TypeRole> fridge_roles(const Paper&, const ReadingDistances&);
/// Of a list that lies beside a telephone: its text is read from 0.6 m.
std::vector<TypeRole> desk_roles(const Paper&, const ReadingDistances&);
}  // namespace furnish
