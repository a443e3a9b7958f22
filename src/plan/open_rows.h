#pragma once

#include <string>
#include <vector>

#include "base/measures.h"
#include "plan/plan.h"

namespace furnish {

/// What last time left behind, as rows of label and words for plan_text(): mats, behaviour, what
/// was done otherwise, told, agreed, consents, photos.
std::vector<std::vector<std::string>> last_visit_rows(const LastVisit&, Units);
/// A row for every finding that is still open, with the days on which it was seen.
std::vector<std::vector<std::string>> finding_rows(const std::vector<OpenFinding>&);
}  // namespace furnish
