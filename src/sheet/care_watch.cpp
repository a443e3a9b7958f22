#include "base/text.h"
#include "sheet/care_words.h"
#include "sheet/shown.h"
#include "sheet/terms.h"
#include "sheet/trim_lines.h"

namespace furnish {
namespace {
/// What was found where, and what to do about it: the vet is called where nothing was advised.
CareSign care_finding(const OpenFinding& finding, const std::string& call, Date today,
                      const SheetVoice& voice) {
  const std::string where = capitalised(places_text({finding.place}, voice));
  const Date on = finding.seen.back();
  const OwnWords what = own_words(finding.what, voice),
                 advised = finding.seen_since ? OwnWords{} : own_words(finding.advised, voice);
  std::string advice = advised.text.empty() ? call : sentence(advised.text);
  if (finding.seen_since) {
    // What was advised may be done, and what was found is no longer so.
    advice =
        voice.words.say(Phrase::care_seen_since,
                        {voice.locale.long_date(on), voice.locale.long_date(*finding.seen_since)});
  } else if (!advised.text.empty() && advised.language.empty() && on != today) {
    // "Vet today" was said on its own day.
    if (advice.ends_with('.')) advice.pop_back();
    advice = voice.words.say(Phrase::care_said_on, {advice, voice.locale.long_date(on)});
  }
  if (what.language.empty()) {
    CareSign out{sentence(voice.words.say(Phrase::care_found, {where, what.text})), advice};
    if (!advised.language.empty()) {
      out.action = lead_in({}, advised.language, voice);
      out.apart = stand_apart({advice}, advised.language, voice);
    }
    return out;
  }
  if (!advised.language.empty()) {
    return {lead_in(where, what.language, voice),
            {},
            stand_apart({sentence(what.text), advice}, what.language, voice)};
  }
  // What is advised can be read, what was found cannot.
  return {voice.words.say(Phrase::care_end, {where, advice}), lead_in({}, what.language, voice),
          stand_apart({sentence(what.text)}, what.language, voice)};
}
}  // namespace

std::vector<CareSign> care_watch(const CareDesk& desk) {
  const Words& words = desk.voice.words;
  const std::string& name = desk.input.pet.name.value;
  const std::string call = words.say(Phrase::care_call), then = words.say(Phrase::watch_call);
  std::vector<CareSign> out;
  bool ear_mats = false;
  if (desk.care.visit != nullptr) {
    for (const RegionState& state : desk.care.visit->came_in.regions) {
      ear_mats |= desk.care.visit->work == Work::done && state.place.region == Region::ears &&
                  state.mats.value_or(0) > 0;
      if (!state.encircling) continue;
      out.push_back({words.say(Phrase::note_mat_round, {places_text({state.place}, desk.voice)}),
                     words.say(Phrase::note_mat_round_do)});
    }
  }
  for (const OpenFinding& finding : desk.input.plan.findings) {
    if (finding.audience == Audience::everyone)
      out.push_back(care_finding(finding, call, desk.input.today, desk.voice));
  }
  const Health& health = desk.input.plan.health;
  const WeightChange* const change = weight_lost(health);
  if (change != nullptr && health.weight) {
    out.insert(out.begin(),
               {words.say(Phrase::note_weight_lost, {shown(change->before.weight, desk.voice),
                                                     shown(health.weight->weight, desk.voice)}),
                words.say(Phrase::note_weight_lost_do)});
  }
  if (desk.care.care.bathed) {
    out.push_back({words.say(Phrase::watch_bath), words.say(Phrase::watch_bath_do)});
  }
  if (desk.care.care.heat) {
    out.push_back({words.say(Phrase::watch_heat), words.say(Phrase::watch_heat_do, {name})});
  }
  if (ear_mats) out.push_back({words.say(Phrase::watch_ears), then});
  out.push_back({words.say(Phrase::watch_skin), then});
  return out;
}
}  // namespace furnish
