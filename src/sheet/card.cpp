#include "sheet/card.h"

#include <fmt/format.h>

#include <utility>

#include "page/forms.h"
#include "page/list.h"
#include "page/run_in_alerts.h"
#include "page/stack.h"
#include "sheet/alerts.h"
#include "sheet/card_rows.h"
#include "sheet/roles.h"
#include "sheet/shown.h"
#include "sheet/who.h"

namespace furnish {
namespace {
/// Kept free at the top for the clip on the kennel's door, or a punch; common practice, no source.
constexpr Length clip_zone = 14_mm, clip_zone_small = 12_mm;

/// How a card is arranged, most generous first: labels in a column of their own and points under
/// each other; labels and signal words run into texts that have the whole width; and the same with
/// all small rows run into one text. Last, only what is needed at the kennel's door, and a line
/// that says where the rest stands.
enum class Arrangement : std::uint8_t { columns, run_in, dense, at_the_door };
constexpr std::string_view door_layout = "at the door";

/// Where a line may end: a figure space does not break, so a space follows.
constexpr std::string_view between_rows = "\u2007 ";

class CardMaker {
 public:
  explicit CardMaker(const SheetDesk& desk) : desk_(desk), input_(desk.input), voice_(desk.voice) {}

  BlockPtr make(Arrangement arrangement) const {
    std::vector<BlockPtr> blocks{
        sheet_head(input_.pet, {looks_text(desk_), facts_text(desk_)}, 5_mm)};
    if (arrangement == Arrangement::columns) {
      const auto labels = std::make_shared<LabelColumn>();
      blocks.push_back(alerts(labels));
      blocks.push_back(rows(labels));
    } else {
      blocks.push_back(run_in_alerts());
      blocks.push_back(run_in_rows(arrangement));
    }
    blocks.push_back(std::make_shared<Gap>(0.75, 0.5, 2));
    blocks.push_back(std::make_shared<TickRow>(card_ticks(desk_)));
    blocks.push_back(std::make_shared<Gap>(0.25, 0.1, 1));
    blocks.push_back(hand_lines(arrangement));
    blocks.push_back(std::make_shared<Gap>(0.25, 0.1, 1));
    return column(std::move(blocks));
  }

  BlockPtr foot() const {
    std::string right = voice_.locale.long_date(input_.today);
    if (const auto& time = input_.plan.duration) {
      right += " · " + about(time->expected, voice_);
    }
    return sheet_foot(voice_.words.written(input_.salon.name), right);
  }

 private:
  BlockPtr alerts(const std::shared_ptr<LabelColumn>& labels) const {
    std::vector<AlertEntry> entries = alert_entries(desk_, CautionScope::card);
    if (!entries.empty()) {
      return std::make_shared<Alerts>(std::move(entries), labels, Alerts::Actions::below,
                                      rule_name);
    }
    return no_alerts(desk_, labels);
  }

  BlockPtr run_in_alerts() const {
    std::vector<AlertEntry> entries = alert_entries(desk_, CautionScope::card);
    if (!entries.empty()) return std::make_shared<RunInAlerts>(std::move(entries), rule_name);
    return no_alerts_run_in(desk_, "  ");
  }

  BlockPtr rows(const std::shared_ptr<LabelColumn>& labels) const {
    std::vector<LabelRow> out;
    for (SheetRow& row : card_rows(desk_)) {
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
      if (parts.empty()) continue;  // what a hand writes stands at the end
      out.push_back({row.label,
                     parts.size() == 1 ? parts.front()
                                       : std::make_shared<Column>(std::move(parts), row.origin()),
                     row.origin()});
    }
    return std::make_shared<Rows>(std::move(out), labels, Rows::Close::rule);
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
    std::vector<TextSpan> spans{{whole(row.label) + after_label, Face::semibold, Role::label}};
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
  BlockPtr run_in_rows(Arrangement arrangement) const {
    const bool door = arrangement == Arrangement::at_the_door,
               dense = door || arrangement == Arrangement::dense;
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
    for (SheetRow& row : card_rows(desk_)) {
      if (row.text.empty() && row.points.empty()) continue;  // what a hand writes stands at the end
      if (door && !row.at_the_door) continue;
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
    if (door) put({{voice_.words.say(Phrase::short_card), Face::semibold}}, TextStyle{}, {});
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
      {std::string(door_layout), [&] { return maker.make(Arrangement::at_the_door); }, close, true},
  };
  request.footer = maker.foot();
  auto page = compose(request, desk.voice.shaper, sink);
  if (!page) return std::nullopt;
  if (page->layout == door_layout) {
    sink.warning(
            "short-card", input.pet.span,
            fmt::format("{} has no room for trim, bath and finish: the card says that they are "
                        "on the style sheet",
                        input.paper.name))
        .hint = "choose a larger paper, or shorten what is written";
  }
  return finished(*std::move(page), desk,
                  desk.voice.words.say(Phrase::card_title, {input.pet.name.value}),
                  Phrase::card_subject);
}
}  // namespace furnish
