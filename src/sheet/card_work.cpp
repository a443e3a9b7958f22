#include <algorithm>
#include <map>
#include <tuple>

#include "base/text.h"
#include "plan/places.h"
#include "plan/restraints.h"
#include "sheet/accepted.h"
#include "sheet/alerts.h"
#include "sheet/card_rows.h"
#include "sheet/due.h"
#include "sheet/last_time.h"
#include "sheet/mix_text.h"
#include "sheet/own_words.h"
#include "sheet/restraint_text.h"
#include "sheet/shown.h"
#include "sheet/terms.h"
#include "sheet/trim_lines.h"

// The lower layer of a card: the work, and how the dog goes home.

namespace furnish {
namespace {
class WorkRows {
 public:
  WorkRows(const SheetDesk& desk, StyleLines lines)
      : desk_(desk), input_(desk.input), voice_(desk.voice), lines_(lines) {}

  std::vector<CardRow> all() {
    trim();
    drawer();
    bath();
    dry();
    finish();
    not_wanted();
    growth();
    accepted();
    collects();
    due();
    owner();
    weight();
    return std::move(rows_);
  }

 private:
  const Pet& pet() const { return input_.pet; }
  std::string say(Phrase phrase, const std::vector<WordArgument>& arguments = {}) const {
    return voice_.words.say(phrase, arguments);
  }
  std::string own(std::string_view text) const { return voice_.words.written(text); }

  CardRow& row(Phrase label, std::vector<TextSpan> text, SourceSpan span, Kept kept) {
    return rows_.emplace_back(CardRow{{say(label), std::move(text), span}, CardLayer::work, kept});
  }

  void trim() {
    const ResolvedTrim worked = worked_trim(pet(), input_.plan.cautions);
    const std::vector<Place> untouched = kept_from_tools(pet());
    const auto lines = trim_lines(worked, voice_);
    const bool styled = pet().style.has_value();
    const bool any_differs = std::ranges::any_of(lines, &TrimLine::differs);
    std::vector<TextSpan> head;
    if (styled) {
      head = {{say(any_differs || !untouched.empty() ? Phrase::style_except : Phrase::style_only,
                   {salons_words(pet().style->name, voice_)}),
               Face::bold}};
    }
    CardRow& made = row(Phrase::label_trim, std::move(head), pet().span, Kept::trim);
    made.role = Role::action;
    for (const TrimLine& line : lines) {
      if (styled && !line.differs) continue;
      made.span = line.parts.front()->entry.span;
      SheetRow::Point point{
          {{capitalised(line.places), Face::semibold}, {colon(voice_.words) + line.work}},
          styled && line.differs};
      if (!line.note.empty()) point.text.push_back({semicolon(voice_.words) + line.note});
      add_restraints(point.text, line);
      made.points.push_back(std::move(point));
    }
    if (!untouched.empty()) {
      made.points.push_back({{{capitalised(grouped_text(untouched, voice_)), Face::semibold},
                              {colon(voice_.words) + uncapitalised(say(Phrase::no_tool))}},
                             styled});
    }
    if (!styled && lines.empty()) made.hand_lines = {say(Phrase::no_trim)};
  }

  /// Beside the line that they touch: what stands among the alerts is not said twice.
  void add_restraints(std::vector<TextSpan>& text, const TrimLine& line) const {
    std::vector<Place> places;
    for (const TrimPart* const part : line.parts) places.push_back(part->place);
    for (const Matter& matter : restraints(input_.plan.cautions, places)) {
      const bool told = std::ranges::any_of(matter.cautions, belongs_on_card);
      text.push_back({semicolon(voice_.words)});
      std::ranges::move(
          told ? restraint_words({&matter, 1}, desk_) : restraint_text({&matter, 1}, places, desk_),
          std::back_inserter(text));
    }
  }

  void drawer() {
    std::vector<SheetRow::Point> points;
    for (const DrawerGap& gap : input_.plan.drawer) {
      const TrimPart* part = find_part(pet().trim, gap.place);
      const std::string place = capitalised(place_name(gap.place, voice_.words));
      const std::string text = drawer_text(gap, voice_);
      // Parts of one entry share its answer; it is said once.
      const bool said = std::ranges::any_of(points, [&](const SheetRow::Point& point) {
        return point.text.back().text == colon(voice_.words) + text;
      });
      if (said || part == nullptr) continue;
      points.push_back({{{place, Face::semibold}, {colon(voice_.words) + text}}, false});
    }
    if (points.empty()) return;
    row(Phrase::label_drawer, {}, input_.plan.drawer.front().span, Kept::plan).points =
        std::move(points);
  }

  /// Whether the coat passes what it is to stay under before the next visit; then what to do
  /// about it, and no other date for that.
  void growth() {
    Sentences text(voice_.words);
    SourceSpan span = pet().span;
    for (const KeepUnder& limit : pet().preferences.keep_under) {
      for (const RegionGrowth& region : now_growing()) {
        if (!meets(region.place, limit.place)) continue;
        const auto days = days_until_over(region, limit.length);
        const std::string place = capitalised(place_name(limit.place, voice_.words));
        const std::string length = shown(limit.length, voice_);
        if (!days) {
          text.add(say(Phrase::stays_under, {place, length}));
        } else {
          const Date over = region.since + std::chrono::days(*days + 1);
          const Phrase says = over <= input_.today ? Phrase::grown_past
                              : before_next(over)  ? Phrase::limit_keep
                                                   : Phrase::grows_past;
          text.add(say(says, {place, length, voice_.locale.day_and_month(over, input_.today)}));
        }
        span = limit.span;
        break;
      }
    }
    text.add(mats_from());
    if (!text.empty()) row(Phrase::label_growth, text.take(), span, Kept::history);
  }

  /// Counted from today's trim where the card is about that.
  const std::vector<RegionGrowth>& now_growing() const {
    const auto& after = input_.plan.after_today;
    return after ? after->growth : input_.plan.growth;
  }

  /// After today and before the pet comes again.
  bool before_next(Date day) const {
    const auto& [next, after] = std::tie(input_.plan.next_visit, input_.plan.after_today);
    std::optional<Date> until;
    if (next) until = next->then ? next->then->date : next->date;
    if (after && after->next) until = after->next;
    return day > input_.today && until && day < *until;
  }

  /// The first places that will be long enough to mat quickly before the next visit; once the dog
  /// is here that is for the owner's page to say.
  std::string mats_from() const {
    if (input_.plan.after_today) return {};
    const LengthLimit* first = nullptr;
    std::vector<Place> places;
    for (const LengthLimit& limit : input_.plan.limits) {
      if (limit.kind != LimitKind::mat_prone || !before_next(limit.passed)) continue;
      if (first == nullptr) first = &limit;
      if (limit.passed == first->passed && limit.limit == first->limit) {
        places.push_back(limit.place);
      }
    }
    if (first == nullptr) return {};
    std::string text = sentence(say(
        Phrase::limit_mats, {capitalised(grouped_text(places, voice_)), shown(first->limit, voice_),
                             voice_.locale.day_and_month(first->passed, input_.today)}));
    std::map<Date, std::vector<Place>> later;
    for (const LengthLimit& limit : input_.plan.limits) {
      const bool other = limit.passed != first->passed || limit.limit != first->limit;
      if (limit.kind == LimitKind::mat_prone && other && before_next(limit.passed)) {
        later[limit.passed].push_back(limit.place);
      }
    }
    std::vector<std::string> more;
    for (const auto& [day, those] : later) {
      more.push_back(say(Phrase::limit_later, {grouped_text(those, voice_),
                                               voice_.locale.short_day(day, input_.today)}));
    }
    if (!more.empty()) text += ' ' + sentence(joined(more, semicolon(voice_.words)));
    return text;
  }

  void bath() {
    const Bath& bath = pet().bath;
    if (bath.none) {
      row(Phrase::label_bath, {{say(Phrase::bath_none), Face::semibold}}, bath.span, Kept::work);
      return;
    }
    Sentences first(voice_.words);
    first_cut(first);
    if (bath.before) first.add(salons_words(bath.before->value, voice_));
    std::vector<TextSpan> text = first.take();
    for (const Mix& mix : input_.plan.bath.mixes) {
      if (!text.empty()) text.push_back({" "});
      std::ranges::move(mix_text(mix, voice_, MixDetail::brief), std::back_inserter(text));
    }
    add_bath_restraints(text);
    if (!text.empty()) row(Phrase::label_bath, std::move(text), bath.span, Kept::work);
  }

  /// What no alert of the card says of what is in the tub.
  void add_bath_restraints(std::vector<TextSpan>& text) const {
    for (const WorkStep& step : input_.plan.order) {
      const bool elsewhere =
          step.task == Task::cut || step.task == Task::finish || step.task == Task::nails;
      if (elsewhere) continue;
      for (const Matter& matter : restraints(input_.plan.cautions, step)) {
        if (std::ranges::any_of(matter.cautions, belongs_on_card)) continue;
        if (!text.empty()) text.push_back({" "});
        std::ranges::move(restraint_text({&matter, 1}, {}, desk_), std::back_inserter(text));
        text.push_back({"."});
      }
    }
  }

  /// What is cut on the unwashed coat; no places if that is all that is cut.
  void first_cut(Sentences& text) const {
    std::vector<Place> before;
    bool all = true;
    for (const WorkStep& step : input_.plan.order) {
      if (step.task != Task::cut) continue;
      all = all && step.before_bath;
      if (step.before_bath) std::ranges::copy(step.places, std::back_inserter(before));
    }
    if (before.empty()) return;
    std::ranges::sort(before);
    const std::string head = say(Phrase::clip_unwashed);
    if (all) return text.add_strong(sentence(head));
    text.add_headed(head, grouped_text(before, voice_));
  }

  /// What the dryer must not do is said where the dog is handled, and here for who only dries.
  void dry() {
    Sentences text(voice_.words);
    text.add(drying_text(desk_));
    if (text.empty()) return;
    text.add_strong(sentence(dryer_text(desk_)));
    row(Phrase::label_dry, text.take(), input_.plan.drying.span, Kept::work);
  }

  void finish() {
    std::vector<TextSpan> text;
    SourceSpan span;
    // Bold means "not as the style says"; where the style says nothing, nothing stands out.
    const bool mixed = !std::ranges::all_of(pet().finish, &FinishLine::differs);
    const bool few = lines_ == StyleLines::differing && mixed && pet().style;
    bool any = false;
    for (const FinishLine& line : pet().finish) {
      span = line.span;
      const bool restrained = line.part == FinishPart::nails && !nail_restraints().empty();
      if (few && !line.differs && !restrained) continue;
      if (std::exchange(any, true)) text.push_back({" · "});
      const auto face = line.differs && mixed ? std::optional(Face::semibold) : std::nullopt;
      const std::string end = finish_words(line, voice_).text;
      // Extras say for themselves what they are.
      const std::string words =
          line.part == FinishPart::extras
              ? end
              : say(Phrase::finish_as, {finish_part_name(line.part, voice_.words), end});
      text.push_back({text.empty() && !few ? capitalised(words) : words, face});
      if (line.part == FinishPart::nails) add_nail_restraints(text);
    }
    if (few) {
      const std::string style = salons_words(pet().style->name, voice_);
      text.insert(text.begin(), {any ? say(Phrase::style_except, {style}) + " "
                                     : say(Phrase::style_only, {style})});
    }
    if (!text.empty()) row(Phrase::label_finish, std::move(text), span, Kept::work);
  }

  std::vector<Matter> nail_restraints() const {
    WorkStep nails;
    nails.task = Task::nails;
    return restraints(input_.plan.cautions, nails);
  }
  void add_nail_restraints(std::vector<TextSpan>& text) const {
    for (const Matter& matter : nail_restraints()) {
      text.push_back({semicolon(voice_.words)});
      std::ranges::move(restraint_text({&matter, 1}, {}, desk_), std::back_inserter(text));
    }
  }

  void not_wanted() {
    std::vector<std::string> dislikes;
    for (const std::string& one : pet().preferences.dislikes) {
      dislikes.push_back(salons_words(one, voice_));
    }
    if (!dislikes.empty()) {
      row(Phrase::label_not_wanted, {{capitalised(joined(dislikes, comma(voice_.words)))}},
          pet().span, Kept::plan);
    }
    if (dislikes.empty() && pet().preferences.likes.empty() && is_new_client(input_)) {
      row(Phrase::label_wishes, {}, pet().span, Kept::hand).asks = true;
    }
  }

  void accepted() {
    if (auto text = accepted_row(desk_, CautionScope::card)) {
      row(Phrase::label_accepted, std::move(text->text), text->span, Kept::history);
    }
  }

  /// Else no "and" of the page's stands between words of another language.
  bool in_salons_language() const {
    return voice_.salon_language.empty() ||
           same_language(voice_.salon_language, voice_.words.language());
  }

  void collects() {
    const Owner& owner = pet().owner;
    std::vector<std::string> who;
    for (const std::string& one : owner.collects) who.push_back(own(one));
    if (who.empty() && !owner.name.empty()) who.push_back(own(owner.name));
    std::vector<TextSpan> text;
    if (!who.empty())
      text.push_back(
          {in_salons_language() ? voice_.locale.either(who) : joined(who, comma(voice_.words))});
    std::vector<std::string> hand_lines;
    if (input_.booking && input_.booking->collect) {
      if (!text.empty()) text.push_back({comma(voice_.words)});
      text.push_back(
          {say(Phrase::collects_at, {voice_.locale.time(*input_.booking->collect)}), Face::bold});
    } else {
      hand_lines.push_back(say(Phrase::hand_collects));
    }
    if (!pet().handling.comes_with.empty()) {
      std::vector<std::string> things;
      for (const std::string& one : pet().handling.comes_with) {
        things.push_back(salons_words(one, voice_));
      }
      if (!text.empty()) text.push_back({". "});
      text.push_back(
          {say(Phrase::comes_with, {in_salons_language() ? voice_.locale.list(things)
                                                         : joined(things, comma(voice_.words))})});
    }
    CardRow& made = row(Phrase::label_collects, std::move(text), pet().span, Kept::door);
    made.hand_lines = std::move(hand_lines);
    made.with_next = true;
  }

  void owner() {
    const Owner& owner = pet().owner;
    if (owner.vet.name.empty() && owner.vet.phone.empty() && is_new_client(input_)) {
      row(Phrase::label_vet, {}, pet().span, Kept::hand).asks = true;
    }
    if (!input_.salon.contact_on_card) return;
    std::vector<std::string> parts{owner.name, owner.phone, owner.email};
    std::ranges::copy(owner.address, std::back_inserter(parts));
    std::erase(parts, std::string());
    for (std::string& part : parts) part = own(part);
    if (!parts.empty()) {
      row(Phrase::label_owner, {{joined(parts, " · ")}}, pet().span, Kept::door);
    }
    std::vector<std::string> vet{own(owner.vet.name), own(owner.vet.phone)};
    std::erase(vet, std::string());
    if (!vet.empty()) {
      row(Phrase::label_vet, {{joined(vet, " · ")}}, pet().span, Kept::door);
    }
  }

  void weight() {
    if (!input_.plan.health.weight) {
      row(Phrase::label_weight, {}, pet().span, Kept::hand).hand_lines = {
          say(Phrase::label_weight)};
    }
  }

  void due() {
    SheetRow next = due_row(desk_);
    // About when it should be may go over; the line on which the day is written stays.
    const Kept about = next.text.empty() ? Kept::hand : Kept::advice,
               kept = next.at_the_door ? Kept::door : about;
    rows_.push_back(CardRow{std::move(next), CardLayer::work, kept});
  }

  const SheetDesk& desk_;
  const SheetInput& input_;
  const SheetVoice& voice_;
  StyleLines lines_;
  std::vector<CardRow> rows_;
};
}  // namespace

std::vector<CardRow> work_rows(const SheetDesk& desk, StyleLines lines) {
  return WorkRows(desk, lines).all();
}
}  // namespace furnish
