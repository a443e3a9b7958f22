#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sheet/parts.h"
#include "sheet/style_rows.h"

namespace furnish {

/// Who it is, in two lines: "Spitz cross, orange sable · double coat" and "male, neutered · 5 years
/// · 4.6 kg · Natural tidy".
std::vector<std::vector<TextSpan>> style_facts(const SheetDesk&);
/// What the finished dog looks like, under its style's name; empty if no style says.
std::optional<SheetRow> style_looks(const SheetDesk&);
/// How to hold, lift and dry it, when to stop and to let it rest, a row each.
std::vector<SheetRow> style_handling(const SheetDesk&);
/// What is to be looked at again, health, and the owner's wishes, in the owner's words.
std::vector<SheetRow> style_who(const SheetDesk&);
/// The last three visits before the day, newest first, of which the newest hands on what to mind.
std::vector<SheetRow> style_visits(const SheetDesk&);
/// What to do when it does not go as planned, and whom to ask: what this pet, its coat and its plan
/// give reason for, and what holds for every dog.
std::vector<SheetRow> style_what_if(const SheetDesk&);
/// A question to who takes over, and what they should answer, which stands on the front.
struct ReadBack {
  std::string question;
  std::vector<TextSpan> answer;
};
/// Two or three of them.
std::vector<ReadBack> style_read_back(const std::vector<StyleRow>&, const SheetDesk&);
}  // namespace furnish
