#include "sheet/not_done.h"

#include <algorithm>

#include "sheet/told_words.h"

namespace furnish {

std::string not_done_words(const Visit& visit, const Pet& pet, const Words& words) {
  const bool some = !visit.did.empty() || !visit.done.empty();
  return some ? words.say(Phrase::not_all_done)
              : words.say(Phrase::not_done_says, {pet.name.value});
}

std::vector<std::string> done_parts(const Visit& visit, const Pet& pet, const Words& words) {
  std::vector<std::string> out;
  for (const DonePart part : visit.did) {
    switch (part) {
      case DonePart::bath:
        out.push_back(
            words.say(pet.coat == Coat::hairless ? Phrase::care_washed : Phrase::part_bath,
                      {pet.name.value}));
        break;
      case DonePart::brushing:
        out.push_back(words.say(Phrase::care_brushed, {pet.name.value}));
        break;
      case DonePart::nails:
        out.push_back(words.say(Phrase::part_nails));
        break;
    }
  }
  return out;
}

std::string not_done_vet(const Visit& visit, const SheetDesk& desk) {
  const SheetVoice& voice = desk.voice;
  const FreeText& why = visit.not_done;
  // Whichever of the page's and the salon's languages it was written in.
  const auto asks = [&](const std::string& text) {
    return asks_for_vet(text, voice.words) ||
           (voice.salon_words != nullptr && asks_for_vet(text, *voice.salon_words));
  };
  const bool vet = asks(why.value) || std::ranges::any_of(why.others, [&](const FreeText::In& one) {
                     return asks(one.text);
                   });
  return vet ? voice.words.say(Phrase::not_done_vet, {desk.input.pet.name.value}) : std::string();
}

std::vector<NoteLine> not_done_lines(const NoteDesk& desk) {
  const Words& words = desk.voice.words;
  const Visit& visit = desk.note.visit;
  if (desk.staff()) {
    OwnLine why = own_line({}, visit.not_done, desk.voice);
    return {{{{why.text, Face::semibold}}, std::move(why.apart)}};
  }
  OwnLine why = own_line(words.say(Phrase::not_done_why), visit.not_done, desk.voice);
  std::vector<NoteLine> out{
      {{{not_done_words(visit, desk.input.pet, words), Face::semibold}, {" " + why.text}},
       std::move(why.apart)}};
  if (std::string vet = not_done_vet(visit, desk); !vet.empty()) {
    out.push_back({{{std::move(vet), Face::semibold}}});
  }
  return out;
}
}  // namespace furnish
