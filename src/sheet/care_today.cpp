#include <algorithm>
#include <tuple>

#include "base/text.h"
#include "plan/home_care.h"
#include "sheet/care_words.h"
#include "sheet/not_done.h"
#include "sheet/owner_work.h"
#include "sheet/terms.h"
#include "sheet/trim_lines.h"
#include "trade/finish.h"

// The first part of a care sheet: what was done. Only a visit on file says that something was done;
// without one all is said as planned, under a head that says so.

namespace furnish {
namespace {
bool seen_by_owner(Region region) {
  return region != Region::pads && region != Region::sanitary && region != Region::eyes &&
         region != Region::feet;
}

/// Places with the same work, and what is left there.
struct Worked {
  const TrimEntry* entry = nullptr;
  std::optional<LengthRange> left;
  std::vector<Place> places;

  bool is_cut() const { return !std::holds_alternative<Brush>(entry->tool); }
  bool is_clipped() const {
    return std::holds_alternative<Clip>(entry->tool) ||
           std::holds_alternative<CombOver>(entry->tool);
  }
};

class TodayMaker {
 public:
  explicit TodayMaker(const CareDesk& desk) : desk_(desk), pet_(desk.input.pet) {}

  std::vector<OwnLine> all() {
    if (visit() != nullptr && visit()->work == Work::not_done) {
      not_done();
    } else {
      bath();
      otherwise();
      trim();
      ends();
    }
    if (visit() != nullptr && !visit()->told.empty()) {
      points_.resize(std::min(points_.size(), most_points - 1));
      add_own({}, visit()->told);
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

  /// True if the file has the nails done, rather than left.
  bool nails_in_plan() const {
    const FinishLine* const line = find_line(pet_.finish, FinishPart::nails);
    if (line == nullptr) return false;
    const FinishInfo* const known = find_finish(FinishPart::nails, line->words.value);
    return known == nullptr || known->how != Method::nails_leave;
  }

  /// That it was not done comes first, then why, and the vet; what was done all the same after it.
  void not_done() {
    const Words& words = desk_.voice.words;
    OwnLine why = own_line(say(Phrase::not_done_why), visit()->not_done, desk_.voice);
    why.text = not_done_words(*visit(), pet_, words) + " " + why.text;
    points_.push_back(std::move(why));
    if (std::string vet = not_done_vet(*visit(), desk_); !vet.empty()) add(std::move(vet));
    const std::vector<std::string> parts = done_parts(*visit(), pet_, words);
    if (!parts.empty()) add(joined(parts, " "));
    otherwise();
  }

  /// A visit on file says by its products that there was a bath. Of the nails it says what it has;
  /// that they were done is nowhere else on record.
  void bath() {
    const std::string& name = pet_.name.value;
    if (visit() == nullptr) return planned_bath(name);
    const bool washed = was_bathed(*visit());
    if (bare()) {
      if (washed) add(say(Phrase::care_washed, {name}));
    } else {
      add(say(washed ? Phrase::care_bathed : Phrase::care_brushed, {name}));
    }
    if (!visit()->nails.empty()) {
      add_own(capitalised(finish_part_name(FinishPart::nails, desk_.voice.words)), visit()->nails);
    }
  }

  void planned_bath(const std::string& name) {
    std::string text;
    if (desk_.care.care.bathed) {
      text = say(bare() ? Phrase::care_plan_washed : Phrase::care_plan_bathed, {name});
    } else if (!bare()) {
      text = say(Phrase::care_plan_brushed, {name});
    }
    if (!text.empty()) add(std::move(text));
    if (nails_in_plan()) add(say(Phrase::care_plan_nails));
  }

  /// What was done otherwise, and why if that is for everyone; places of one work and one reason
  /// together.
  void otherwise() {
    if (visit() == nullptr) return;
    struct Other {
      std::string work;
      FreeText why;
      std::vector<Place> places;
    };
    std::vector<Other> others;
    for (const PlacedEntry& rule : visit()->done) {
      const std::string work =
          owner_work(rule.entry.tool, left_there(rule, desk_.input), desk_.voice);
      const auto same = std::ranges::find_if(
          others, [&](const Other& one) { return one.work == work && one.why == rule.entry.why; });
      if (same != others.end()) {
        same->places.push_back(rule.place);
      } else {
        others.push_back({work, rule.entry.why, {rule.place}});
      }
    }
    // The largest change first, should there be more than the page names.
    std::ranges::stable_sort(others, std::ranges::greater{},
                             [](const Other& one) { return one.places.size(); });
    for (const Other& one : others) {
      if (points_.size() + 2 > most_points) break;
      const OwnLine line = own_line({}, one.why, desk_.voice);
      const std::string text =
          say(Phrase::care_otherwise,
              {capitalised(grouped_text(one.places, desk_.voice)), one.work, line.text});
      points_.push_back({std::string(trimmed(text)), line.apart});
    }
  }

  /// What of a part went as planned; empty if the visit did something else to all of it, or no tool
  /// may touch it.
  std::optional<Place> as_planned(Place place) const {
    bool left = place.side != Side::right, right = place.side != Side::left;
    const auto leave_out = [&](Place other) {
      if (!meets(other, place)) return;
      left = left && other.side == Side::right;
      right = right && other.side == Side::left;
    };
    if (visit() != nullptr) {
      for (const PlacedEntry& rule : visit()->done) leave_out(rule.place);
    }
    for (const Alert& alert : pet_.alerts) {
      for (const Located<Place>& avoid : alert.avoid) leave_out(avoid.value);
    }
    if (left && right) return Place{place.region, Side::both};
    if (left || right) return Place{place.region, left ? Side::left : Side::right};
    return std::nullopt;
  }

  /// The largest of what was cut, and what was only brushed. What is clipped of a double coat is
  /// named to the last place, whatever its length: it may not grow back.
  void trim() {
    std::vector<Worked> all;
    std::size_t seen = 0;
    for (const TrimPart& part : pet_.trim) {
      const auto place = as_planned(part.place);
      if (!seen_by_owner(part.place.region) || !place) continue;
      ++seen;
      put(all, part.entry, *place);
    }
    std::ranges::stable_sort(all, std::ranges::greater{},
                             [](const Worked& one) { return one.places.size(); });
    const bool double_coat = pet_.coat == Coat::double_coat;
    for (const Worked& one : all) {
      if (double_coat && one.is_clipped()) say_worked(one, grouped_text(one.places, desk_.voice));
    }
    const auto cut = std::ranges::find_if(
        all, [&](const Worked& one) { return one.is_cut() && !(double_coat && one.is_clipped()); });
    if (cut != all.end()) say_worked(*cut, named(*cut, seen));
    const auto brushed = std::ranges::find_if_not(all, &Worked::is_cut);
    if (brushed != all.end() && !bare()) say_worked(*brushed, named(*brushed, seen));
  }

  void put(std::vector<Worked>& all, const TrimEntry& entry, Place place) const {
    Worked one{&entry, left_there({place, entry}, desk_.input), {place}};
    const bool no_length =
        std::holds_alternative<Brush>(entry.tool) || std::holds_alternative<HandStrip>(entry.tool);
    if (no_length) one.left.reset();
    const bool whole = pet_.coat == Coat::double_coat && one.is_clipped();
    const auto same = std::ranges::find_if(all, [&](const Worked& other) {
      return kind(other) == kind(one) && (whole || other.left == one.left);
    });
    if (same == all.end()) {
      all.push_back(std::move(one));
      return;
    }
    same->places.push_back(place);
    if (same->left && one.left) {
      same->left = LengthRange{std::min(same->left->low, one.left->low),
                               std::max(same->left->high, one.left->high)};
    }
  }

  /// Blade and comb are both the clipper.
  static std::size_t kind(const Worked& one) {
    return one.is_clipped() ? Tool(Clip{}).index() : one.entry->tool.index();
  }

  std::string named(const Worked& one, std::size_t seen) const {
    const bool most =
        one.places.size() * 2 > seen && grouped_names(one.places, desk_.voice).size() > most_names;
    return most ? say(Phrase::care_most) : grouped_text(one.places, desk_.voice);
  }

  void say_worked(const Worked& one, const std::string& where) {
    std::string text = say(
        Phrase::care_cut, {capitalised(where), owner_work(one.entry->tool, one.left, desk_.voice)});
    if (desk_.input.salon.tools_for_owners && one.is_cut()) {
      text += " (" + tool_text(one.entry->tool, desk_.voice) + ")";
    }
    add(std::move(text));
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
}  // namespace

std::vector<OwnLine> care_today(const CareDesk& desk) {
  if (desk.care.about == CareAbout::nothing) return {};
  return TodayMaker(desk).all();
}
}  // namespace furnish
