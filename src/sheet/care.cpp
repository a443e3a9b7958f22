#include "sheet/care.h"

#include <algorithm>

#include "base/text.h"
#include "figure/calendar_strip.h"
#include "figure/qr.h"
#include "page/forms.h"
#include "page/list.h"
#include "page/rows.h"
#include "page/run_in_alerts.h"
#include "page/stack.h"
#include "sheet/calendar_words.h"
#include "sheet/care_picture.h"
#include "sheet/care_words.h"
#include "sheet/pieces.h"
#include "sheet/terms.h"

namespace furnish {
namespace {
/// Modules of 0.6 mm, which are read at 100 dots an inch; where room is short, of 0.49.
constexpr Length large_side = 42_mm, small_side = 34_mm;
/// A calendar of more weeks would fill the page.
constexpr std::chrono::days longest_strip{20 * 7};

/// How much room the page takes.
struct CareForm {
  bool roomy;
  CarePicture::Form picture;
  std::size_t calendar_rows;  ///< of a single column
  bool told_only = false;     ///< of what was done only what the owner is told of it
  Length code = large_side;   ///< side of the code for the phone
};

class CareMaker {
 public:
  CareMaker(const CareDesk& desk, std::optional<QrCode> code)
      : desk_(desk),
        words_(desk.voice.words),
        locale_(desk.voice.locale),
        code_(std::move(code)),
        routine_(care_routine(desk)) {
    if (routine_) picture_.emplace(*routine_, desk_);
  }

  /// With what is said of mats beside the picture, as long as that is not too long for it.
  CareForm form(bool roomy, Length dog, std::size_t weeks) const {
    return {roomy,
            {.least = dog, .dog_share = roomy ? 6 : 5, .words_share = two_rhythms() ? 7 : 6},
            weeks};
  }
  CareForm closest() const {
    return {false,
            {.least = 34_mm, .dog_share = 2, .words_share = 5, .mats = !two_rhythms()},
            5,
            false,
            small_side};
  }
  /// Two signs a day want the wide cells of a single column.
  std::size_t weeks() const {
    return two_rhythms() || (routine_ && !routine_->later.empty()) ? 9 : 5;
  }
  /// What was done stands on the other side: at the fridge what is to be done comes first.
  CareForm short_of_today() const {
    CareForm out = closest();
    out.told_only = true;
    return out;
  }

  BlockPtr make(const CareForm& form) const { return column(page(form)); }

  std::vector<BlockPtr> page(const CareForm& form) const {
    std::vector<BlockPtr> blocks = front(form);
    put(blocks, section(words_.say(Phrase::care_head_watch), watch()), form.roomy);
    blocks.push_back(section(words_.say(Phrase::care_head_back), come_back(form)));
    return blocks;
  }

  /// What was done, but for what the owner is told; in pieces.
  std::vector<BlockPtr> rest_of_today() const {
    std::vector<BlockPtr> out;
    put_list(out, head_today(), today(Told::left_out));
    return out;
  }

  /// The pet, what was done, and what is to be done at home.
  std::vector<BlockPtr> front(const CareForm& form) const {
    std::vector<BlockPtr> blocks{head()};
    if (auto alerts = care_alerts(desk_); !alerts.empty()) {
      blocks.push_back(std::make_shared<RunInAlerts>(std::move(alerts), rule_name));
    } else {
      blocks.push_back(std::make_shared<Rule>(rule_name));
    }
    blocks.push_back(gap(0.5));
    if (const auto points = today(form.told_only ? Told::only : Told::too); !points.empty()) {
      put(blocks, section(head_today(), list(points)), form.roomy);
    }
    put(blocks, section(home_title(), at_home(form)), form.roomy);
    if (auto days = strip(form)) {
      blocks.push_back(with_code(std::move(days), form.code));
      blocks.push_back(gap(form.roomy ? 0.8 : 0.6));
    }
    return blocks;
  }

  /// What the other side has: what to look out for, and when to come back.
  std::vector<BlockPtr> rest() const {
    std::vector<BlockPtr> out;
    std::vector<BlockPtr> signs;
    for (const CareSign& sign : care_watch(desk_)) signs.push_back(point(sign));
    put_list(out, words_.say(Phrase::care_head_watch), signs);
    out.push_back(section(words_.say(Phrase::care_head_back), come_back(form(true, {}, 9))));
    return out;
  }

  /// All of the sheet in pieces.
  std::vector<BlockPtr> all() const {
    std::vector<BlockPtr> out = plain_head(desk_.input.pet, facts());
    for (AlertEntry& entry : care_alerts(desk_)) {
      out.push_back(std::make_shared<RunInAlerts>(std::vector{std::move(entry)}));
    }
    put_list(out, head_today(), today(Told::too));
    bool first = true;
    std::vector<SheetRow> rows = care_at_home(desk_);
    if (routine_) {
      std::vector<SheetRow> brushing = routine_rows(*routine_, desk_);
      rows.insert(rows.begin(), std::move_iterator(brushing.begin()),
                  std::move_iterator(brushing.end()));
    }
    for (const SheetRow& row : cut(rows)) {
      const BlockPtr text = as_text(row, Face::semibold);
      out.push_back(first ? section(home_title(), text) : text);
      first = false;
    }
    if (auto days = strip(form(true, {}, 9))) {
      out.push_back(with_code(std::move(days), large_side));
    }
    std::ranges::move(rest(), std::back_inserter(out));
    return out;
  }

  FootText foot() const {
    std::vector<std::string> who = contact();
    if (const std::string& salon = desk_.input.salon.name; !salon.empty()) {
      who.insert(who.begin(), words_.written(salon));
    }
    if (who.size() > 2) who.resize(2);
    return {joined(who, "\u00A0· "), words_.say(Phrase::care_no_vet)};
  }

 private:
  bool two_rhythms() const { return routine_ && routine_->rhythms.size() > 1; }

  /// How the salon is reached, as the page says it.
  std::vector<std::string> contact() const {
    std::vector<std::string> out = care_contact(desk_.input.salon);
    for (std::string& one : out) one = words_.written(one);
    return out;
  }
  static void put(std::vector<BlockPtr>& to, BlockPtr block, bool roomy) {
    to.push_back(std::move(block));
    to.push_back(gap(roomy ? 0.8 : 0.6));
  }

  /// A list of which each point is a piece; its title stays with the first.
  void put_list(std::vector<BlockPtr>& to, const std::string& title,
                const std::vector<BlockPtr>& points) const {
    for (const BlockPtr& one : points) {
      to.push_back(&one == points.data() ? section(title, list({one})) : list({one}));
    }
  }

  BlockPtr head() const { return sheet_head(desk_.input.pet, facts(), 6_mm); }

  std::vector<std::vector<TextSpan>> facts() const {
    const SheetInput& input = desk_.input;
    std::vector<std::vector<TextSpan>> facts;
    if (!input.salon.name.empty()) facts.push_back({{input.salon.name, Face::semibold}});
    facts.push_back({{locale_.long_date(input.today)}});
    return facts;
  }

  /// What nobody has recorded yet is only planned.
  std::string head_today() const {
    const Visit* const visit = desk_.care.visit;
    if (visit == nullptr) return words_.say(Phrase::care_head_planned);
    if (desk_.care.about == CareAbout::today) return words_.say(Phrase::care_head_today);
    return words_.say(Phrase::care_head_visit, {locale_.long_date(visit->date.value)});
  }

  BlockPtr section(const std::string& title, BlockPtr content) const {
    return column({heading(title, Role::heading, Face::bold), std::make_shared<Gap>(0.15, 0.1, 0),
                   std::make_shared<Rule>(rule_head), std::make_shared<Gap>(0.4, 0.25, 0),
                   std::move(content)});
  }

  std::string home_title() const {
    const auto& visit = desk_.care.care.visit;
    if (!visit) return words_.say(Phrase::care_head_home);
    return words_.say(Phrase::care_head_home_until,
                      {locale_.day_and_month(*visit, desk_.input.today)});
  }

  static BlockPtr list(const std::vector<BlockPtr>& items) {
    std::vector<BulletList::Item> out;
    for (const BlockPtr& item : items) out.push_back({item, Marker::dot});
    return std::make_shared<BulletList>(std::move(out));
  }

  /// What the owner is told is the last of the points.
  enum class Told : std::uint8_t { too, only, left_out };
  std::vector<BlockPtr> today(Told told) const {
    std::vector<OwnLine> lines = care_today(desk_);
    const bool any = desk_.care.visit != nullptr && !desk_.care.visit->told.empty();
    const auto last = lines.end() - (any && !lines.empty() ? 1 : 0);
    if (told == Told::only) lines.erase(lines.begin(), last);
    if (told == Told::left_out) lines.erase(last, lines.end());
    std::vector<BlockPtr> points;
    for (const OwnLine& line : lines) points.push_back(passage({{line.text}}, line.apart));
    return points;
  }

  BlockPtr at_home(const CareForm& form) const {
    const auto labels = std::make_shared<LabelColumn>();
    std::vector<LabelRow> rows;
    if (picture_ && !form.picture.mats && !routine_->mats.empty()) {
      rows.push_back({words_.say(Phrase::care_label_spots), picture_->mats()});
    }
    for (const SheetRow& row : care_at_home(desk_)) rows.push_back(label_row(row));
    BlockPtr list = std::make_shared<Rows>(std::move(rows), labels);
    if (!picture_) return list;
    CarePicture::Form picture = form.picture;
    picture.marked = strip(form) != nullptr;
    return column({picture_->block(picture), gap(0.5), std::make_shared<Rule>(rule_row, Ink::quiet),
                   std::move(list)});
  }

  /// The weeks up to the visit; null without one.
  BlockPtr strip(const CareForm& form) const {
    const HomeCare& care = desk_.care.care;
    if (!care.visit || *care.visit - desk_.input.today > longest_strip) return nullptr;
    StripInput input;
    input.today = desk_.input.today;
    input.visit = *care.visit;
    const CalendarWords names = calendar_words(locale_.language());
    input.first_weekday = names.first;
    input.most_rows = form.calendar_rows;
    int brushing = 0;
    for (const CareDay& day : care.days) {
      input.days.push_back({day.date, day.daily, day.brush, day.nails, day.tidy});
      brushing += day.daily || day.brush ? 1 : 0;
    }
    input.words = {names.weekdays,
                   names.narrow_weekdays,
                   names.months,
                   desk_.care.copy ? std::string() : words_.say(Phrase::strip_today),
                   often_text(HowOften::daily, words_),
                   routine_ ? often_text(routine_->rhythms.back().often, words_) : std::string(),
                   words_.say(Phrase::strip_nails),
                   words_.say(Phrase::strip_tidy),
                   words_.say(Phrase::strip_visit)};
    input.alt =
        words_.say(Phrase::strip_alt, {locale_.day_and_month(*care.visit, desk_.input.today),
                                       words_.say(Phrase::strip_brush_days, {brushing})}) +
        named_days();
    return calendar_strip(std::move(input), {"calendar", {}});
  }

  /// The days of what is not done every day, for who hears the calendar: "Nails: 22 Dec."
  std::string named_days() const {
    const std::vector<CareDay>& days = desk_.care.care.days;
    std::string out;
    const auto name = [&](const std::string& what, bool CareDay::*done) {
      std::vector<std::string> named;
      for (const CareDay& day : days) {
        if (day.*done) named.push_back(locale_.short_day(day.date, desk_.input.today));
      }
      if (what.empty() || named.empty() || named.size() == days.size()) return;
      out += " " + capitalised(what) + colon(words_) + locale_.list(named) + ".";
    };
    if (routine_) name(often_text(routine_->rhythms.back().often, words_), &CareDay::brush);
    name(words_.say(Phrase::strip_nails), &CareDay::nails);
    name(words_.say(Phrase::strip_tidy), &CareDay::tidy);
    return out;
  }

  static BlockPtr point(const CareSign& sign) {
    return passage({{sign.sign + " ", Face::semibold}, {sign.action}}, sign.apart);
  }

  BlockPtr watch() const {
    std::vector<BlockPtr> signs;
    for (const CareSign& sign : care_watch(desk_)) signs.push_back(point(sign));
    return list(signs);
  }

  /// A day that has passed, or that nobody booked, is told as such, and no other is made up.
  std::string no_date() const {
    const auto& next = desk_.input.plan.next_visit;
    if (desk_.input.plan.unread_day) return words_.say(Phrase::care_date_unread);
    const Visit* const visit = desk_.care.visit;
    // Due it was on the day on which it was not done; another is not made yet.
    const bool put_off = visit != nullptr && visit->work == Work::not_done && next &&
                         next->date <= visit->date.value;
    if (!next || next->reason == DueReason::no_visit || put_off) {
      return words_.say(Phrase::care_no_date);
    }
    if (next->overdue_days == 0) return words_.say(Phrase::care_due_today);
    return words_.say(Phrase::care_was_due, {locale_.day_and_month(next->date, desk_.input.today)});
  }

  BlockPtr come_back(const CareForm& form) const {
    std::vector<BlockPtr> parts;
    const auto& visit = desk_.care.care.visit;
    if (visit) {
      std::string day = locale_.day_and_month(*visit, desk_.input.today);
      if (!is_settled(desk_)) day = words_.say(Phrase::care_about, {day});
      std::string why = " " + care_reason(desk_);
      if (const std::string advice = care_advice(desk_); !advice.empty()) why += " " + advice;
      parts.push_back(paragraph({{capitalised(day) + ".", Face::bold, Role::heading}, {why}}));
    } else {
      parts.push_back(paragraph(no_date()));
      parts.push_back(std::make_shared<BlankLine>(words_.say(Phrase::care_write_date)));
    }
    const std::vector<std::string> reach = contact();
    if (!reach.empty()) {
      parts.push_back(std::make_shared<Gap>(0.3, 0.2, 0));
      parts.push_back(paragraph(words_.say(Phrase::care_reach, {joined(reach, "\u00A0· ")})));
    }
    parts.push_back(std::make_shared<Gap>(0.3, 0.2, 0));
    if (const std::string vet = vet_text(desk_.care.vet, words_); !vet.empty()) {
      parts.push_back(paragraph(vet, TextStyle{Role::body, Face::semibold}));
    } else {
      parts.push_back(std::make_shared<BlankLine>(words_.say(Phrase::care_write_vet)));
    }
    BlockPtr text = column(std::move(parts));
    return strip(form) ? text : with_code(std::move(text), form.code);
  }

  /// Beside what is of the next visit stands its code for a phone's calendar.
  BlockPtr with_code(BlockPtr block, Length side) const {
    DiagnosticSink unheard;  // the least of them has been made, or said why not
    const auto code =
        code_ && side > small_side ? large_qr_code(desk_.care.event_code, side, unheard) : code_;
    if (!code) return block;
    const std::string says = words_.say(Phrase::care_code);
    BlockPtr shown = column({qr_block(*code, side, says), paragraph(says, TextStyle{Role::foot})});
    std::vector<Beside::Cell> cells{{std::move(block), {}, 1}, {std::move(shown), side}};
    return std::make_shared<Beside>(std::move(cells), Length::mm(8), Beside::Line::top);
  }

  const CareDesk& desk_;
  const Words& words_;
  const ReaderLocale& locale_;
  std::optional<QrCode> code_;  ///< the small one
  std::optional<CareRoutine> routine_;
  std::optional<CarePicture> picture_;  ///< of the routine
};
}  // namespace

std::optional<Sheet> make_care_sheet(const SheetDesk& sheet_desk, const CareInput& care,
                                     DiagnosticSink& sink) {
  OtherLanguages others;
  SheetVoice voice = sheet_desk.voice;
  voice.others = &others;
  voice.reader = sheet_desk.input.kind.reader;
  const CareDesk desk{{sheet_desk.input, voice}, care};
  const SheetInput& input = desk.input;
  std::optional<QrCode> code;
  if (!care.event_code.empty()) {
    code = large_qr_code(care.event_code, small_side, sink, input.pet.span);
  }
  const CareMaker maker(desk, std::move(code));
  PageRequest request = page_request(input);
  request.layouts = {
      {"open", [&] { return maker.make(maker.form(true, 46_mm, 9)); }},
      {"close", [&] { return maker.make(maker.form(false, 40_mm, maker.weeks())); }, Length::mm(3)},
      {"closer", [&] { return maker.make(maker.form(false, 36_mm, 5)); }, Length::mm(2.5), 0.95},
      {"closest", [&] { return maker.make(maker.closest()); }, Length::mm(2.5), 0.95},
  };
  const std::vector<Division::Pieces> rest{[&] { return maker.rest(); }};
  request.divisions = {
      {"short of today",
       [&] { return maker.page(maker.short_of_today()); },
       {[&] { return maker.rest_of_today(); }},
       Length::mm(3)},
      {"open front", [&] { return maker.front(maker.form(true, 46_mm, 9)); }, rest},
      {"close front", [&] { return maker.front(maker.closest()); }, rest, Length::mm(3)},
      {"flowing", {}, {[&] { return maker.all(); }}, Length::mm(3)},
  };
  const std::string title = desk.voice.words.say(Phrase::care_title, {input.pet.name.value});
  go_on(request, desk, maker.foot(), maker.foot(), title);
  auto page = compose(request, desk.voice.shaper, sink);
  if (!page) return std::nullopt;
  others.report(voice.words.language(), voice.reader, sink);
  return finished(*std::move(page), desk, title, Phrase::care_subject);
}
}  // namespace furnish
