#include "sheet/day_row.h"

#include <algorithm>
#include <array>
#include <optional>
#include <string_view>
#include <utility>
#include <vector>

#include "base/said_in.h"
#include "base/text.h"
#include "page/forms.h"
#include "page/keep_whole.h"
#include "page/run_in_alerts.h"
#include "page/stack.h"
#include "sheet/alerts.h"
#include "sheet/caution_words.h"
#include "sheet/due.h"
#include "sheet/last_time.h"
#include "sheet/own_words.h"
#include "sheet/parts.h"
#include "sheet/pieces.h"
#include "sheet/shown.h"
#include "sheet/terms.h"
#include "sheet/trim_lines.h"
#include "sheet/who.h"

namespace furnish {
namespace {
constexpr double close_leading = 1.1;
/// Of the width: hour and name, the text, minutes; the last where the text stands under the others.
constexpr int name_share = 31, text_share = 50, time_share = 19, close_time_share = 24,
              close_work_share = 23, close_collected_share = 15;

/// "11:45 AM", which need not stand on one line.
std::string breakable(std::string text) {
  constexpr std::array<std::string_view, 2> no_break{"\u202F", "\u00A0"};
  for (const std::string_view space : no_break) {
    for (std::size_t at = 0; (at = text.find(space, at)) != std::string::npos; ++at) {
      text.replace(at, space.size(), " ");
    }
  }
  return text;
}

std::string longest_word(const std::string& text) {
  std::string out, word;
  for (const char c : text + " ") {
    if (c != ' ') {
      word += c;
      continue;
    }
    if (word.size() > out.size()) out = word;
    word.clear();
  }
  return out;
}

class RowMaker {
 public:
  RowMaker(const DayRow& row, const DayDesk& day, DayDetail detail, const std::string& groomer)
      : row_(row), day_(day), voice_(day.voice), detail_(detail), groomer_(groomer) {
    if (row.pet == nullptr) return;
    input_.emplace(SheetInput{kinds::day, day.salon, row.pet->pet, row.pet->plan, *row.booking,
                              day.day, day.paper});
    input_->told = row.pet->visits;
    desk_.emplace(SheetDesk{*input_, voice_});
  }

  BlockPtr whole() const {
    std::vector<BlockPtr> rows;
    if (detail_ == DayDetail::close) {
      rows = {
          std::make_shared<SharesOrBelow>(SharesOrBelow::Share{name(), name_share},
                                          SharesOrBelow::Share{times(), close_time_share}, 2_mm),
          text()};
    } else {
      rows = {
          std::make_shared<Beside>(std::vector<Beside::Cell>{{name(), std::nullopt, name_share},
                                                             {text(), std::nullopt, text_share},
                                                             {times(), std::nullopt, time_share}},
                                   3_mm)};
    }
    return std::make_shared<Column>(
        std::move(rows), Origin{row_.booking->pet.value, row_.booking->span}, Structure::item);
  }

 private:
  std::string say(Phrase phrase, const std::vector<WordArgument>& arguments = {}) const {
    return voice_.words.say(phrase, arguments);
  }
  const Booking& booking() const { return *row_.booking; }
  const Pet& pet() const { return row_.pet->pet; }
  const Plan& plan() const { return row_.pet->plan; }

  BlockPtr name() const {
    TextStyle style{Role::alert, Face::bold};
    style.structure = Structure::label;
    style.leading = close_leading;
    const std::string name =
        row_.pet == nullptr ? booking().pet.value : voice_.words.written(pet().name.value);
    // What stands beside the hour ("AM") is small: the hour of a working day says it.
    const std::string time = breakable(voice_.locale.time(booking().at));
    const std::size_t hour = std::min(time.find(' '), time.size());
    BlockPtr line = std::make_shared<WholeWord>(
        std::vector<TextSpan>{{time.substr(0, hour), Face::regular},
                              {half_of_day(time.substr(hour)), Face::regular, Role::body},
                              {" "},
                              {beside_number(name)}},
        TextSpan{longest_word(name)}, style, Origin{booking().pet.value, booking().span});
    if (row_.pet != nullptr && detail_ != DayDetail::close) {
      const std::vector<TextSpan> looks = looks_text(*desk_), facts = facts_text(*desk_);
      std::vector<BlockPtr> lines{line};
      if (!looks.empty()) lines.push_back(paragraph(looks));
      if (!facts.empty()) lines.push_back(paragraph(facts));
      line = column(std::move(lines));
    }
    return std::make_shared<Ticked>(std::move(line), Role::alert);
  }

  /// " AM", where hours have it.
  std::string half_of_day(const std::string& text) const {
    return detail_ == DayDetail::close && day_.bare_hours ? std::string() : text;
  }

  BlockPtr times() const {
    if (detail_ == DayDetail::close) {
      return std::make_shared<Beside>(
          std::vector<Beside::Cell>{{work_time(), std::nullopt, close_work_share},
                                    {collected(), std::nullopt, close_collected_share}},
          1_mm);
    }
    return column({work_time(), collected()});
  }

  BlockPtr work_time() const {
    const auto minutes = [](std::chrono::minutes time) { return static_cast<int>(time.count()); };
    std::vector<TextSpan> work;
    if (row_.expected && row_.booked) {
      const bool close = detail_ == DayDetail::close;
      work = {{say(close ? Phrase::day_minutes_short : Phrase::day_minutes,
                   {minutes(*row_.expected), minutes(*row_.booked)}),
               row_.over().count() > 0 ? Face::bold : Face::regular}};
    } else if (row_.expected) {
      work = {{say(Phrase::day_minutes_open, {minutes(*row_.expected)})}};
    } else {
      work = {{say(Phrase::day_time_unknown)}};
    }
    return std::make_shared<Ticked>(paragraph(std::move(work)), Role::body);
  }

  BlockPtr collected() const {
    const bool close = detail_ == DayDetail::close;
    if (!booking().collect) {
      return std::make_shared<Ticked>(
          std::make_shared<BlankLine>(close ? "" : say(Phrase::day_collected_open)), Role::label);
    }
    std::string at = voice_.locale.time(*booking().collect);
    at = close ? breakable(std::move(at)) : say(Phrase::day_collected, {at});
    if (close && day_.bare_hours) at = at.substr(0, at.find(' '));
    return std::make_shared<Ticked>(paragraph(std::move(at)), Role::body);
  }

  BlockPtr text() const {
    std::vector<BlockPtr> out;
    if (auto cannot = clashes()) out.push_back(alerts({*std::move(cannot)}));
    int more = 0;
    std::vector<AlertEntry> entries = hurts(more);
    const bool black = !entries.empty() && entries.back().gravity == Gravity::row;
    if (!entries.empty()) out.push_back(alerts(std::move(entries)));
    std::vector<BlockPtr> lines = rest(more);
    if (black && !lines.empty()) out.push_back(std::make_shared<Gap>(0.3, 0.3, 0));
    std::ranges::move(lines, std::back_inserter(out));
    return column(std::move(out));
  }

  static BlockPtr alerts(std::vector<AlertEntry> entries) {
    return std::make_shared<RunInAlerts>(std::move(entries), Length{}, Origin{},
                                         RunInAlerts::Rules::none);
  }

  /// What cannot go as it is booked, or that the next pet is here before this one goes.
  std::optional<AlertEntry> clashes() const {
    AlertEntry out{Gravity::panel, {}, {}, {}, {"booked", booking().span}};
    out.role = detail_ == DayDetail::close ? Role::body : Role::action;
    out.word_role = Role::body;
    if (!row_.clashes.empty()) {
      std::vector<std::string> others;
      for (const Booking* const other : row_.clashes) {
        others.push_back(voice_.locale.time(other->at) + " " + name_of(*other));
      }
      out.word = say(Phrase::day_clash);
      out.statement = sentence(voice_.locale.list(others));
    }
    if (row_.over().count() > 0) {
      const std::string word = say(Phrase::day_overrun),
                        by = say(Phrase::day_over, {static_cast<int>(row_.over().count())});
      out.statement += out.word.empty() ? by : " " + word + colon(voice_.words) + by;
      if (out.word.empty()) out.word = word;
    }
    if (out.word.empty() && row_.before_collected != nullptr && booking().collect) {
      const Booking& next = *row_.before_collected;
      out.gravity = Gravity::bar;
      out.word = say(Phrase::day_overlap);
      out.statement =
          say(Phrase::day_here_until, {voice_.locale.time(next.at) + " " + name_of(next),
                                       voice_.locale.time(*booking().collect)});
    }
    return out.word.empty() ? std::nullopt : std::optional(out);
  }

  std::string name_of(const Booking& other) const {
    const auto found = day_.names.find(other.pet.value);
    return beside_number(
        voice_.words.written(found == day_.names.end() ? other.pet.value : found->second));
  }

  /// What can hurt: dangers and warnings, else a caution by its first sentence; then in one line
  /// what is without a signal word, and how many more alerts the card has. `more`: how many, where
  /// there is no such line.
  std::vector<AlertEntry> hurts(int& more) const {
    std::vector<AlertEntry> out;
    if (row_.pet != nullptr) {
      for (AlertEntry& entry : alert_entries(*desk_, CautionScope::card)) {
        if (auto one = said(entry, out.empty())) {
          out.push_back(*std::move(one));
        } else {
          ++more;
        }
      }
    }
    AlertEntry unworded{Gravity::bar, {}, wordless(out), {}, {"beware", booking().span}};
    unworded.role = unworded.word_role = detail_ == DayDetail::close ? Role::body : Role::action;
    if (!unworded.statement.empty()) out.push_back(std::move(unworded));
    if (day_.terse) {
      for (std::size_t i = 1; i < out.size(); ++i) {
        const std::string& word = out[i].word;
        out.front().statement += " " + (word.empty() || word == out.front().word
                                            ? out[i].statement
                                            : word + colon(voice_.words) + out[i].statement);
      }
      if (out.size() > 1) out.resize(1);
    }
    if (more == 0 || out.empty()) return out;
    std::string& last = out.back().action;
    last += (last.empty() ? "+" : " +") + std::to_string(std::exchange(more, 0));
    return out;
  }

  /// An alert as the wall has it; empty where the card says it.
  std::optional<AlertEntry> said(const AlertEntry& entry, bool first) const {
    const bool own = std::ranges::any_of(
        pet().alerts, [&](const Alert& alert) { return alert.span == entry.origin.span; });
    const bool grave = entry.gravity <= (own ? Gravity::panel : Gravity::row);
    if (!grave && !(own && entry.gravity == Gravity::bar && first)) return std::nullopt;
    AlertEntry out{entry.gravity, entry.word, first_sentence(entry.statement), {}, entry.origin};
    if (own && entry.gravity <= Gravity::panel) {
      if (day_.alerts == DayAlerts::whole) {
        out.statement = sentence(entry.statement);
        out.action = entry.action;
      } else if (out.statement != sentence(entry.statement) || !entry.action.empty()) {
        out.statement += "\u00A0…";
      }
    }
    out.role = detail_ == DayDetail::close ? Role::body : Role::action;
    out.word_role = Role::body;
    return out;
  }

  /// "Arthritis, deaf. Two people." Nothing of that which an alert says already.
  std::string wordless(const std::vector<AlertEntry>& alerts) const {
    if (row_.pet == nullptr) return say(Phrase::day_unread);
    std::vector<std::string> out;
    if (row_.pet->faulty) out.push_back(say(Phrase::day_faulty));
    if (!row_.pet->all_visits) out.push_back(say(Phrase::day_visit_unread));
    if (const std::string ill = conditions_text(*desk_); !ill.empty()) out.push_back(ill + ".");
    const std::string two = sentence(say(Phrase::day_two_people));
    const auto says_so = [&two](const AlertEntry& entry) {
      return entry.action.find(two) != std::string::npos ||
             entry.statement.find(two) != std::string::npos;
    };
    if (needs_two(pet()) && std::ranges::none_of(alerts, says_so)) out.push_back(two);
    return joined(out, " ");
  }

  void part(std::vector<TextSpan>& out, std::vector<TextSpan> text) const {
    if (text.empty()) return;
    if (!out.empty()) out.push_back({" "});
    std::ranges::move(text, std::back_inserter(out));
  }

  /// All else: how it looks, its trim, what is new since last time, the note of the day. A line
  /// each; where room is short the looks share theirs with the trim.
  std::vector<BlockPtr> rest(int more) const {
    std::vector<std::vector<TextSpan>> lines(1);
    const auto new_line = [&] {
      if (!lines.back().empty() && !day_.terse) lines.emplace_back();
    };
    const bool roomy = day_.alerts == DayAlerts::whole && !day_.brief;
    if (!groomer_.empty()) part(lines.back(), {{voice_.words.written(groomer_) + ":"}});
    if (row_.pet != nullptr) {
      if (detail_ == DayDetail::close) part(lines.back(), looks());
      if (roomy) new_line();
      if (!row_.pet->faulty) part(lines.back(), trim());
      if (more > 0) part(lines.back(), {{"+" + std::to_string(more)}});
      if (std::vector<TextSpan> fresh = this->fresh(); !fresh.empty()) {
        new_line();
        part(lines.back(), std::move(fresh));
      }
    }
    if (!booking().note.empty()) {
      part(lines.back(), {{say(Phrase::quoted, {salons_words(booking().note, voice_)})}});
    }
    std::vector<BlockPtr> out;
    for (std::vector<TextSpan>& line : lines) {
      if (!line.empty()) out.push_back(paragraph(std::move(line)));
    }
    return out;
  }

  /// "Spitz cross, orange sable." in the weight of what it stands beside.
  std::vector<TextSpan> looks() const {
    std::vector<TextSpan> out = looks_text(*desk_);
    if (day_.brief && out.size() > 1) out.resize(1);
    for (TextSpan& span : out) span.face.reset();
    if (!out.empty()) out.push_back({"."});
    return out;
  }

  /// "Natural tidy, except: chest, hocks."
  std::vector<TextSpan> trim() const {
    const ResolvedTrim worked = worked_trim(pet(), plan().cautions);  // the lines point into it
    const std::vector<TrimLine> lines = trim_lines(worked, voice_);
    const std::vector<Place> untouched = kept_from_tools(pet());
    const bool styled = pet().style.has_value();
    std::vector<std::string> parts;
    std::vector<Place> places;
    for (const TrimLine& line : lines) {
      if (styled && !line.differs) continue;
      parts.push_back(line.places + colon(voice_.words) + line.work);
      for (const TrimPart* const one : line.parts) places.push_back(one->place);
    }
    if (detail_ != DayDetail::tools && styled && !places.empty()) {
      constexpr std::size_t few = 2;
      const bool too_many = day_.terse && places.size() > few;
      if (too_many) places.resize(few);
      parts = {grouped_text(places, voice_) + (too_many ? "\u00A0…" : "")};
    }
    if (!untouched.empty()) {
      parts.push_back(grouped_text(untouched, voice_) + colon(voice_.words) +
                      uncapitalised(say(Phrase::no_tool)));
    }
    if (!styled && parts.empty()) return {{sentence(say(Phrase::day_no_trim))}};
    std::string rest = joined(parts, semicolon(voice_.words));
    if (!styled) return {{sentence(rest)}};
    const std::string name = salons_words(pet().style->name, voice_);
    if (rest.empty()) return {{say(Phrase::style_only, {name}), Face::semibold}};
    if (!rest.ends_with("…")) rest += ".";
    return {{say(Phrase::style_except, {name}) + " ", Face::semibold}, {rest}};
  }

  /// That it came in felted, and what the last visits left open; or that there was none.
  std::vector<TextSpan> fresh() const {
    if (!plan().visit_before && !row_.pet->all_visits) return {};  // that it cannot be read is said
    if (!plan().visit_before) {
      return {{sentence(no_visit_text(pet(), voice_.words)), Face::semibold}};
    }
    std::vector<TextSpan> out = felt_text(*plan().visit_before, voice_);
    if (plan().findings.empty()) return out;
    std::vector<std::string> found;
    for (const OpenFinding& finding : plan().findings) {
      const std::string what = salons_words(finding.what, voice_);
      found.push_back(place_name(finding.place, voice_.words) +
                      (what.empty() ? "" : colon(voice_.words) + what));
    }
    part(out, {{say(Phrase::label_again) + colon(voice_.words), Face::semibold},
               {joined(found, semicolon(voice_.words)) + "."}});
    return out;
  }

  const DayRow& row_;
  const DayDesk& day_;
  const SheetVoice& voice_;
  DayDetail detail_;
  const std::string& groomer_;
  std::optional<SheetInput> input_;
  std::optional<SheetDesk> desk_;
};
}  // namespace

BlockPtr day_row(const DayRow& row, const DayDesk& desk, DayDetail detail,
                 const std::string& groomer) {
  return RowMaker(row, desk, detail, groomer).whole();
}

}  // namespace furnish
