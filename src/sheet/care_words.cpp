#include "sheet/care_words.h"

#include <algorithm>

#include "base/text.h"
#include "plan/places.h"
#include "sheet/alerts.h"
#include "sheet/shown.h"
#include "sheet/trim_lines.h"

namespace furnish {
namespace {
class HomeMaker {
 public:
  explicit HomeMaker(const CareDesk& desk)
      : desk_(desk), pet_(desk.input.pet), care_(desk.care.care) {}

  std::vector<SheetRow> all() {
    if (pet_.coat == Coat::hairless) row(Phrase::care_label_skin, {}, say(Phrase::way_bare));
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
    const auto day = [&](Date date) {
      return desk_.voice.locale.day_and_month(date, desk_.input.today);
    };
    row(Phrase::care_label_nails, {},
        care_.nails ? say(Phrase::care_nails_on, {day(*care_.nails)}) : say(Phrase::care_nails_us));
  }

  const CareDesk& desk_;
  const Pet& pet_;
  const HomeCare& care_;
  std::vector<SheetRow> rows_;
};
}  // namespace

namespace {
/// Where mats are left that no comb opens, that nobody brushes, wets or cuts them at home, and whom
/// to ask: the salon; of skin that tears, the vet. That the skin lies in the mat and is cut with
/// it: common practice, no source.
std::optional<AlertEntry> mats_left(const CareDesk& desk) {
  const SheetInput& input = desk.input;
  const SheetVoice& voice = desk.voice;
  std::vector<Place> places;
  for (const MattedPlace& one : input.plan.mats_left) places.push_back(one.place);
  if (places.empty()) return std::nullopt;
  const Words& words = voice.words;
  std::string to_do = words.say(Phrase::care_mats_left_skin);
  if (!input.plan.tearing_skin) to_do = words.say(Phrase::care_mats_left_do);
  return AlertEntry{Gravity::bar,
                    signal_word(Signal::caution, words),
                    words.say(Phrase::care_mats_left, {grouped_text(places, voice)}),
                    std::move(to_do),
                    {"mats left", input.pet.span}};
}
}  // namespace

std::vector<AlertEntry> care_alerts(const CareDesk& desk) {
  std::vector<AlertEntry> out = alert_entries(desk, CautionScope::none);
  if (auto mats = mats_left(desk)) {
    const auto lighter = std::ranges::find_if(
        out, [&](const AlertEntry& one) { return one.gravity > mats->gravity; });
    out.insert(lighter, *std::move(mats));
  }
  for (AlertEntry& one : out) one.role = Role::action;
  return out;
}

std::vector<SheetRow> care_at_home(const CareDesk& desk) {
  return HomeMaker(desk).all();
}

bool is_settled(const SheetDesk& desk) {
  const auto& next = desk.input.plan.next_visit;
  return next && (next->reason == DueReason::booked || next->reason == DueReason::agreed);
}

namespace {
/// Why the day is when it is, settled or not.
std::string reason(const SheetDesk& desk) {
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
    case DueReason::no_visit:
      return {};  // it is here
    case DueReason::booked:
      if (next->at) return words.say(Phrase::because_booked, {voice.locale.time(*next->at)});
      [[fallthrough]];
    case DueReason::agreed:
      return words.say(Phrase::because_agreed);
    case DueReason::owner_interval:
      if (const auto& every = input.pet.visit_every;
          every && every->value.months > 0 && every->value.days.count() == 0) {
        return words.say(Phrase::because_asked_months, {every->value.months});
      }
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
}  // namespace

std::string care_reason(const SheetDesk& desk) {
  const std::string why = reason(desk);
  if (why.empty() || is_settled(desk)) return why;
  return why + " " + desk.voice.words.say(Phrase::care_not_booked);
}

std::string care_advice(const SheetDesk& desk) {
  const auto& [input, voice] = desk;
  const auto& next = input.plan.next_visit;
  const auto first = std::ranges::find_if(input.plan.limits, [&](const LengthLimit& one) {
    return one.kind == LimitKind::keep_under && one.passed > input.today &&
           workable(one.place, input.pet.alerts);
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
  return voice.words.say(Phrase::advise_keep,
                         {voice.locale.day_and_month(first->passed, input.today),
                          shown(first->limit, voice), grouped_text(places, voice)});
}

std::string vet_text(const Vet& vet, const Words& words) {
  std::vector<std::string> out{words.written(vet.name), words.written(vet.phone)};
  std::erase(out, std::string());
  return out.empty() ? out.emplace_back() : words.say(Phrase::care_vet, {joined(out, "\u00A0· ")});
}

std::vector<std::string> care_contact(const Salon& salon) {
  std::vector<std::string> out{salon.phone, salon.email, joined(salon.address, ", ")};
  std::erase(out, std::string());
  return out;
}
}  // namespace furnish
