#include <algorithm>
#include <array>

#include "base/text.h"
#include "sheet/care_words.h"
#include "sheet/shown.h"
#include "sheet/terms.h"
#include "sheet/trim_lines.h"

// How a care sheet says what an owner brushes, and when.

namespace furnish {
namespace {
Phrase way(Coat coat) {
  constexpr std::array phrases{Phrase::way_double, Phrase::way_curly, Phrase::way_drop,
                               Phrase::way_drop,   Phrase::way_wire,  Phrase::way_smooth,
                               Phrase::way_bare};
  return phrases[static_cast<std::size_t>(coat)];
}

class RoutineMaker {
 public:
  explicit RoutineMaker(const CareDesk& desk)
      : desk_(desk), pet_(desk.input.pet), care_(desk.care.care) {}

  CareRoutine make() {
    CareRoutine out;
    gather();
    const auto largest =
        std::ranges::max_element(rhythms_, {}, [](const Rhythm& one) { return one.places.size(); });
    for (const Rhythm& one : rhythms_) {
      const std::string where = rhythms_.size() == 1 ? all_over() : named(one, &one == &*largest);
      const std::string often = capitalised(often_text(one.often, desk_.voice.words));
      out.rhythms.push_back({one.often, say(Phrase::care_zone, {often, where})});
    }
    out.later = later();
    out.way = say(way(*pet_.coat));
    if (care_.shedding) out.way += " " + say(Phrase::care_shedding);
    if (info(*pet_.coat).brush_before_water || info(*pet_.coat).mats) out.mats = mats();
    return out;
  }

 private:
  struct Rhythm {
    HowOften often;
    std::vector<Place> places;  ///< none: all over
  };

  std::string say(Phrase phrase, const std::vector<WordArgument>& arguments = {}) const {
    return desk_.voice.words.say(phrase, arguments);
  }

  /// Zones that are brushed alike now are one rhythm, whatever happens to them later.
  void gather() {
    for (const BrushZone& zone : care_.zones) {
      const auto alike = std::ranges::find(rhythms_, zone.now, &Rhythm::often);
      Rhythm& into = alike != rhythms_.end() ? *alike : rhythms_.emplace_back(Rhythm{zone.now, {}});
      std::ranges::copy(zone.places, std::back_inserter(into.places));
      std::ranges::sort(into.places);
    }
  }

  /// The largest is "all the rest" where the others have names.
  std::string named(const Rhythm& one, bool largest) const {
    const auto names = grouped_names(one.places, desk_.voice);
    if (!largest || names.size() <= most_names) return desk_.voice.locale.list(names);
    return but_for_avoided(uncapitalised(say(Phrase::care_the_rest)));
  }

  std::string all_over() const {
    return but_for_avoided(uncapitalised(say(Phrase::care_all_over)));
  }

  /// What is named as a whole has no place in it that an alert lets no tool touch.
  std::string but_for_avoided(const std::string& where) const {
    if (care_.avoided.empty()) return where;
    return say(Phrase::care_except, {where, grouped_text(care_.avoided, desk_.voice)});
  }

  /// One sentence, with its date.
  std::string later() const {
    const auto zone = std::ranges::find_if(
        care_.zones, [](const BrushZone& one) { return one.from.has_value(); });
    if (zone == care_.zones.end()) return {};
    const bool all = std::ranges::all_of(care_.zones, [&](const BrushZone& other) {
      return how_often(other, *zone->from) == zone->then;
    });
    const std::string where =
        all ? all_over() : desk_.voice.locale.list(grouped_names(zone->places, desk_.voice));
    const std::string often = often_text(zone->then, desk_.voice.words);
    return say(Phrase::care_zone_then,
               {desk_.voice.locale.day_and_month(*zone->from, desk_.input.today),
                often + comma(desk_.voice.words) + where, shown(*zone->limit, desk_.voice)});
  }

  /// Where mats begin; what does not grow on this dog is not named.
  std::string mats() const {
    std::vector<std::string> names{say(Phrase::spot_ears), say(Phrase::spot_armpits),
                                   say(Phrase::spot_collar), say(Phrase::spot_groin)};
    const bool breeches = std::ranges::any_of(desk_.input.plan.growth, [](const auto& row) {
      return row.place.region == Region::breeches;
    });
    if (breeches) names.push_back(say(Phrase::spot_breeches));
    names.push_back(say(Phrase::spot_toes));
    return say(Phrase::care_spots, {desk_.voice.locale.list(names)}) + " " + stuck_comb();
  }

  /// Skin that tears is a vet's; of other mats the salon is asked first, whose number stands there.
  std::string stuck_comb() const {
    if (desk_.input.plan.tearing_skin) return say(Phrase::care_no_scissors_skin);
    std::string out = say(Phrase::care_no_scissors);
    const std::string& phone = desk_.input.salon.phone;
    if (!phone.empty()) {
      out += " " + say(Phrase::care_our_number, {desk_.voice.words.written(phone)});
    }
    return out;
  }

  const CareDesk& desk_;
  const Pet& pet_;
  const HomeCare& care_;
  std::vector<Rhythm> rhythms_;
};
}  // namespace

std::string often_text(HowOften how, const Words& words) {
  constexpr std::array phrases{Phrase::often_never, Phrase::often_weekly, Phrase::often_three,
                               Phrase::often_other, Phrase::often_daily};
  return words.say(phrases[static_cast<std::size_t>(how)]);
}

std::optional<CareRoutine> care_routine(const CareDesk& desk) {
  const auto& coat = desk.input.pet.coat;
  if (!coat || *coat == Coat::hairless || desk.care.care.zones.empty()) return std::nullopt;
  return RoutineMaker(desk).make();
}

std::vector<SheetRow> routine_rows(const CareRoutine& routine, const CareDesk& desk) {
  const Words& words = desk.voice.words;
  std::vector<SheetRow> out;
  const auto add = [&](Phrase label, std::vector<TextSpan> text) {
    out.push_back({words.say(label), std::move(text), desk.input.pet.span});
  };
  for (const CareRoutine::Rhythm& one : routine.rhythms) {
    add(Phrase::care_label_brush, {{one.text, Face::semibold}});
    if (&one != routine.rhythms.data()) out.back().label.clear();
  }
  if (!routine.later.empty()) out.back().text.push_back({" " + routine.later});
  add(Phrase::care_label_how, {{routine.way}});
  if (!routine.mats.empty()) add(Phrase::care_label_spots, {{routine.mats}});
  return out;
}
}  // namespace furnish
