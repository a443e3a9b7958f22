#include "sheet/card_rows.h"

#include <algorithm>

#include "base/text.h"
#include "sheet/alerts.h"
#include "sheet/caution_words.h"
#include "sheet/mix_text.h"
#include "sheet/own_words.h"
#include "sheet/shown.h"
#include "sheet/terms.h"
#include "sheet/trim_lines.h"

namespace furnish {
namespace {
class RowMaker {
 public:
  explicit RowMaker(const SheetDesk& desk) : input_(desk.input), voice_(desk.voice) {}

  std::vector<SheetRow> all() {
    today();
    handle();
    trim();
    drawer();
    growth();
    bath();
    dry();
    finish();
    not_wanted();
    accepted();
    collects();
    owner();
    due();
    weight();
    return std::move(rows_);
  }

 private:
  const Pet& pet() const { return input_.pet; }
  std::string say(Phrase phrase, const std::vector<WordArgument>& arguments = {}) const {
    return voice_.words.say(phrase, arguments);
  }
  /// What a person wrote.
  std::string own(std::string_view text) const { return voice_.words.written(text); }

  SheetRow& row(Phrase label, std::vector<TextSpan> text, SourceSpan span) {
    return rows_.emplace_back(SheetRow{say(label), std::move(text), span});
  }

  void today() {
    if (!input_.booking) return;
    const Booking& booking = *input_.booking;
    std::string text = voice_.locale.time(booking.at);
    if (!booking.groomer.empty()) text += " · " + own(booking.groomer);
    std::vector<TextSpan> spans{{text, Face::semibold}};
    if (!booking.note.empty()) spans.push_back({" · " + own(booking.note)});
    row(Phrase::label_today, std::move(spans), booking.span).at_the_door = true;
  }

  void handle() {
    const Handling& handling = pet().handling;
    Sentences text;
    text.add_headed(say(Phrase::hold), own(handling.hold));
    text.add_headed(say(Phrase::lift), own(handling.lift));
    text.add_headed(say(Phrase::stop), own(handling.stop));
    if (handling.rest_every) {
      text.add_strong(sentence(say(Phrase::rest_every, {shown(*handling.rest_every, voice_)})));
    }
    if (!text.empty()) row(Phrase::label_handle, text.take(), pet().span).at_the_door = true;
  }

  void trim() {
    const auto lines = trim_lines(pet().trim, voice_);
    const bool styled = pet().style.has_value();
    const bool any_differs = std::ranges::any_of(lines, &TrimLine::differs);
    std::vector<TextSpan> head;
    if (styled) {
      head = {
          {say(any_differs ? Phrase::style_except : Phrase::style_only, {own(pet().style->name)}),
           Face::bold}};
    }
    SheetRow& made = row(Phrase::label_trim, std::move(head), pet().span);
    made.role = Role::action;
    for (const TrimLine& line : lines) {
      if (styled && !line.differs) continue;
      made.span = line.parts.front()->entry.span;
      SheetRow::Point point{{{capitalised(line.places), Face::semibold}, {": " + line.work}},
                            styled && line.differs};
      if (!line.note.empty()) point.text.push_back({semicolon(voice_.words) + line.note});
      made.points.push_back(std::move(point));
    }
    if (!styled && lines.empty()) made.hand_lines = {say(Phrase::no_trim)};
  }

  void drawer() {
    std::vector<SheetRow::Point> points;
    for (const DrawerGap& gap : input_.plan.drawer) {
      const TrimPart* part = find_part(pet().trim, gap.place);
      const std::string place = capitalised(place_name(gap.place, voice_.words));
      const std::string text = drawer_text(gap, voice_);
      // Parts of one entry share its answer; it is said once.
      const bool said = std::ranges::any_of(points, [&](const SheetRow::Point& point) {
        return point.text.back().text == ": " + text;
      });
      if (said || part == nullptr) continue;
      points.push_back({{{place, Face::semibold}, {": " + text}}, false});
    }
    if (points.empty()) return;
    row(Phrase::label_drawer, {}, input_.plan.drawer.front().span).points = std::move(points);
  }

  void growth() {
    std::vector<TextSpan> text;
    SourceSpan span;
    for (const KeepUnder& limit : pet().preferences.keep_under) {
      for (const RegionGrowth& region : input_.plan.growth) {
        if (!meets(region.place, limit.place)) continue;
        const auto days = days_until_over(region, limit.length);
        const std::string place = capitalised(place_name(limit.place, voice_.words));
        const std::string length = shown(limit.length, voice_);
        if (!text.empty()) text.push_back({" "});
        text.push_back(
            {sentence(days ? say(Phrase::grows_past,
                                 {place, length,
                                  voice_.locale.day_and_month(
                                      region.since + std::chrono::days(*days + 1), input_.today)})
                           : say(Phrase::stays_under, {place, length}))});
        span = limit.span;
        break;
      }
    }
    if (!text.empty()) row(Phrase::label_growth, std::move(text), span);
  }

  void bath() {
    const Bath& bath = pet().bath;
    if (bath.none) {
      row(Phrase::label_bath, {{say(Phrase::bath_none), Face::semibold}}, bath.span);
      return;
    }
    std::vector<TextSpan> text;
    if (bath.before) text.push_back({sentence(own(bath.before->value))});
    for (const Mix& mix : input_.plan.bath.mixes) {
      if (!text.empty()) text.push_back({" "});
      std::ranges::move(mix_text(mix, voice_, MixDetail::brief), std::back_inserter(text));
    }
    if (!text.empty()) row(Phrase::label_bath, std::move(text), bath.span);
  }

  void dry() {
    Sentences text;
    if (pet().bath.dry) text.add(own(pet().bath.dry->value));
    const std::string dryer = sentence(own(pet().handling.dryer));
    const bool said = pet().bath.dry && sentence(own(pet().bath.dry->value)) == dryer;
    if (!said) text.add_strong(dryer);
    if (text.empty()) return;
    row(Phrase::label_dry, text.take(),
        pet().bath.dry ? pet().bath.dry->span : pet().handling.dryer_span)
        .at_the_door = true;
  }

  void finish() {
    std::vector<TextSpan> text;
    SourceSpan span;
    // Bold means "not as the style says"; where the style says nothing, nothing stands out.
    const bool mixed = !std::ranges::all_of(pet().finish, &FinishLine::differs);
    for (const FinishLine& line : pet().finish) {
      if (!text.empty()) text.push_back({" · "});
      const auto face = line.differs && mixed ? std::optional(Face::semibold) : std::nullopt;
      // Extras say for themselves what they are.
      const std::string head = line.part == FinishPart::extras
                                   ? std::string()
                                   : finish_part_name(line.part, voice_.words) + " ";
      const std::string words = head + finish_words(line, voice_).text;
      text.push_back({text.empty() ? capitalised(words) : words, face});
      span = line.span;
    }
    if (!text.empty()) row(Phrase::label_finish, std::move(text), span);
  }

  void not_wanted() {
    std::vector<std::string> dislikes;
    for (const std::string& one : pet().preferences.dislikes) dislikes.push_back(own(one));
    if (!dislikes.empty()) {
      row(Phrase::label_not_wanted, {{capitalised(joined(dislikes, comma(voice_.words)))}},
          pet().span);
    }
  }

  void accepted() {
    Sentences text;
    SourceSpan span;
    for (const Caution& caution : input_.plan.cautions) {
      if (!caution.accepted || !belongs_on_card(caution)) continue;
      text.add(say(Phrase::accepted_on, {sentence(caution_text(caution.what, voice_)),
                                         voice_.locale.long_date(caution.accepted->signed_on),
                                         own(caution.accepted->reason)}));
      span = caution.accepted->span;
    }
    if (!text.empty()) row(Phrase::label_accepted, text.take(), span);
  }

  void collects() {
    const Owner& owner = pet().owner;
    std::vector<std::string> who;
    for (const std::string& one : owner.collects) who.push_back(own(one));
    if (who.empty() && !owner.name.empty()) who.push_back(own(owner.name));
    std::vector<TextSpan> text;
    if (!who.empty()) text.push_back({voice_.locale.either(who)});
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
      for (const std::string& one : pet().handling.comes_with) things.push_back(own(one));
      if (!text.empty()) text.push_back({". "});
      text.push_back({say(Phrase::comes_with, {voice_.locale.list(things)})});
    }
    SheetRow& made = row(Phrase::label_collects, std::move(text), pet().span);
    made.hand_lines = std::move(hand_lines);
    made.at_the_door = true;
  }

  void owner() {
    const Owner& owner = pet().owner;
    if (!input_.salon.contact_on_card) return;
    std::vector<std::string> parts{owner.name, owner.phone, owner.email};
    std::ranges::copy(owner.address, std::back_inserter(parts));
    std::erase(parts, std::string());
    for (std::string& part : parts) part = own(part);
    if (parts.empty()) return;
    row(Phrase::label_owner, {{joined(parts, " · ")}}, pet().span).at_the_door = true;
  }

  void weight() {
    if (!input_.plan.health.weight) {
      row(Phrase::label_weight, {}, pet().span).hand_lines = {say(Phrase::label_weight)};
    }
  }

  void due() {
    const auto& next = input_.plan.next_visit;
    // On the day itself the next date is still to be agreed.
    if (!next || next->date == input_.today || (next->date < input_.today && input_.booking)) {
      row(Phrase::label_due, {}, pet().span).hand_lines = {say(Phrase::hand_due)};
      return;
    }
    const std::string date = voice_.locale.day_and_month(next->date, input_.today);
    std::string text = date;
    if (next->overdue_days > 0) text = say(Phrase::due_overdue, {date, next->overdue_days});
    row(Phrase::label_due, {{capitalised(text), Face::bold}}, pet().span).at_the_door = true;
  }

  const SheetInput& input_;
  const SheetVoice& voice_;
  std::vector<SheetRow> rows_;
};
}  // namespace

std::vector<SheetRow> card_rows(const SheetDesk& desk) {
  return RowMaker(desk).all();
}

std::vector<std::string> card_ticks(const SheetDesk& desk) {
  const auto& [input, voice] = desk;
  const auto has = [&](Stage stage) {
    return std::ranges::any_of(input.plan.order,
                               [&](const WorkStep& step) { return step.stage == stage; });
  };
  const auto has_task = [&](Task task) {
    return std::ranges::any_of(input.plan.order,
                               [&](const WorkStep& step) { return step.task == task; });
  };
  std::vector<std::string> ticks{voice.words.say(Phrase::tick_in)};
  const auto add = [&](bool wanted, Phrase phrase) {
    if (wanted) ticks.push_back(voice.words.say(phrase));
  };
  add(has_task(Task::brush_out), Phrase::tick_brush_out);
  add(has(Stage::bath), Phrase::tick_bath);
  add(has(Stage::nails), Phrase::tick_nails);
  add(has(Stage::dry), Phrase::tick_dry);
  add(has(Stage::clip), Phrase::tick_clip);
  add(has(Stage::scissor), Phrase::tick_scissor);
  add(has(Stage::finish), Phrase::tick_finish);
  ticks.push_back(voice.words.say(Phrase::tick_check));
  return ticks;
}
}  // namespace furnish
