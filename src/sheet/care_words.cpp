#include "sheet/care_words.h"

#include <algorithm>
#include <array>
#include <map>

#include "base/text.h"
#include "sheet/alerts.h"
#include "sheet/shown.h"
#include "sheet/terms.h"
#include "sheet/trim_lines.h"

namespace furnish {
namespace {
/// Three to five points are read (a hospital's plain-language checklist).
constexpr std::size_t most_points = 5;
/// So many names an owner still reads; more of them are "most of the coat", or "all the rest".
constexpr std::size_t most_names = 4;

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

/// What was left of the parts an owner looks at, by what is left there.
struct LeftAt {
  std::vector<Place> full;  ///< brushed, or its natural length
  std::map<std::pair<Length, Length>, std::vector<Place>> cut;
};

bool seen_by_owner(Region region) {
  return region != Region::pads && region != Region::sanitary && region != Region::eyes &&
         region != Region::feet;
}

class TodayMaker {
 public:
  explicit TodayMaker(const CareDesk& desk) : desk_(desk), pet_(desk.input.pet) {}

  std::vector<OwnLine> all() {
    bath();
    otherwise();
    trim();
    ends();
    if (desk_.care.visit != nullptr && !desk_.care.visit->told.empty()) {
      points_.resize(std::min(points_.size(), most_points - 1));
      add_own({}, desk_.care.visit->told);
    }
    points_.resize(std::min(points_.size(), most_points));
    return std::move(points_);
  }

 private:
  std::string say(Phrase phrase, const std::vector<WordArgument>& arguments = {}) const {
    return desk_.voice.words.say(phrase, arguments);
  }
  void add(std::string text) { points_.push_back({std::move(text)}); }
  void add_own(const std::string& head, const FreeText& text) {
    points_.push_back(own_line(head, text, desk_.voice));
  }

  const Visit* visit() const { return desk_.care.visit; }
  bool bare() const { return pet_.coat == Coat::hairless; }

  /// A visit on file says by its products that there was a bath, and what became of the nails;
  /// where none is on file, all went as planned.
  void bath() {
    const std::string& name = pet_.name.value;
    const bool washed = visit() != nullptr ? !visit()->products.empty() : desk_.care.care.bathed;
    const bool nails = find_line(pet_.finish, FinishPart::nails) != nullptr &&
                       (visit() == nullptr || visit()->nails.empty());
    if (bare()) {
      if (washed) add(say(Phrase::care_washed, {name}));
      if (nails) add(say(Phrase::care_nails_done));
    } else if (washed) {
      add(say(nails ? Phrase::care_bathed_nails : Phrase::care_bathed, {name}));
    } else {
      add(say(nails ? Phrase::care_brushed_nails : Phrase::care_brushed, {name}));
    }
    if (visit() != nullptr && !visit()->nails.empty()) {
      add_own(capitalised(finish_part_name(FinishPart::nails, desk_.voice.words)), visit()->nails);
    }
  }

  /// What was done otherwise, all places of one reason together.
  void otherwise() {
    if (visit() == nullptr) return;
    std::vector<std::pair<FreeText, std::vector<Place>>> reasons;
    for (const PlacedEntry& rule : visit()->done) {
      const auto same = std::ranges::find(reasons, rule.entry.why,
                                          [](const auto& reason) { return reason.first; });
      if (same != reasons.end()) {
        same->second.push_back(rule.place);
      } else {
        reasons.push_back({rule.entry.why, {rule.place}});
      }
    }
    // The largest change first, should there be more than the page names.
    std::ranges::stable_sort(reasons, std::ranges::greater{},
                             [](const auto& reason) { return reason.second.size(); });
    for (const auto& [why, places] : reasons) {
      if (points_.size() + 2 > most_points) break;
      const OwnLine line = own_line({}, why, desk_.voice);
      const std::string text =
          say(Phrase::care_otherwise, {capitalised(grouped_text(places, desk_.voice)), line.text});
      points_.push_back({std::string(trimmed(text)), line.apart});
    }
  }

  void trim() {
    LeftAt left;
    std::size_t seen = 0;
    for (const RegionGrowth& row : desk_.input.plan.growth) {
      if (!seen_by_owner(row.place.region)) continue;
      ++seen;
      const bool natural = row.natural && row.left.high >= *row.natural;
      if (natural) {
        left.full.push_back(row.place);
      } else {
        left.cut[{row.left.low, row.left.high}].push_back(row.place);
      }
    }
    const auto most_of_it = [&](const std::vector<Place>& places) {
      return places.size() * 2 > seen && grouped_names(places, desk_.voice).size() > most_names;
    };
    if (!left.full.empty() && !bare()) {
      add(most_of_it(left.full) ? say(Phrase::care_full_most)
                                : say(Phrase::care_full, {grouped_text(left.full, desk_.voice)}));
    }
    // The length that most of the coat has now.
    const auto most =
        std::ranges::max_element(left.cut, {}, [](const auto& one) { return one.second.size(); });
    if (most != left.cut.end()) {
      const std::string where = most_of_it(most->second)
                                    ? say(Phrase::care_most)
                                    : capitalised(grouped_text(most->second, desk_.voice));
      std::string text =
          say(Phrase::care_cut,
              {where, shown(LengthRange{most->first.first, most->first.second}, desk_.voice)});
      const TrimPart* const part = find_part(pet_.trim, most->second.front());
      if (desk_.input.salon.tools_for_owners && part != nullptr) {
        text += " (" + tool_text(part->entry.tool, desk_.voice) + ")";
      }
      add(std::move(text));
    }
  }

  /// How ears and tail end, unless the visit did something else there.
  void ends() {
    const bool told = visit() != nullptr && !visit()->told.empty();
    if (points_.size() + (told ? 1 : 0) >= most_points) return;  // the page names no more
    if (visit() != nullptr && !visit()->finish.empty()) {
      add_own({}, visit()->finish);
      return;
    }
    std::string text;
    std::vector<OwnLine> apart;
    for (const FinishPart part : {FinishPart::ears, FinishPart::tail}) {
      const FinishLine* const line = find_line(pet_.finish, part);
      const bool otherwise =
          visit() != nullptr && std::ranges::any_of(visit()->done, [&](const PlacedEntry& rule) {
            return finish_part(rule.place.region) == part;
          });
      if (line == nullptr || otherwise) continue;
      const std::string name = finish_part_name(part, desk_.voice.words);
      OwnLine own = own_line(capitalised(name), finish_words(*line, desk_.voice), desk_.voice);
      if (!own.apart.empty()) {
        apart.push_back(std::move(own));
        continue;
      }
      if (!text.empty()) text += ' ';
      text += own.text;
    }
    if (!text.empty()) add(text);
    std::ranges::move(apart, std::back_inserter(points_));
  }

  const CareDesk& desk_;
  const Pet& pet_;
  std::vector<OwnLine> points_;
};

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
    if (care_.zones.empty()) {
      row(Phrase::care_label_skin, {}, say(Phrase::way_bare));
      return;
    }
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
      if (rest) where = say(Phrase::care_the_rest);
      if (zones.size() == 1) where = say(Phrase::care_all_over);
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
    return say(Phrase::care_spots, {desk_.voice.locale.list(names)}) + " " +
           say(Phrase::care_no_scissors);
  }

  void bath() {
    if (!care_.bath) return;
    const HomeBathPlan& bath = *care_.bath;
    const int weeks = static_cast<int>((bath.every.count() + 3) / 7);
    std::string text;
    if (bath.mix) {
      text = say(Phrase::care_bath_mix, {shown(bath.mix->product, desk_.voice), bath.product,
                                         shown(bath.mix->water, desk_.voice)});
    } else if (!bath.product.empty()) {
      text = say(Phrase::care_bath_with, {bath.product});
    }
    row(Phrase::care_label_bath, say(Phrase::care_bath_every, {weeks}),
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

std::vector<OwnLine> care_today(const CareDesk& desk) {
  return TodayMaker(desk).all();
}

std::vector<SheetRow> care_at_home(const CareDesk& desk) {
  return HomeMaker(desk).all();
}

std::string care_reason(const SheetDesk& desk) {
  const auto& [input, voice] = desk;
  const auto& next = input.plan.next_visit;
  if (!next) return {};
  const Words& words = voice.words;
  const auto weeks = [&] {
    const auto days = (next->wanted - next->last.value_or(input.today)).count();
    return static_cast<int>((days + 3) / 7);
  };
  const auto place = [&] {
    return next->place ? places_text({*next->place}, voice) : std::string();
  };
  const auto limit = [&] { return next->limit ? shown(*next->limit, voice) : std::string(); };
  switch (next->reason) {
    case DueReason::first_visit:
      return {};  // it is here
    case DueReason::booked:
    case DueReason::agreed:
      return words.say(Phrase::because_agreed);
    case DueReason::owner_interval:
      return words.say(Phrase::because_asked, {weeks()});
    case DueReason::coat_interval:
      return words.say(Phrase::because_coat, {weeks()});
    case DueReason::keep_under:
      return words.say(Phrase::because_keep, {place(), limit()});
    case DueReason::mat_prone:
      break;
  }
  return words.say(Phrase::because_mats, {limit()});
}

std::vector<std::string> care_contact(const Salon& salon) {
  std::vector<std::string> out{salon.phone, salon.email, joined(salon.address, ", ")};
  std::erase(out, std::string());
  return out;
}
}  // namespace furnish
