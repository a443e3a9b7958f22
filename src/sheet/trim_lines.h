#pragma once

#include <span>
#include <string>
#include <vector>

#include "model/pet.h"
#include "sheet/sheet.h"

namespace furnish {

/// Several places with the same work, as one line says it.
struct TrimLine {
  std::vector<const TrimPart*> parts;
  std::string places;  ///< "chest", "body", "hocks and left ear"
  std::string work;    ///< "thinning shears, 30 mm"
  std::string note;
  bool differs = false;
};

/// What of the trim tools may work on, and how: what an alert keeps from them is no part of it, and
/// a direction that a caution forbids is not said, whatever the style or the pet says.
ResolvedTrim worked_trim(const Pet&, std::span<const Caution>);
/// The places of the trim that an alert keeps every tool from, in the order of the file.
std::vector<Place> kept_from_tools(const Pet&);

/// Sets places, work and note from the line's parts.
void name_line(TrimLine&, const SheetVoice&);
/// What a substitute leaves against the tool that is not there: "3 mm longer", "same length".
std::string length_change(const DrawerGap&, const SheetVoice&);
/// "no ⅜ in comb over #30, use #4F (same length)".
std::string drawer_text(const DrawerGap&, const SheetVoice&);
/// The trim with places of equal work together, in order of their first place. A whole group that
/// the file names stays under that name.
std::vector<TrimLine> trim_lines(const ResolvedTrim&, const SheetVoice&);
/// "thinning shears", "½ in comb over #30".
std::string tool_text(const Tool&, const SheetVoice&);
/// What is done, in the reader's words: tool, length, lay.
std::string work_text(const TrimEntry&, const SheetVoice&);
/// "avoid" places and others, as a list of the reader's language.
std::string places_text(const std::vector<Place>&, const SheetVoice&);
/// The same with a whole group under its own name: "body, legs and left ear".
std::string grouped_text(std::vector<Place>, const SheetVoice&);
/// Its parts, one a name.
std::vector<std::string> grouped_names(std::vector<Place>, const SheetVoice&);
}  // namespace furnish
