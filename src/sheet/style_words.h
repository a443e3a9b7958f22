#pragma once

#include <string>
#include <vector>

#include "sheet/parts.h"
#include "sheet/style_rows.h"

namespace furnish {

/// Who it is, in two lines: "Spitz cross, orange sable · double coat" and "male, neutered · 5 years
/// · 4.6 kg · Natural tidy".
std::vector<std::vector<TextSpan>> style_facts(const SheetDesk&);
/// How it is handled, what is to be looked at again, the last visit, health, and the owner's
/// wishes, in the owner's words.
std::vector<SheetRow> style_who(const SheetDesk&);
/// What to do when it does not go as planned, and whom to ask: what this pet, its coat and its plan
/// give reason for, and what holds for every dog.
std::vector<SheetRow> style_what_if(const SheetDesk&);
/// Two or three questions whose answers stand on the page.
std::vector<std::string> style_questions(const std::vector<StyleRow>&, const SheetDesk&);
}  // namespace furnish
