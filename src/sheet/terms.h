#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "model/audience.h"
#include "model/finish.h"
#include "model/pet.h"
#include "sheet/words.h"
#include "trade/coat.h"
#include "trade/method.h"
#include "trade/region.h"

namespace furnish {

// What the trade's tables name, in the reader's words. The keys in a catalogue are those of the
// tables, with hyphens. Places, groups and finishes have plain words for owners beside the trade's.

/// Between the parts of a phrase, with the space after it: ", " and "; " in English.
std::string comma(const Words&);
std::string semicolon(const Words&);
std::string colon(const Words&);
/// "left hock", "belly, left"; for everyone "ankle of the left back leg".
std::string place_name(Place, const Words&, Audience = Audience::staff);
std::string group_name(Group, const Words&, Audience = Audience::staff);
std::string coat_name(Coat, const Words&);
std::string condition_name(Condition, const Words&);
/// What mats of a grade are: "mats that fingers and comb open".
std::string mat_grade_text(int grade, const Words&);
/// A part of the finish, inside a sentence: "ears".
std::string finish_part_name(FinishPart, const Words&);
/// A finish that the trade has a word for, in the reader's; other words as they were written.
std::string finish_text(FinishPart, std::string_view written, const Words&,
                        Audience = Audience::staff);
/// The line for a newer groomer.
std::string how_text(Method, const Words&);

/// Every key that term() may be asked for, as "section.key".
std::vector<std::string> term_keys();
}  // namespace furnish
