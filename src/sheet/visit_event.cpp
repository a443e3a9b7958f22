#include "sheet/visit_event.h"

#include "base/said_in.h"
#include "sheet/care_words.h"

namespace furnish {

std::string visit_summary(const SheetDesk& desk) {
  const auto& [input, voice] = desk;
  const std::string& salon = input.salon.name;
  return without_languages(
      salon.empty() ? voice.words.say(Phrase::event_title, {input.pet.name.value})
                    : voice.words.say(Phrase::event_title_at, {input.pet.name.value, salon}));
}

std::string visit_description(const SheetDesk& desk) {
  const auto& [input, voice] = desk;
  std::string out = care_reason(desk);
  for (const std::string& one : care_contact(input.salon)) {
    out += (out.empty() ? "" : "\n") + one;
  }
  return without_languages(out);
}
}  // namespace furnish
