#include "sheet/card.h"

#include <fmt/format.h>

#include <utility>

#include "page/forms.h"
#include "page/list.h"
#include "page/run_in_alerts.h"
#include "page/stack.h"
#include "sheet/alerts.h"
#include "sheet/card_rows.h"
#include "sheet/card_ticks.h"
#include "sheet/pieces.h"
#include "sheet/roles.h"
#include "sheet/shown.h"
#include "sheet/who.h"

namespace furnish {
namespace {
/// Kept free at the top for the clip on the kennel's door, or a punch; common practice, no source.
constexpr Length clip_zone = 14_mm, clip_zone_small = 12_mm;

/// How a card is arranged, most generous first: labels in a column of their own and points under
/// each other; labels and signal words run into texts that have the whole width; and the same with
/// all small rows run into one text.
enum class Arrangement : std::uint8_t { columns, run_in, dense };

/// What a front keeps; where it does not hold all, the last of these goes over to the other side
/// first. `door`: what is needed at the kennel's door, dangers, warnings and places that no tool
/// may touch among it. `cautions`: the pet's own. `work`: the rows about bath, finish and the rest.
/// `advice`: the plan's cautions, and notices. `hand`: what is ticked and written by hand.
enum class Kept : std::uint8_t { door, trim, cautions, work, advice, hand };

/// Where a line may end: a figure space does not break, so a space follows.
constexpr std::string_view between_rows = "\u2007 ";

class CardMaker {
 public:
  explicit CardMaker(const SheetDesk& desk) : desk_(desk), input_(desk.input), voice_(desk.voice) {}

  BlockPtr make(Arrangement arrangement) const { return column(front(arrangement, Kept::hand)); }

  /// The blocks of a front that keeps so much.
  std::vector<BlockPtr> front(Arrangement arrangement, Kept kept) const {
    std::vector<BlockPtr> blocks{
        sheet_head(input_.pet, {looks_text(desk_), facts_text(desk_)}, 5_mm)};
    const auto keeps = [&](Kept one) { return one <= kept; };
    const auto labels = std::make_shared<LabelColumn>();
    blocks.push_back(alerts(arrangement, labels, keeps));
    std::vector<SheetRow> rows = rows_of(keeps);
    blocks.push_back(arrangement == Arrangement::columns
                         ? in_columns(std::move(rows), labels)
                         : run_in_rows(std::move(rows), arrangement));
    if (!keeps(Kept::hand)) return blocks;
    blocks.push_back(std::make_shared<Gap>(0.75, 0.5, 2));
    blocks.push_back(std::make_shared<TickRow>(card_ticks(desk_)));
    blocks.push_back(std::make_shared<Gap>(0.25, 0.1, 1));
    blocks.push_back(hand_lines(arrangement));
    blocks.push_back(std::make_shared<Gap>(0.25, 0.1, 1));
    return blocks;
  }

  /// What such a front leaves to the other side, in pieces.
  std::vector<BlockPtr> rest(Arrangement arrangement, Kept kept) const {
    return pieces(arrangement, [=](Kept one) { return one > kept; });
  }

  /// All of the card in pieces.
  std::vector<BlockPtr> all() const {
    std::vector<BlockPtr> out = plain_head(input_.pet, {looks_text(desk_), facts_text(desk_)});
    if (entries([](Kept) { return true; }).empty()) out.push_back(no_alerts_run_in(desk_, "  "));
    // The front of this one, too, begins with what is needed at the door.
    for (const bool door : {true, false}) {
      std::ranges::move(
          pieces(Arrangement::run_in, [=](Kept one) { return (one == Kept::door) == door; }),
          std::back_inserter(out));
    }
    return out;
  }

  FootText foot() const {
    std::string right = voice_.locale.long_date(input_.today);
    if (const auto& time = input_.plan.duration) {
      right += " · " + about(time->expected, voice_);
    }
    return {voice_.words.written(input_.salon.name), right};
  }

 private:
  Kept kept(const AlertEntry& entry) const {
    if (entry.gravity <= Gravity::panel) return Kept::door;
    const auto& own = input_.pet.alerts;
    const auto at = std::ranges::find_if(
        own, [&](const Alert& alert) { return alert.span == entry.origin.span; });
    if (at == own.end()) return Kept::advice;
    if (!at->avoid.empty()) return Kept::door;
    return entry.gravity == Gravity::bar ? Kept::cautions : Kept::advice;
  }
  static Kept kept(const SheetRow& row) {
    if (row.at_the_door) return Kept::door;
    return row.role == Role::action ? Kept::trim : Kept::work;
  }

  template <typename Keeps>
  std::vector<AlertEntry> entries(Keeps keeps) const {
    std::vector<AlertEntry> out = alert_entries(desk_, CautionScope::card);
    std::erase_if(out, [&](const AlertEntry& entry) { return !keeps(kept(entry)); });
    return out;
  }
  /// Without those that only wait for a hand.
  template <typename Keeps>
  std::vector<SheetRow> rows_of(Keeps keeps) const {
    std::vector<SheetRow> out = card_rows(desk_);
    std::erase_if(out, [&](const SheetRow& row) {
      return (row.text.empty() && row.points.empty()) || !keeps(kept(row));
    });
    return out;
  }

  template <typename Keeps>
  BlockPtr alerts(Arrangement arrangement, const std::shared_ptr<LabelColumn>& labels,
                  Keeps keeps) const {
    std::vector<AlertEntry> kept = entries(keeps);
    const bool columns = arrangement == Arrangement::columns;
    if (!kept.empty()) return alert_block(std::move(kept), columns ? labels : nullptr, rule_name);
    if (!entries([](Kept) { return true; }).empty()) return std::make_shared<Rule>(rule_name);
    return columns ? no_alerts(desk_, labels) : no_alerts_run_in(desk_, "  ");
  }

  /// Run into their texts without labels.
  static BlockPtr alert_block(std::vector<AlertEntry> entries,
                              const std::shared_ptr<LabelColumn>& labels, Length rule) {
    if (!labels) return std::make_shared<RunInAlerts>(std::move(entries), rule);
    return std::make_shared<Alerts>(std::move(entries), labels, Alerts::Actions::below, rule);
  }

  template <typename Goes>
  std::vector<BlockPtr> pieces(Arrangement arrangement, Goes goes) const {
    std::vector<BlockPtr> out;
    const auto labels =
        arrangement == Arrangement::columns ? std::make_shared<LabelColumn>() : nullptr;
    for (AlertEntry& entry : entries(goes))
      out.push_back(alert_block({std::move(entry)}, labels, {}));
    for (SheetRow& row : cut(rows_of(goes))) {
      const BlockPtr block =
          labels ? std::make_shared<Rows>(std::vector{in_column(row)}, labels, Rows::Close::open)
                 : paragraph(run_in(row), TextStyle{row.role}, row.origin());
      out.push_back(column({block, std::make_shared<Gap>(0.3, 0.1, 0),
                            std::make_shared<Rule>(rule_row, Ink::quiet)}));
    }
    if (!goes(Kept::hand)) return out;
    out.push_back(std::make_shared<TickRow>(card_ticks(desk_)));
    out.push_back(hand_lines(arrangement));
    return out;
  }

  static BlockPtr in_columns(std::vector<SheetRow> rows,
                             const std::shared_ptr<LabelColumn>& labels) {
    std::vector<LabelRow> out;
    for (const SheetRow& row : rows) out.push_back(in_column(row));
    return std::make_shared<Rows>(std::move(out), labels, Rows::Close::rule);
  }

  /// A row beside its label; a diamond stands before what differs.
  static LabelRow in_column(const SheetRow& row) {
    std::vector<BlockPtr> parts;
    const TextStyle style{row.role};
    if (!row.text.empty()) parts.push_back(paragraph(row.text, style, row.origin()));
    if (!row.points.empty()) {
      std::vector<BulletList::Item> items;
      for (const SheetRow::Point& point : row.points) {
        items.push_back({paragraph(point.text, style, row.origin()),
                         point.differs ? Marker::diamond : Marker::none});
      }
      parts.push_back(std::make_shared<BulletList>(std::move(items), row.origin()));
    }
    return {row.label,
            parts.size() == 1 ? parts.front()
                              : std::make_shared<Column>(std::move(parts), row.origin()),
            row.origin()};
  }

  /// A label that no line ends in.
  static std::string whole(std::string label) {
    for (std::size_t at; (at = label.find(' ')) != std::string::npos;) {
      label.replace(at, 1, "\u00A0");
    }
    return label;
  }

  /// A row as one text that begins with its label; a diamond stands before what differs.
  static std::vector<TextSpan> run_in(SheetRow& row) {
    std::vector<TextSpan> spans;
    if (!row.label.empty()) {
      spans.push_back({whole(row.label) + after_label, Face::semibold, Role::label});
    }
    const bool headed = !row.text.empty();
    std::ranges::move(row.text, std::back_inserter(spans));
    for (SheetRow::Point& point : row.points) {
      const bool first = &point == row.points.data() && !headed;
      if (point.differs) {
        spans.push_back({first ? "◆\u00A0" : " ◆\u00A0"});
      } else if (!first) {
        spans.push_back({" · "});
      }
      std::ranges::move(point.text, std::back_inserter(spans));
    }
    return spans;
  }

  /// Dense: what is set as body, row after row in one text; the rest by itself.
  static BlockPtr run_in_rows(std::vector<SheetRow> rows, Arrangement arrangement) {
    const bool dense = arrangement == Arrangement::dense;
    std::vector<BlockPtr> out;
    std::vector<TextSpan> running;
    Origin running_origin;
    const auto put = [&](std::vector<TextSpan> spans, TextStyle style, const Origin& origin) {
      if (!out.empty() && !dense) out.push_back(std::make_shared<Rule>(rule_row, Ink::quiet));
      out.push_back(std::make_shared<Gap>(0.25, 0.1, 1));
      out.push_back(paragraph(std::move(spans), style, origin));
      out.push_back(std::make_shared<Gap>(dense ? 0.0 : 0.25, 0.1, 1));
    };
    const auto flush = [&] {
      if (!running.empty()) put(std::exchange(running, {}), TextStyle{}, running_origin);
    };
    for (SheetRow& row : rows) {
      const Role role = row.role;
      const Origin origin = row.origin();
      std::vector<TextSpan> spans = run_in(row);
      if (!dense || role != Role::body) {
        flush();
        put(std::move(spans), TextStyle{role}, origin);
        continue;
      }
      if (running.empty()) running_origin = origin;
      if (!running.empty()) running.push_back({std::string(between_rows)});
      std::ranges::move(spans, std::back_inserter(running));
    }
    flush();
    if (!out.empty()) out.push_back(std::make_shared<Rule>(rule_group));
    return column(std::move(out));
  }

  /// Lines for what is not known, and for who did the work: the trim's under each other, the rest
  /// side by side.
  BlockPtr hand_lines(Arrangement arrangement) const {
    std::vector<BlockPtr> lines, out;
    for (const SheetRow& row : card_rows(desk_)) {
      for (const std::string& label : row.hand_lines) {
        // A trim is a sentence to write, which wants the whole width.
        (row.role == Role::action ? out : lines)
            .push_back(std::make_shared<BlankLine>(label, 1, row.origin()));
      }
    }
    lines.push_back(std::make_shared<BlankLine>(voice_.words.say(Phrase::initials)));
    if (lines.size() == 1 && out.empty()) return lines.front();
    const bool two_by_two = arrangement == Arrangement::columns || lines.size() > 3;
    for (std::size_t i = 0; i < lines.size();) {
      const std::size_t take = std::min<std::size_t>(two_by_two ? 2 : 3, lines.size() - i);
      std::vector<Beside::Cell> cells;
      for (std::size_t j = 0; j < take; ++j) cells.push_back({lines[i + j]});
      out.push_back(std::make_shared<Beside>(std::move(cells), Length::mm(4)));
      i += take;
    }
    return column(std::move(out));
  }

  const SheetDesk& desk_;
  const SheetInput& input_;
  const SheetVoice& voice_;
};

/// Fronts that keep less and less, each arranged as well as it can be; at last the card flows from
/// its front on.
std::vector<Division> divisions_of(const CardMaker& maker, Length close) {
  struct Way {
    std::string_view name;
    Arrangement arrangement;
    std::optional<Length> rhythm;
  };
  const Way ways[] = {{"columns", Arrangement::columns, std::nullopt},
                      {"run-in", Arrangement::run_in, std::nullopt},
                      {"dense", Arrangement::dense, close}};
  struct Front {
    std::string_view name;
    Kept kept;
  };
  constexpr Front fronts[] = {{"all but hand", Kept::advice},
                              {"work", Kept::work},
                              {"cautions", Kept::cautions},
                              {"trim", Kept::trim},
                              {"door", Kept::door}};
  std::vector<Division> out;
  const auto rest = [&maker](Arrangement arrangement, Kept kept) -> Division::Pieces {
    return [&maker, arrangement, kept] { return maker.rest(arrangement, kept); };
  };
  for (const Front& front : fronts) {
    for (const Way& way : ways) {
      out.push_back(
          {fmt::format("{}, {}", front.name, way.name),
           [&maker, way, front] { return maker.front(way.arrangement, front.kept); },
           {rest(Arrangement::columns, front.kept), rest(Arrangement::run_in, front.kept)},
           way.rhythm});
    }
  }
  out.push_back({"flowing", {}, {[&maker] { return maker.all(); }}, close});
  return out;
}
}  // namespace

std::optional<Sheet> make_card(const SheetDesk& desk, DiagnosticSink& sink) {
  const SheetInput& input = desk.input;
  const CardMaker maker(desk);
  const bool small = paper_class(input.paper) == PaperClass::small;
  PageRequest request = page_request(input);
  if (small) request.margins = {8_mm, 8_mm, 8_mm, 8_mm};
  request.free_top = small ? clip_zone_small : clip_zone;
  request.rhythm = small ? 3_mm : 4_mm;
  const Length close = small ? Length::mm(2) : Length::mm(2.5);
  request.layouts = {
      {"columns", [&] { return maker.make(Arrangement::columns); }},
      {"run-in", [&] { return maker.make(Arrangement::run_in); }},
      {"dense", [&] { return maker.make(Arrangement::dense); }, close},
  };
  request.divisions = divisions_of(maker, close);
  const std::string title = desk.voice.words.say(Phrase::card_title, {input.pet.name.value});
  go_on(request, desk, maker.foot(), maker.foot(), title);
  auto page = compose(request, desk.voice.shaper, sink);
  if (!page) return std::nullopt;
  return finished(*std::move(page), desk, title, Phrase::card_subject);
}
}  // namespace furnish
