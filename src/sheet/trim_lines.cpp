#include "sheet/trim_lines.h"

#include <algorithm>

#include "plan/places.h"
#include "plan/restraints.h"
#include "sheet/own_words.h"
#include "sheet/shown.h"
#include "sheet/terms.h"

namespace furnish {
namespace {
Phrase shears_phrase(Shears shears) {
  switch (shears) {
    case Shears::straight:
      return Phrase::shears_straight;
    case Shears::curved:
      return Phrase::shears_curved;
    case Shears::thinning:
      return Phrase::shears_thinning;
    case Shears::blending:
      break;
  }
  return Phrase::shears_blending;
}

bool together(const TrimPart& a, const TrimPart& b) {
  return same_work(a.entry, b.entry) && a.differs() == b.differs();
}

/// The group whose name the file wrote for all these parts; empty if it wrote each by itself.
std::optional<Group> written_group(const std::vector<const TrimPart*>& parts) {
  const auto group = parse_group(parts.front()->entry.written);
  if (!group || parts.size() < 2) return std::nullopt;
  const bool all = std::ranges::all_of(
      parts, [&](const TrimPart* part) { return part->entry.span == parts.front()->entry.span; });
  return all ? group : std::nullopt;
}
}  // namespace

ResolvedTrim worked_trim(const Pet& pet, std::span<const Caution> cautions) {
  ResolvedTrim out;
  for (const TrimPart& part : taken(pet.trim, cautions)) {
    const auto place = workable(part.place, pet.alerts);
    if (!place) continue;
    out.push_back(part);
    out.back().place = *place;
  }
  return out;
}

std::vector<Place> kept_from_tools(const Pet& pet) {
  std::vector<Place> out;
  for (const Alert& alert : pet.alerts) {
    for (const auto& [place, span] : alert.avoid) {
      const bool trimmed = std::ranges::any_of(
          pet.trim, [&](const TrimPart& part) { return meets(part.place, place); });
      if (trimmed && std::ranges::find(out, place) == out.end()) out.push_back(place);
    }
  }
  return out;
}

std::string tool_text(const Tool& tool, const SheetVoice& voice) {
  struct Say {
    const SheetVoice& voice;
    std::string operator()(Brush) const { return voice.words.say(Phrase::brush_out); }
    std::string operator()(Clip clip) const {
      return voice.words.say(Phrase::blade, {std::string(clip.blade->name)});
    }
    std::string operator()(CombOver comb) const {
      return voice.words.say(Phrase::comb_over,
                             {shown_comb(comb.comb, voice), std::string(comb.base->name)});
    }
    std::string operator()(Scissor s) const { return voice.words.say(shears_phrase(s.shears)); }
    std::string operator()(HandStrip s) const {
      return voice.words.say(s.with == Strip::hand ? Phrase::strip_hand : Phrase::strip_knife);
    }
  };
  return std::visit(Say{voice}, tool);
}

std::string work_text(const TrimEntry& entry, const SheetVoice& voice) {
  std::string out = tool_text(entry.tool, voice);
  if (entry.leave) out += comma(voice.words) + shown(*entry.leave, voice);
  if (entry.lay_given && entry.lay == Lay::with) {
    out += comma(voice.words) + voice.words.say(Phrase::lay_with);
  }
  if (entry.lay == Lay::across) out += comma(voice.words) + voice.words.say(Phrase::lay_across);
  if (entry.lay == Lay::against) out += comma(voice.words) + voice.words.say(Phrase::lay_against);
  return out;
}

std::string places_text(const std::vector<Place>& places, const SheetVoice& voice) {
  std::vector<std::string> names;
  for (const Place place : places) names.push_back(place_name(place, voice.words, voice.reader));
  return voice.locale.list(names);
}

std::vector<std::string> grouped_names(std::vector<Place> places, const SheetVoice& voice) {
  struct Named {
    Place first;
    std::string name;
  };
  std::vector<Named> named;
  for (const GroupInfo& group : groups()) {
    if (group.group == Group::furnishings) continue;  // it shares regions with the others
    const bool whole = std::ranges::all_of(group.members, [&](Region region) {
      return std::ranges::find(places, Place{region, Side::both}) != places.end();
    });
    if (!whole) continue;
    named.push_back(
        {{group.members.front(), Side::both}, group_name(group.group, voice.words, voice.reader)});
    std::erase_if(places, [&](Place place) { return in_group(place.region, group.group); });
  }
  for (const Place place : places)
    named.push_back({place, place_name(place, voice.words, voice.reader)});
  std::ranges::sort(named, {}, &Named::first);
  std::vector<std::string> names;
  for (Named& one : named) names.push_back(std::move(one.name));
  return names;
}

std::string grouped_text(std::vector<Place> places, const SheetVoice& voice) {
  return voice.locale.list(grouped_names(std::move(places), voice));
}

void name_line(TrimLine& line, const SheetVoice& voice) {
  std::vector<Place> places;
  for (const TrimPart* part : line.parts) places.push_back(part->place);
  const auto group = written_group(line.parts);
  line.places = group ? group_name(*group, voice.words, voice.reader) : grouped_text(places, voice);
  line.work = work_text(line.parts.front()->entry, voice);
  line.note = salons_words(line.parts.front()->entry.note, voice);
}

std::string length_change(const DrawerGap& gap, const SheetVoice& voice) {
  const Length by = gap.difference.value_or(Length{});
  if (by > Length{}) return voice.words.say(Phrase::longer_by, {shown(by, voice)});
  if (by < Length{}) return voice.words.say(Phrase::shorter_by, {shown(-by, voice)});
  const Length most = gap.apart_at_most;
  if (most > Length{}) return voice.words.say(Phrase::up_to_longer, {shown(most, voice)});
  if (most < Length{}) return voice.words.say(Phrase::up_to_shorter, {shown(-most, voice)});
  return voice.words.say(Phrase::same_length);
}

std::string drawer_text(const DrawerGap& gap, const SheetVoice& voice) {
  const std::string wanted = tool_text(gap.wanted, voice);
  if (!gap.use) return voice.words.say(Phrase::nothing_near, {wanted});
  return voice.words.say(Phrase::use_instead,
                         {wanted, tool_text(*gap.use, voice), length_change(gap, voice)});
}

std::vector<TrimLine> trim_lines(const ResolvedTrim& trim, const SheetVoice& voice) {
  std::vector<TrimLine> lines;
  for (const TrimPart& part : trim) {
    const auto same = std::ranges::find_if(
        lines, [&](const TrimLine& line) { return together(*line.parts.front(), part); });
    if (same != lines.end()) {
      same->parts.push_back(&part);
    } else {
      lines.push_back({{&part}, {}, {}, {}, part.differs()});
    }
  }
  for (TrimLine& line : lines) name_line(line, voice);
  return lines;
}
}  // namespace furnish
