#include "sheet/care_words.h"

#include <algorithm>
#include <array>

#include "base/text.h"
#include "plan/places.h"
#include "sheet/alerts.h"
#include "sheet/shown.h"
#include "sheet/trim_lines.h"

namespace furnish {
namespace {
Phrase often(HowOften how) {
  constexpr std::array phrases{Phrase::often_never, Phrase::often_weekly, Phrase::often_three,
                               Phrase::often_other, Phrase::often_daily};
  return phrases[static_cast<std::size_t>(how)];
}

Phrase way(Coat coat) {
  constexpr std::array phrases{Phrase::way_double, Phrase::way_curly, Phrase::way_drop,
                               Phrase::way_drop,   Phrase::way_wire,  Phrase::way_smooth,
                               Phrase::way_bare};
  return phrases[static_cast<std::size_t>(coat)];
}

class HomeMaker {
 public:
  explicit HomeMaker(const CareDesk& desk)
      : desk_(desk), pet_(desk.input.pet), care_(desk.care.care) {}

  std::vector<SheetRow> all() {
    brush();
    bath();
    nails();
    row(Phrase::care_label_ears, {}, say(Phrase::care_ears));
    row(Phrase::care_label_feet, {}, say(Phrase::care_feet));
    for (const FreeText& note : pet_.home.notes) {
      OwnLine line = own_line({}, note, desk_.voice);
      row(Phrase::care_label_also, {}, std::move(line.text));
      rows_.back().apart = std::move(line.apart);
    }
    return std::move(rows_);
  }

 private:
  std::string say(Phrase phrase, const std::vector<WordArgument>& arguments = {}) const {
    return desk_.voice.words.say(phrase, arguments);
  }
  /// `strong` begins the text.
  void put(std::string label, std::string strong, std::string text) {
    SheetRow& made = rows_.emplace_back(SheetRow{std::move(label), {}, pet_.span});
    const bool both = !strong.empty() && !text.empty();
    if (!strong.empty()) made.text.push_back({std::move(strong), Face::semibold});
    if (both) made.text.push_back({" "});
    if (!text.empty()) made.text.push_back({std::move(text)});
  }
  void row(Phrase label, std::string strong, std::string text) {
    put(say(label), std::move(strong), std::move(text));
  }

  void brush() {
    if (!pet_.coat) return;
    if (*pet_.coat == Coat::hairless) {
      row(Phrase::care_label_skin, {}, say(Phrase::way_bare));
      return;
    }
    if (care_.zones.empty()) return;  // no brush may go anywhere
    // The largest zone is "all the rest" where the others have names, and stands last.
    std::vector<const BrushZone*> zones;
    for (const BrushZone& zone : care_.zones) zones.push_back(&zone);
    const auto largest = std::ranges::max_element(
        zones, {}, [](const BrushZone* zone) { return zone->places.size(); });
    std::rotate(largest, largest + 1, zones.end());
    for (const BrushZone* zone : zones) {
      const auto names = grouped_names(zone->places, desk_.voice);
      const bool rest = zone == zones.back() && names.size() > most_names;
      std::string where = capitalised(desk_.voice.locale.list(names));
      if (rest) where = but_for_avoided(say(Phrase::care_the_rest));
      if (zones.size() == 1) where = but_for_avoided(say(Phrase::care_all_over));
      std::string strong = say(Phrase::care_zone, {where, say(often(zone->now))});
      std::string text;
      if (zone->from) {
        text = say(Phrase::care_zone_then,
                   {day(*zone->from), say(often(zone->then)), shown(*zone->limit, desk_.voice)});
      }
      const bool first = zone == zones.front();
      put(first ? say(Phrase::care_label_brush) : std::string(), std::move(strong),
          std::move(text));
    }
    std::string how = say(way(*pet_.coat));
    if (care_.shedding) how += " " + say(Phrase::care_shedding);
    row(Phrase::care_label_how, {}, how);
    if (info(*pet_.coat).brush_before_water || info(*pet_.coat).mats) {
      row(Phrase::care_label_spots, {}, spots());
    }
  }

  /// What is named as a whole has no place in it that an alert lets no tool touch.
  std::string but_for_avoided(std::string where) const {
    if (care_.avoided.empty()) return where;
    return say(Phrase::care_except, {where, places_text(care_.avoided, desk_.voice)});
  }

  /// "Wednesday, 12 December".
  std::string day(Date date) const {
    return desk_.voice.locale.day_and_month(date, desk_.input.today);
  }

  /// Where mats begin; what does not grow on this dog is not named.
  std::string spots() const {
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

  void bath() {
    if (!care_.bath) return;
    const HomeBathPlan& bath = *care_.bath;
    const int days = static_cast<int>(bath.every.count());
    const std::string every = days % 7 == 0 ? say(Phrase::care_bath_every, {days / 7})
                                            : say(Phrase::care_bath_days, {days});
    std::string text;
    if (bath.mix) {
      text = say(Phrase::care_bath_mix, {shown(bath.mix->product, desk_.voice), bath.product,
                                         shown(bath.mix->water, desk_.voice)});
    } else if (!bath.product.empty()) {
      text = say(Phrase::care_bath_with, {bath.product});
    }
    row(Phrase::care_label_bath, every,
        text + (text.empty() ? "" : " ") + say(Phrase::care_bath_brush));
  }

  void nails() {
    row(Phrase::care_label_nails, {},
        care_.nails ? say(Phrase::care_nails_on, {day(*care_.nails)}) : say(Phrase::care_nails_us));
  }

  const CareDesk& desk_;
  const Pet& pet_;
  const HomeCare& care_;
  std::vector<SheetRow> rows_;
};
}  // namespace

std::vector<AlertEntry> care_alerts(const CareDesk& desk) {
  std::vector<AlertEntry> out = alert_entries(desk, CautionScope::none);
  for (AlertEntry& one : out) one.role = Role::action;
  return out;
}

std::vector<SheetRow> care_at_home(const CareDesk& desk) {
  return HomeMaker(desk).all();
}

std::string care_reason(const SheetDesk& desk) {
  const auto& [input, voice] = desk;
  const auto& next = input.plan.next_visit;
  if (!next) return {};
  const Words& words = voice.words;
  const auto days = static_cast<int>((next->wanted - next->last.value_or(input.today)).count());
  const auto place = [&] {
    return next->place ? places_text({*next->place}, voice) : std::string();
  };
  const auto limit = [&] { return next->limit ? shown(*next->limit, voice) : std::string(); };
  switch (next->reason) {
    case DueReason::first_visit:
      return {};  // it is here
    case DueReason::booked:
      if (next->at) return words.say(Phrase::because_booked, {voice.locale.time(*next->at)});
      [[fallthrough]];
    case DueReason::agreed:
      return words.say(Phrase::because_agreed);
    case DueReason::owner_interval:
      return days % 7 == 0 ? words.say(Phrase::because_asked, {days / 7})
                           : words.say(Phrase::because_asked_days, {days});
    case DueReason::coat_interval:
      return words.say(Phrase::because_coat, {days / 7});
    case DueReason::keep_under:
      return words.say(Phrase::because_keep, {place(), limit()});
    case DueReason::mat_prone:
      break;
  }
  return words.say(Phrase::because_mats, {limit()});
}

std::string care_advice(const SheetDesk& desk) {
  const auto& [input, voice] = desk;
  const auto& next = input.plan.next_visit;
  const auto first = std::ranges::find_if(input.plan.limits, [&](const LengthLimit& one) {
    return one.passed > input.today && workable(one.place, input.pet.alerts);
  });
  if (!next || first == input.plan.limits.end() || first->passed >= next->date) return {};
  std::vector<Place> places;
  for (const LengthLimit& one : input.plan.limits) {
    const bool same =
        one.passed == first->passed && one.kind == first->kind && one.limit == first->limit;
    if (!same) continue;
    if (const auto place = workable(one.place, input.pet.alerts)) places.push_back(*place);
  }
  if (places.empty()) return {};
  const Phrase phrase =
      first->kind == LimitKind::mat_prone ? Phrase::advise_mats : Phrase::advise_keep;
  return voice.words.say(phrase, {voice.locale.day_and_month(first->passed, input.today),
                                  shown(first->limit, voice), grouped_text(places, voice)});
}

std::vector<std::string> care_contact(const Salon& salon) {
  std::vector<std::string> out{salon.phone, salon.email, joined(salon.address, ", ")};
  std::erase(out, std::string());
  return out;
}
}  // namespace furnish
