#include "sheet/desk_list.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <string_view>

#include "base/text.h"
#include "page/forms.h"
#include "page/stack.h"
#include "sheet/due.h"
#include "sheet/parts.h"
#include "sheet/pieces.h"
#include "sheet/shown.h"
#include "sheet/terms.h"

namespace furnish {
namespace {
constexpr Length open_rhythm = 4_mm, close_rhythm = Length::mm(2.5), column_gutter = 5_mm;
constexpr double close_leading = 0.95;

/// A row of any list: the pet, two columns of its own, and whom to ring.
struct Line {
  std::string key, pet, owner, contact;
  std::vector<TextSpan> second, third;
};

/// A finished list before it is set.
struct List {
  std::string title, second, third;
  std::vector<Line> lines;
  std::string caveat{};  ///< that holds for all of it; may be empty
};

class ListMaker {
 public:
  ListMaker(const List& list, const DeskListInput& asked, const SheetDesk& desk)
      : list_(list), asked_(asked), desk_(desk) {}

  BlockPtr whole() const {
    std::vector<BlockPtr> out{head()};
    if (list_.lines.empty()) {
      if (asked_.all) out.push_back(nobody());
    } else {
      out.push_back(column_heads());
      std::vector<BlockPtr> rows;
      for (const Line& line : list_.lines) rows.push_back(row(line));
      out.push_back(std::make_shared<Column>(std::move(rows), Origin{}, Structure::list));
    }
    out.push_back(std::make_shared<Gap>(0, 0, 1));
    return column(std::move(out));
  }

  /// A pet a piece.
  std::vector<BlockPtr> pieces() const {
    std::vector<BlockPtr> out;
    for (const Line& line : list_.lines) {
      const BlockPtr one =
          std::make_shared<Column>(std::vector<BlockPtr>{row(line)}, Origin{}, Structure::list);
      out.push_back(out.empty() ? column({head(), column_heads(), one}) : one);
    }
    return out;
  }

  FootText foot() const {
    const std::string& salon = desk_.input.salon.name;
    const std::string date = desk_.voice.locale.long_date(desk_.input.today);
    const std::string made =
        salon.empty() ? date : desk_.voice.words.written(salon) + "\u00A0· " + date;
    return {made + "\u00A0· " + say(Phrase::list_staff), {}};
  }

 private:
  std::string say(Phrase phrase, const std::vector<WordArgument>& arguments = {}) const {
    return desk_.voice.words.say(phrase, arguments);
  }

  BlockPtr head() const {
    TextStyle style{Role::title, Face::bold};
    style.structure = Structure::title;
    style.leading = 1.0;
    TextStyle beside{Role::subtitle};
    beside.align = Align::end;
    std::set<std::string_view> keys;  // a pet may have more rows than one
    for (const Line& line : list_.lines) keys.insert(line.key);
    const int pets = static_cast<int>(keys.size());
    std::vector<BlockPtr> out{
        std::make_shared<Ends>(paragraph(capitalised(list_.title), style),
                               paragraph(say(Phrase::day_pets, {pets}), beside), 4_mm),
        std::make_shared<Rule>(rule_name)};
    for (const std::string& caveat : {missing(), list_.caveat}) {
      if (!caveat.empty()) out.push_back(paragraph({{caveat, Face::bold}}));
    }
    out.push_back(std::make_shared<Gap>(0.5, 0.25, 0));
    return column(std::move(out));
  }

  /// "Missing, a file has faults: bella, rex.", or that a visit cannot be read; empty if all is
  /// there.
  std::string missing() const {
    const Words& words = desk_.voice.words;
    if (asked_.missing.empty()) {
      return asked_.all || !list_.caveat.empty() ? "" : say(Phrase::day_visit_unread);
    }
    std::vector<std::string> keys;
    for (const std::string& key : asked_.missing) keys.push_back(words.written(key));
    return sentence(say(Phrase::book_unread) + colon(words) + joined(keys, comma(words)));
  }

  BlockPtr nobody() const { return paragraph(say(Phrase::list_nobody)); }

  /// In the same columns on every page, whatever stands in them; whom to ring has the longest
  /// words.
  static BlockPtr columns(BlockPtr first, BlockPtr second, BlockPtr third, BlockPtr fourth) {
    return std::make_shared<Beside>(std::vector<Beside::Cell>{{std::move(first), std::nullopt, 5},
                                                              {std::move(second), std::nullopt, 5},
                                                              {std::move(third), std::nullopt, 4},
                                                              {std::move(fourth), std::nullopt, 6}},
                                    column_gutter, Beside::Line::baseline);
  }

  BlockPtr column_heads() const {
    const auto label = [](const std::string& text) {
      return paragraph(text, TextStyle{Role::label, Face::semibold});
    };
    return column({columns(label(say(Phrase::list_pet)), label(list_.second), label(list_.third),
                           label(say(Phrase::label_owner))),
                   std::make_shared<Rule>(rule_head)});
  }

  BlockPtr row(const Line& line) const {
    std::vector<BlockPtr> reach;
    if (!line.owner.empty()) reach.push_back(paragraph(desk_.voice.words.written(line.owner)));
    if (!line.contact.empty()) {
      reach.push_back(paragraph(desk_.voice.words.written(line.contact),
                                TextStyle{Role::body, Face::semibold}));
    }
    if (reach.empty()) reach.push_back(paragraph(say(Phrase::day_no_contact)));
    const BlockPtr cells =
        columns(std::make_shared<Ticked>(
                    paragraph({{desk_.voice.words.written(line.pet), Face::bold}}), Role::body),
                paragraph(line.second), paragraph(line.third), column(std::move(reach)));
    return std::make_shared<Column>(
        std::vector<BlockPtr>{std::make_shared<Gap>(0.3, 0.2, 0), cells,
                              std::make_shared<Gap>(0.3, 0.2, 0),
                              std::make_shared<Rule>(rule_row, Ink::quiet)},
        Origin{line.pet, {}}, Structure::item);
  }

  const List& list_;
  const DeskListInput& asked_;
  const SheetDesk& desk_;
};

std::optional<Sheet> set(const List& list, const DeskListInput& asked, const SheetVoice& voice,
                         DiagnosticSink& sink) {
  const Pet nobody;
  const Plan none;
  const SheetInput input{kinds::list,  asked.salon, nobody,     none,
                         std::nullopt, asked.today, asked.paper};
  const SheetDesk desk{input, voice};
  const ListMaker maker(list, asked, desk);
  PageRequest request = page_request(input);
  request.span = asked.salon.span;
  const FootText foot = maker.foot();
  go_on(request, desk, foot, foot, list.title);
  request.foot_of = [foot](int side, int sides) {
    return sheet_foot(foot.left, sides > 1 ? fmt::format("{}/{}", side, sides) : std::string());
  };
  request.layouts = {
      {"open", [&] { return maker.whole(); }, open_rhythm},
      {"close", [&] { return maker.whole(); }, close_rhythm, close_leading},
  };
  request.divisions = {
      {"flowing", {}, {[&] { return maker.pieces(); }}, close_rhythm, close_leading}};
  auto page = compose(request, voice.shaper, sink);
  if (!page) return std::nullopt;
  return finished(*std::move(page), desk, list.title, Phrase::list_subject);
}

template <typename Row>
Line line_of(const Row& row) {
  Line out;
  out.key = row.key;
  out.pet = row.name;
  out.owner = row.owner;
  out.contact = row.contact;
  return out;
}

int weeks_of(std::chrono::days span) {
  constexpr int week = 7;
  return static_cast<int>((span.count() + week / 2) / week);
}

/// "as agreed", "every 8 weeks": why it is due then. Of a pet without a visit nothing: that stands
/// beside it.
std::string reason_of(const DueRow& row, const SheetVoice& voice) {
  const Words& words = voice.words;
  const int weeks = row.last ? weeks_of(row.due - *row.last) : 0;
  switch (row.reason) {
    case DueReason::booked:
      return words.say(Phrase::list_booked);
    case DueReason::agreed:
      return words.say(Phrase::why_agreed);
    case DueReason::owner_interval:
      return row.interval ? every_text(*row.interval, words)
                          : words.say(Phrase::why_weeks, {weeks});
    case DueReason::coat_interval:
      return words.say(Phrase::why_coat, {weeks});
    case DueReason::keep_under:
    case DueReason::mat_prone:
      return row.limit ? words.say(Phrase::why_limit, {shown(*row.limit, voice)}) : std::string();
    case DueReason::no_visit:
      break;
  }
  return {};
}
}  // namespace

std::optional<Sheet> make_list(std::span<const DueRow> rows, Date by, const DeskListInput& input,
                               const SheetVoice& voice, DiagnosticSink& sink) {
  const Words& words = voice.words;
  const auto day = [&](Date date) { return voice.locale.short_day(date, input.today); };
  List list{words.say(Phrase::list_due_title, {voice.locale.long_date(by)}),
            words.say(Phrase::list_due),
            words.say(Phrase::list_last),
            {}};
  std::optional<Date> unread;
  for (const DueRow& row : rows) {
    Line line = line_of(row);
    const bool no_day = row.reason == DueReason::no_visit;
    const std::string far = no_day               ? words.say(Phrase::list_no_day)
                            : row.days_over == 0 ? words.say(Phrase::list_today)
                            : row.days_over > 0  ? words.say(Phrase::list_over, {row.days_over})
                                                 : words.say(Phrase::list_in, {-row.days_over});
    // Why it is that day stands beside it.
    std::string when = no_day || row.days_over == 0 ? std::string() : comma(words) + day(row.due);
    if (const std::string why = reason_of(row, voice); !why.empty()) when += comma(words) + why;
    if (row.unread) unread = std::min(unread.value_or(*row.unread), *row.unread);
    line.second = {{far, row.days_over > 0 ? Face::bold : Face::regular}, {std::move(when)}};
    std::string last = row.last         ? day(*row.last)
                       : row.all_visits ? words.say(Phrase::list_none)
                                        : words.say(Phrase::day_visit_unread);
    if (!row.last && row.all_visits && row.since) {
      last += comma(words) + words.say(Phrase::comes_since, {std::to_string(*row.since)});
    }
    line.third = {{std::move(last)}};
    list.lines.push_back(std::move(line));
  }
  if (unread) list.caveat = sentence(words.say(Phrase::due_unread, {day(*unread)}));
  return set(list, input, voice, sink);
}

std::optional<Sheet> make_list(std::span<const ExpiringRow> rows, Date by,
                               const DeskListInput& input, const SheetVoice& voice,
                               DiagnosticSink& sink) {
  const Words& words = voice.words;
  const auto day = [&](Date date) { return voice.locale.short_day(date, input.today); };
  List list{words.say(Phrase::list_expiring_title, {voice.locale.long_date(by)}),
            words.say(Phrase::list_vaccination),
            words.say(Phrase::list_until),
            {}};
  for (const ExpiringRow& row : rows) {
    Line line = line_of(row);
    line.second = {{capitalised(words.written(row.vaccination)), Face::semibold}};
    if (row.required) line.second.push_back({comma(words) + words.say(Phrase::list_required)});
    const std::string until = row.until ? day(*row.until) : std::string();
    const bool valid = row.status == VaccinationStatus::valid;
    const Phrase status = valid                                      ? Phrase::list_valid
                          : row.status == VaccinationStatus::not_yet ? Phrase::list_from
                          : row.until && row.status == VaccinationStatus::expired
                              ? Phrase::list_expired
                              : Phrase::list_missing;
    std::vector<WordArgument> facts;
    if (status != Phrase::list_missing) facts.emplace_back(until);
    line.third = {{words.say(status, facts), valid ? Face::regular : Face::bold}};
    list.lines.push_back(std::move(line));
  }
  return set(list, input, voice, sink);
}

std::optional<Sheet> make_list(std::span<const FoundRow> rows, const std::string& asked,
                               const DeskListInput& input, const SheetVoice& voice,
                               DiagnosticSink& sink) {
  const Words& words = voice.words;
  List list{words.say(Phrase::list_found_title, {words.written(asked)}),
            words.say(Phrase::list_found),
            words.say(Phrase::list_file),
            {}};
  for (const FoundRow& row : rows) {
    Line line = line_of(row);
    line.second = {{words.written(row.text)}};
    line.third = {{"pets/" + row.key + ".toml"}};
    list.lines.push_back(std::move(line));
  }
  return set(list, input, voice, sink);
}
}  // namespace furnish
