#include "sheet/style_sheet.h"

#include <algorithm>

#include "figure/hatching.h"
#include "figure/qr.h"
#include "page/forms.h"
#include "page/run_in_alerts.h"
#include "page/stack.h"
#include "sheet/card_rows.h"
#include "sheet/roles.h"
#include "sheet/style_parts.h"

namespace furnish {
namespace {
constexpr Length code_side = 40_mm, least_figure = 44_mm, most_figure = 110_mm;

/// How the page is arranged, most generous first. `above`: the figure over the whole width, then
/// the table with the order of work beside it. `beside`: the table, and beside it the figure over
/// the order of work. `dense`: signal words and labels run into their texts, the bars stand under
/// the figure, the order of work in two columns. `tall`: as dense, with the order of work under the
/// figure, for a long table. The lines for a newer groomer stand where there is room for them.
enum class Arrangement : std::uint8_t { above, beside, dense, tall };

class StyleMaker {
 public:
  StyleMaker(const SheetInput& input, const SheetVoice& voice, std::optional<QrCode> code)
      : input_(input), voice_(voice), code_(std::move(code)), rows_(style_rows(input, voice)) {}

  BlockPtr make(Arrangement arrangement, WithHow how) const {
    const bool roomy = arrangement == Arrangement::above || arrangement == Arrangement::beside;
    return roomy ? make_roomy(arrangement, how) : make_dense(arrangement);
  }

  BlockPtr foot() const {
    const TextStyle style{Role::foot};
    TextStyle end = style;
    end.align = Align::end;
    const std::string date = voice_.locale.long_date(input_.today);
    const std::string left =
        input_.salon.name.empty() ? date : input_.salon.name + "\u00A0· " + date;
    return std::make_shared<Ends>(paragraph(left, style),
                                  paragraph(voice_.words.say(Phrase::local_rules), end),
                                  Length::mm(4));
  }

 private:
  BlockPtr make_roomy(Arrangement arrangement, WithHow how) const {
    const auto labels = std::make_shared<LabelColumn>();
    std::vector<BlockPtr> blocks{head(), alerts(labels), notes(style_who(input_, voice_), labels),
                                 gap(0.75)};
    if (arrangement == Arrangement::above) {
      blocks.push_back(figure(least_figure + 26_mm));
      blocks.push_back(gap(0.5));
      blocks.push_back(beside(table(Leaves::two_lines), order(how), 5, 4));
    } else {
      blocks.push_back(beside(table(Leaves::two_lines),
                              column({figure(least_figure + 8_mm), gap(0.5), order(how)}), 5, 4));
    }
    blocks.push_back(notes(style_notes(input_, voice_), labels));
    blocks.push_back(gap(0.75));
    blocks.push_back(section(Phrase::head_what_if, what_if()));
    blocks.push_back(gap(0.75));
    blocks.push_back(bottom());
    return column(std::move(blocks));
  }

  BlockPtr make_dense(Arrangement arrangement) const {
    const bool tall = arrangement == Arrangement::tall;
    std::vector<BlockPtr> blocks{head(), run_in_alerts(), run_in(style_who(input_, voice_)),
                                 gap(0.4)};
    blocks.push_back(
        beside(figure(tall ? least_figure - 4_mm : least_figure), order_lines(), 5, 7));
    blocks.push_back(gap(0.3));
    blocks.push_back(table(Leaves::one_line));
    blocks.push_back(run_in(style_notes(input_, voice_)));
    blocks.push_back(gap(0.3));
    std::vector<StyleNote> what_if =
        style_what_if(input_, voice_, tall ? WhatIf::own : WhatIf::general);
    blocks.push_back(flowing(Phrase::head_what_if, std::move(what_if)));
    blocks.push_back(gap(0.4));
    std::vector<Beside::Cell> cells{
        {column({bars_in_columns(code_ ? 2 : 3), gap(0.3), questions_in_line()}), {}, 1}};
    if (code_) cells.push_back({code(), code_side});
    blocks.push_back(std::make_shared<Beside>(std::move(cells), Length::mm(5), Beside::Line::top));
    if (!code_ && !input_.trim_code.empty()) blocks.push_back(code_left_out());
    return column(std::move(blocks));
  }

  static BlockPtr column(std::vector<BlockPtr> blocks) {
    return std::make_shared<Column>(std::move(blocks));
  }
  static BlockPtr gap(double wanted) { return std::make_shared<Gap>(wanted, wanted / 2, 1); }
  static BlockPtr beside(BlockPtr left, BlockPtr right, int left_share, int right_share) {
    std::vector<Beside::Cell> cells{{std::move(left), {}, left_share},
                                    {std::move(right), {}, right_share}};
    return std::make_shared<Beside>(std::move(cells), Length::mm(6), Beside::Line::top);
  }

  BlockPtr head() const {
    TextStyle name{Role::title, Face::bold};
    name.structure = Structure::title;
    name.leading = 1.0;
    TextStyle right{Role::subtitle};
    right.align = Align::end;
    std::vector<BlockPtr> lines{paragraph(voice_.words.say(Phrase::style_head), right)};
    if (input_.pet.style) {
      right.face = Face::semibold;
      lines.push_back(paragraph(input_.pet.style->name, right));
    }
    return std::make_shared<Ends>(
        paragraph(input_.pet.name.value, name, {"name", input_.pet.name.span}),
        std::make_shared<Column>(std::move(lines)), Length::mm(6));
  }

  BlockPtr alerts(const std::shared_ptr<LabelColumn>& labels) const {
    std::vector<AlertEntry> entries = style_alerts(input_, voice_);
    if (!entries.empty()) {
      return std::make_shared<Alerts>(std::move(entries), labels, Alerts::Actions::beside,
                                      rule_name);
    }
    std::vector<LabelRow> none{
        {voice_.words.say(Phrase::label_alerts), paragraph(voice_.words.say(Phrase::no_alerts))}};
    return std::make_shared<Column>(std::vector<BlockPtr>{
        std::make_shared<Rule>(rule_name), std::make_shared<Rows>(std::move(none), labels)});
  }

  static BlockPtr notes(std::vector<StyleNote> notes, const std::shared_ptr<LabelColumn>& labels) {
    std::vector<LabelRow> rows;
    for (StyleNote& note : notes) {
      const Origin origin{note.label, note.span};
      rows.push_back({note.label, paragraph(std::move(note.text), TextStyle{}, origin), origin});
    }
    return std::make_shared<Rows>(std::move(rows), labels);
  }

  /// A head, a rule, and what belongs to it.
  BlockPtr section(Phrase head, BlockPtr content) const {
    TextStyle style{Role::heading, Face::semibold};
    style.structure = Structure::heading;
    return std::make_shared<Column>(std::vector<BlockPtr>{
        paragraph(voice_.words.say(head), style), std::make_shared<Rule>(rule_head),
        std::make_shared<Gap>(0.25, 0.15, 0), std::move(content)});
  }

  BlockPtr figure(Length least) const {
    std::vector<ToolKind> kinds;
    for (const TrimPart& part : input_.pet.trim) {
      const ToolKind kind = kind_of(part.entry.tool);
      if (std::ranges::find(kinds, kind) == kinds.end()) kinds.push_back(kind);
    }
    std::ranges::sort(kinds);
    std::vector<BlockPtr> blocks{
        dog_figure(style_figure(rows_, input_, voice_), least, most_figure, 8, {"figure", {}})};
    if (!kinds.empty()) blocks.push_back(hatching_legend(std::move(kinds)));
    return std::make_shared<Column>(std::move(blocks));
  }

  BlockPtr table(Leaves form) const {
    return std::make_shared<Table>(style_columns(voice_), style_table(rows_, input_, voice_, form),
                                   Role::body, Origin{"table of parts", input_.pet.span});
  }

  BlockPtr order(WithHow how) const {
    using Kind = TableColumn::Kind;
    std::vector<TableRow> steps;
    for (auto& step : style_steps(rows_, input_, voice_, how)) {
      TableRow row;
      row.cells.push_back({{{std::to_string(steps.size() + 1), Face::semibold}}, false});
      row.cells.push_back({std::move(step), false});
      row.origin = {"order of work", input_.pet.span};
      steps.push_back(std::move(row));
    }
    return std::make_shared<Table>(
        std::vector<TableColumn>{{"", Kind::natural},
                                 {voice_.words.say(Phrase::head_order), Kind::flexible}},
        std::move(steps), Role::body, Origin{"order of work", input_.pet.span});
  }

  /// The order of work as numbered lines without rules.
  BlockPtr order_lines() const {
    auto steps = style_steps(rows_, input_, voice_, WithHow::no);
    std::vector<BlockPtr> lines;
    for (std::size_t i = 0; i < steps.size(); ++i) {
      std::vector<TextSpan> text{{std::to_string(i + 1) + after_label, Face::semibold}};
      std::ranges::move(steps[i], std::back_inserter(text));
      lines.push_back(paragraph(std::move(text), TextStyle{}, {"order of work", input_.pet.span}));
    }
    return section(Phrase::head_order, column(std::move(lines)));
  }

  /// Several notes in one text after its head.
  BlockPtr flowing(Phrase head, std::vector<StyleNote> notes) const {
    std::vector<TextSpan> text{{voice_.words.say(head) + after_label, Face::bold}};
    for (StyleNote& note : notes) {
      text.push_back({note.label + ": ", Face::semibold});
      std::ranges::move(note.text, std::back_inserter(text));
      text.push_back({"  "});
    }
    return paragraph(std::move(text), TextStyle{}, {"what if", input_.pet.span});
  }

  /// Short bars in columns side by side, those that need more width over them all; the rule last.
  BlockPtr bars_in_columns(std::size_t count) const {
    std::vector<TrueSizeBar> shorts, longs;
    for (TrueSizeBar& bar : style_bars(rows_, voice_)) {
      (bar.left.high > 40_mm ? longs : shorts).push_back(std::move(bar));
    }
    std::vector<Beside::Cell> cells;
    const std::size_t each = (shorts.size() + count - 1) / count;
    for (std::size_t i = 0; i < shorts.size(); i += each) {
      const auto begin = shorts.begin() + static_cast<std::ptrdiff_t>(i);
      const auto end =
          shorts.begin() + static_cast<std::ptrdiff_t>(std::min(i + each, shorts.size()));
      cells.push_back({true_size_bars({begin, end}, {}, {"true size", input_.pet.span}), {}, 1});
    }
    std::vector<BlockPtr> parts;
    if (!cells.empty()) {
      parts.push_back(std::make_shared<Beside>(std::move(cells), Length::mm(4), Beside::Line::top));
    }
    parts.push_back(true_size_bars(std::move(longs), voice_.words.say(Phrase::print_note),
                                   {"true size", input_.pet.span}));
    return section(Phrase::head_true_size, column(std::move(parts)));
  }

  BlockPtr run_in_alerts() const {
    std::vector<AlertEntry> entries = style_alerts(input_, voice_);
    if (!entries.empty()) return std::make_shared<RunInAlerts>(std::move(entries), rule_name);
    return column(
        {std::make_shared<Rule>(rule_name),
         paragraph({{voice_.words.say(Phrase::label_alerts) + after_label, Face::semibold},
                    {voice_.words.say(Phrase::no_alerts)}})});
  }

  /// Notes as one paragraph each that begins with its label.
  static BlockPtr run_in(std::vector<StyleNote> notes) {
    std::vector<BlockPtr> out;
    for (StyleNote& note : notes) {
      std::vector<TextSpan> text{{note.label + after_label, Face::semibold}};
      std::ranges::move(note.text, std::back_inserter(text));
      out.push_back(paragraph(std::move(text), TextStyle{}, {note.label, note.span}));
    }
    return column(std::move(out));
  }

  /// Two columns of "if … then …".
  BlockPtr what_if() const {
    const std::vector<StyleNote> notes = style_what_if(input_, voice_, WhatIf::general);
    const std::size_t half = (notes.size() + 1) / 2;
    std::vector<BlockPtr> columns[2];
    for (std::size_t i = 0; i < notes.size(); ++i) {
      std::vector<TextSpan> text{{notes[i].label + ": ", Face::semibold}};
      std::ranges::copy(notes[i].text, std::back_inserter(text));
      auto& column = columns[i < half ? 0 : 1];
      if (!column.empty()) column.push_back(std::make_shared<Gap>(0.25, 0.15, 1));
      column.push_back(paragraph(std::move(text), TextStyle{}, {"what if", notes[i].span}));
    }
    return beside(std::make_shared<Column>(std::move(columns[0])),
                  std::make_shared<Column>(std::move(columns[1])), 1, 1);
  }

  BlockPtr questions() const {
    std::vector<BlockPtr> ask;
    for (const std::string& question : style_questions(rows_, input_, voice_)) {
      ask.push_back(paragraph(question));
      ask.push_back(std::make_shared<BlankLine>());
    }
    ask.push_back(std::make_shared<BlankLine>(voice_.words.say(Phrase::answered_by)));
    return column(std::move(ask));
  }

  /// The line for the answer behind each question.
  BlockPtr questions_in_line() const {
    std::vector<BlockPtr> ask;
    for (const std::string& question : style_questions(rows_, input_, voice_)) {
      ask.push_back(std::make_shared<BlankLine>(question));
    }
    const BlockPtr last = ask.back();
    ask.back() =
        beside(last, std::make_shared<BlankLine>(voice_.words.say(Phrase::answered_by)), 3, 2);
    return column(std::move(ask));
  }

  BlockPtr bars(std::vector<TrueSizeBar> all) const {
    return section(Phrase::head_true_size,
                   true_size_bars(std::move(all), voice_.words.say(Phrase::print_note),
                                  {"true size", input_.pet.span}));
  }

  BlockPtr code() const { return qr_block(*code_, code_side, voice_.words.say(Phrase::code_says)); }

  BlockPtr code_left_out() const {
    return paragraph(voice_.words.say(Phrase::code_left_out), TextStyle{Role::foot});
  }

  BlockPtr bottom() const {
    std::vector<Beside::Cell> cells{{section(Phrase::head_read_back, questions()), {}, 4},
                                    {bars(style_bars(rows_, voice_)), {}, 5}};
    if (code_) cells.push_back({code(), code_side});
    const BlockPtr row =
        std::make_shared<Beside>(std::move(cells), Length::mm(6), Beside::Line::top);
    if (code_ || input_.trim_code.empty()) return row;
    return column({row, code_left_out()});
  }

  const SheetInput& input_;
  const SheetVoice& voice_;
  std::optional<QrCode> code_;
  std::vector<StyleRow> rows_;
};
}  // namespace

std::optional<Sheet> make_style_sheet(const SheetInput& input, const SheetVoice& voice,
                                      DiagnosticSink& sink) {
  std::optional<QrCode> code;
  if (!input.trim_code.empty()) code = qr_code(input.trim_code, code_side, sink, input.pet.span);
  const StyleMaker maker(input, voice, std::move(code));
  PageRequest request;
  request.size = input.paper.size;
  request.paper_name = std::string(input.paper.name);
  request.noun = "style sheet";
  request.span = input.pet.span;
  request.margins = {Length::mm(11), Length::mm(12), Length::mm(10), Length::mm(12)};
  request.roles = hand_roles(input.salon.paper.distances);
  constexpr Length close = 2500_um, closest = 2_mm;
  request.layouts = {
      {"above", [&] { return maker.make(Arrangement::above, WithHow::yes); }},
      {"beside", [&] { return maker.make(Arrangement::beside, WithHow::yes); }},
      {"above, short", [&] { return maker.make(Arrangement::above, WithHow::no); }},
      {"beside, short", [&] { return maker.make(Arrangement::beside, WithHow::no); }, close},
      {"dense", [&] { return maker.make(Arrangement::dense, WithHow::no); }, close},
      {"tall", [&] { return maker.make(Arrangement::tall, WithHow::no); }, closest},
  };
  request.footer = maker.foot();
  auto page = compose(request, voice.shaper, sink);
  if (!page) return std::nullopt;
  DocumentInfo info;
  info.title = voice.words.say(Phrase::style_title, {input.pet.name.value});
  info.subject = voice.words.say(Phrase::style_subject);
  info.language = voice.locale.language();
  info.date = to_iso(input.today);
  return Sheet{std::move(*page), std::move(info)};
}
}  // namespace furnish
