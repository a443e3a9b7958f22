#include "sheet/style_sheet.h"

#include <algorithm>
#include <array>
#include <utility>

#include "figure/qr.h"
#include "figure/true_size.h"
#include "page/around_corner.h"
#include "page/forms.h"
#include "page/picture.h"
#include "page/run_in_alerts.h"
#include "page/stack.h"
#include "sheet/alerts.h"
#include "sheet/pieces.h"
#include "sheet/style_rows.h"
#include "sheet/style_table.h"
#include "sheet/style_words.h"
#include "sheet/style_work.h"
#include "sheet/terms.h"
#include "sheet/who.h"

namespace furnish {
namespace {
// 0.43 mm a module, more than ISO asks: read from prints of 150 dots an inch.
constexpr Length code_side = 40_mm, code_module = Length::micrometres(430), most_figure = 110_mm;
/// On the other side a code may be as large as it needs to be.
constexpr std::array larger_codes{code_side, 60_mm, 80_mm};

/// How a page or a front is arranged, most generous first. In each the figure stands beside what
/// comes before the trim, and the table over the whole width is the order of work. `open`: labels
/// in a column of their own, the lines for a newer groomer, contingencies and questions side by
/// side. `short_open`: without those lines. `dense`: signal words and labels run into their texts.
/// Fronts only: `tight`, as dense, with a smaller figure; `in_two`, as tight, with the table in two
/// columns.
enum class Arrangement : std::uint8_t { open, short_open, dense, tight, in_two };

class StyleMaker {
 public:
  explicit StyleMaker(const SheetDesk& desk)
      : desk_(desk),
        input_(desk.input),
        voice_(desk.voice),
        rows_(style_rows(desk)),
        figure_(style_figure(rows_, desk)),
        dog_(draw_dog(figure_)) {
    if (input_.trim_code.empty()) return;
    DiagnosticSink unheard;  // whether a code is left out is known once the sheet is arranged
    for (const Length side : larger_codes) {
      code_ = qr_code(input_.trim_code, side, unheard, input_.pet.span, code_module);
      side_ = side;
      if (code_) break;
    }
  }

  /// With a portrait of that height in the corner, beside the head, the alerts and the notes; zero
  /// is none.
  BlockPtr make(Arrangement arrangement, Length portrait = {}) const {
    std::vector<BlockPtr> blocks = front(arrangement, portrait, style_after(desk_));
    const bool roomy = arrangement == Arrangement::open || arrangement == Arrangement::short_open;
    blocks.push_back(gap(roomy ? 1 : 0.4));
    if (roomy) {
      blocks.push_back(beside(section(Phrase::head_what_if, what_if()),
                              with_code(section(Phrase::head_read_back, questions())), 1, 1));
    } else {
      blocks.push_back(flowing(Phrase::head_what_if, style_what_if(desk_)));
      blocks.push_back(gap(0.2));
      blocks.push_back(with_code(questions_in_line()));
    }
    return column(std::move(blocks));
  }

  /// What is needed at the dog: who it is, what can hurt, the figure, the order of work.
  std::vector<BlockPtr> front(Arrangement arrangement, Length portrait,
                              std::vector<SheetRow> after = {}) const {
    const WithHow how = arrangement == Arrangement::open ? WithHow::yes : WithHow::no;
    const bool roomy = how == WithHow::yes || arrangement == Arrangement::short_open;
    const bool in_two = arrangement == Arrangement::in_two;
    const bool tight = arrangement == Arrangement::tight || in_two;
    const auto labels = std::make_shared<LabelColumn>();
    std::vector<BlockPtr> blocks{with_portrait(who(roomy, labels, portrait > Length{}), portrait)};
    blocks.push_back(gap(roomy ? 1 : 0.5));
    const Length least = roomy ? 62_mm : tight ? 44_mm : 54_mm;
    blocks.push_back(beside(figure(least), before(how), 6, 7));
    blocks.push_back(gap(roomy ? 0.75 : 0.4));
    blocks.push_back(in_two ? style_table_in_two(rows_, desk_)
                            : style_table(rows_, desk_, how, std::move(after)));
    blocks.push_back(gap(roomy ? 0.5 : 0.3));
    if (has_bars()) blocks.push_back(bars());
    return blocks;
  }

  /// What the other side has: what follows the last cut, what to do if, the questions, the code.
  std::vector<BlockPtr> rest() const {
    std::vector<BlockPtr> out;
    for (const SheetRow& note : cut(style_after(desk_))) {
      out.push_back(as_text(note, Face::semibold));
    }
    out.push_back(gap(0.75));
    bool first = true;
    for (const SheetRow& note : cut(style_what_if(desk_))) {
      const BlockPtr text = as_text(note, Face::semibold, colon(voice_.words), "what if");
      out.push_back(std::exchange(first, false) ? section(Phrase::head_what_if, text) : text);
    }
    const BlockPtr ask = questions();
    out.push_back(gap(0.75));
    if (!code_ || input_.paper.size.width < narrow) {
      out.push_back(section(Phrase::head_read_back, ask));
      if (code_) out.push_back(code());
    } else {
      std::vector<Beside::Cell> cells{{section(Phrase::head_read_back, ask), {}, 1},
                                      {code(), side_}};
      out.push_back(std::make_shared<Beside>(std::move(cells), Length::mm(8), Beside::Line::top));
    }
    return out;
  }

  /// All of the sheet in pieces.
  std::vector<BlockPtr> all() const {
    std::vector<BlockPtr> out = plain_head(input_.pet, style_facts(desk_));
    std::vector<AlertEntry> entries = alert_entries(desk_, CautionScope::all);
    if (entries.empty()) out.push_back(no_alerts_run_in(desk_, after_label));
    for (AlertEntry& entry : entries) {
      out.push_back(std::make_shared<RunInAlerts>(std::vector{std::move(entry)}));
    }
    const auto add = [&](const std::vector<SheetRow>& rows) {
      for (const SheetRow& row : cut(rows)) out.push_back(as_text(row, Face::semibold));
    };
    add(style_who(desk_));
    out.push_back(figure(34_mm));  // which the narrowest paper is wide enough for
    add(style_before(desk_, WithHow::no));
    std::ranges::move(style_table_in_pieces(rows_, desk_), std::back_inserter(out));
    if (has_bars()) out.push_back(bars());
    std::ranges::move(rest(), std::back_inserter(out));
    return out;
  }

  /// 1.17 from baseline to baseline, where letters are no higher than ours: Arabic ones are.
  double close_leading() const { return voice_.words.language().starts_with("ar") ? 1 : 0.94; }

  /// Of a sheet on one side, or on more.
  FootText foot(bool alone) const {
    const std::string date = voice_.locale.long_date(input_.today);
    std::string left = input_.salon.name.empty()
                           ? date
                           : voice_.words.written(input_.salon.name) + "\u00A0· " + date;
    if (!input_.trim_code.empty() && (!code_ || (alone && !code_beside()))) {
      left += "\u00A0· " + voice_.words.say(Phrase::code_left_out);
    }
    return {left, voice_.words.say(Phrase::local_rules)};
  }

  /// Warns of a code that the page has no room for.
  void report(const ComposedPage& page, DiagnosticSink& sink) const {
    if (input_.trim_code.empty()) return;
    const Length side = page.more.empty() ? code_side : larger_codes.back();
    qr_code(input_.trim_code, side, sink, input_.pet.span, code_module);
  }

 private:
  /// Under this the code stands below the questions.
  static constexpr Length narrow = 180_mm;

  /// Whether the code is of the size that it has beside the questions of a single page.
  bool code_beside() const { return code_ && side_ == code_side; }
  BlockPtr code() const { return qr_block(*code_, side_, voice_.words.say(Phrase::code_says)); }

  bool has_bars() const {
    return std::ranges::any_of(rows_, [](const StyleRow& row) {
      return row.kind == RowKind::cut && row.left && !row.natural;
    });
  }
  BlockPtr bars() const {
    return true_size_bars({}, voice_.words.say(Phrase::print_note), {"true size", input_.pet.span});
  }

  static BlockPtr beside(BlockPtr left, BlockPtr right, int left_share, int right_share) {
    std::vector<Beside::Cell> cells{{std::move(left), {}, left_share},
                                    {std::move(right), {}, right_share}};
    return std::make_shared<Beside>(std::move(cells), Length::mm(6), Beside::Line::top);
  }

  /// The head, the alerts, health and wishes. `split`: the gravest alert by itself, so that a
  /// portrait need not stand beside all of them; rows that are black go together.
  std::vector<BlockPtr> who(bool roomy, const std::shared_ptr<LabelColumn>& labels,
                            bool split) const {
    std::vector<BlockPtr> out{sheet_head(input_.pet, style_facts(desk_), 6_mm)};
    std::vector<AlertEntry> first = alert_entries(desk_, CautionScope::all), rest;
    if (first.empty()) {
      out.push_back(roomy ? no_alerts(desk_, labels) : no_alerts_run_in(desk_, after_label));
    } else {
      if (split) {
        const auto black = [](const AlertEntry& entry) { return entry.gravity == Gravity::row; };
        const auto end = std::max(first.begin() + 1, std::ranges::find_if_not(first, black));
        std::move(end, first.end(), std::back_inserter(rest));
        first.erase(end, first.end());
      }
      const auto add = [&](std::vector<AlertEntry> entries, Length rule) {
        if (entries.empty()) return;
        if (roomy) {
          out.push_back(
              std::make_shared<Alerts>(std::move(entries), labels, Alerts::Actions::beside, rule));
        } else {
          out.push_back(std::make_shared<RunInAlerts>(std::move(entries), rule));
        }
      };
      add(std::move(first), rule_name);
      add(std::move(rest), {});
    }
    const std::vector<SheetRow> about = style_who(desk_);
    if (roomy) {
      out.push_back(notes(about, labels));
    } else {
      out.push_back(gap(0.3));
      out.push_back(as_texts(about));
    }
    return out;
  }

  /// One under the other, with the portrait in the corner if it is to have some height.
  BlockPtr with_portrait(std::vector<BlockPtr> blocks, Length height) const {
    if (height == Length{}) return column(std::move(blocks));
    std::string says = input_.pet.name.value;
    for (const TextSpan& span : looks_text(desk_)) {
      says += (says == input_.pet.name.value ? colon(voice_.words) : "") + span.text;
    }
    constexpr double aspect = 4.0 / 3;
    const auto picture =
        std::make_shared<Picture>(input_.portrait, std::move(says), std::nullopt, aspect, height,
                                  height, 0, Origin{"photo", input_.pet.photo_span});
    return std::make_shared<AroundCorner>(std::move(blocks), picture,
                                          Size{scaled(height, aspect), height}, Length::mm(5),
                                          Length::mm(1.5));
  }

  static BlockPtr notes(const std::vector<SheetRow>& all,
                        const std::shared_ptr<LabelColumn>& labels) {
    std::vector<LabelRow> rows;
    for (const SheetRow& note : all) rows.push_back(label_row(note));
    return std::make_shared<Rows>(std::move(rows), labels);
  }

  static BlockPtr as_texts(const std::vector<SheetRow>& notes) {
    std::vector<BlockPtr> out;
    for (const SheetRow& note : notes) out.push_back(as_text(note, Face::semibold));
    return column(std::move(out));
  }

  /// A head, a rule, and what belongs to it.
  BlockPtr section(Phrase head, BlockPtr content) const {
    return column({heading(voice_.words.say(head), Role::label, Face::semibold),
                   std::make_shared<Gap>(0.15, 0.15, 0), std::make_shared<Rule>(rule_head),
                   std::make_shared<Gap>(0.25, 0.2, 0), std::move(content)});
  }

  BlockPtr figure(Length least) const {
    return dog_figure(figure_, dog_, least, most_figure, 8, {"figure", {}});
  }

  BlockPtr before(WithHow how) const {
    std::vector<BlockPtr> out;
    for (const SheetRow& note : style_before(desk_, how)) {
      if (!out.empty()) out.push_back(std::make_shared<Gap>(0.3, 0.15, 0));
      out.push_back(as_text(note, Face::semibold, after_label, "before the trim"));
    }
    return section(Phrase::head_before, column(std::move(out)));
  }

  /// Several notes in one text after its head.
  BlockPtr flowing(Phrase head, std::vector<SheetRow> notes) const {
    std::vector<TextSpan> text{{voice_.words.say(head) + after_label, Face::bold}};
    for (SheetRow& note : notes) {
      text.push_back({note.label + colon(voice_.words), Face::semibold});
      std::ranges::move(note.text, std::back_inserter(text));
      text.push_back({"\u2007 "});
    }
    text.pop_back();
    return paragraph(std::move(text), TextStyle{}, {"what if", input_.pet.span});
  }

  BlockPtr what_if() const {
    std::vector<BlockPtr> out;
    for (const SheetRow& note : style_what_if(desk_)) {
      if (!out.empty()) out.push_back(gap(0.25));
      out.push_back(as_text(note, Face::semibold, colon(voice_.words), "what if"));
    }
    return column(std::move(out));
  }

  BlockPtr questions() const {
    std::vector<BlockPtr> ask;
    for (const std::string& question : style_questions(rows_, desk_)) {
      ask.push_back(paragraph(question));
      ask.push_back(std::make_shared<BlankLine>());
      ask.push_back(gap(0.6));  // the line belongs to the question above it
    }
    ask.push_back(std::make_shared<BlankLine>(voice_.words.say(Phrase::answered_by)));
    return column(std::move(ask));
  }

  /// The line for the answer behind each question, two side by side.
  BlockPtr questions_in_line() const {
    std::vector<BlockPtr> ask;
    for (const std::string& question : style_questions(rows_, desk_)) {
      ask.push_back(std::make_shared<BlankLine>(question));
    }
    ask.push_back(std::make_shared<BlankLine>(voice_.words.say(Phrase::answered_by)));
    std::vector<BlockPtr> lines;
    for (std::size_t i = 0; i < ask.size(); i += 2) {
      const bool pair = i + 1 < ask.size();
      lines.push_back(pair ? beside(ask[i], ask[i + 1], 1, 1) : ask[i]);
    }
    return column(std::move(lines));
  }

  BlockPtr with_code(BlockPtr block) const {
    if (!code_beside()) return block;
    std::vector<Beside::Cell> cells{{std::move(block), {}, 1}, {code(), side_}};
    return std::make_shared<Beside>(std::move(cells), Length::mm(5), Beside::Line::top);
  }

  const SheetDesk& desk_;
  const SheetInput& input_;
  const SheetVoice& voice_;
  std::vector<StyleRow> rows_;
  FigureInput figure_;
  DrawnDogPtr dog_;
  std::optional<QrCode> code_;  ///< none: not asked for, or more than any size holds
  Length side_;                 ///< the code's
};

constexpr Length close = 3_mm, closest = 2_mm;

/// The ways to arrange the sheet on one side, most generous first, each with a portrait of that
/// height.
std::vector<Layout> layouts_of(const StyleMaker& maker, Length portrait) {
  const auto make = [&maker, portrait](Arrangement arrangement) {
    return [&maker, portrait, arrangement] { return maker.make(arrangement, portrait); };
  };
  return {
      {"open", make(Arrangement::open)},
      {"short", make(Arrangement::short_open)},
      {"dense", make(Arrangement::dense), close},
  };
}

/// The ways to arrange its front where it goes on, and at last all of it in pieces.
std::vector<Division> divisions_of(const StyleMaker& maker, Length portrait) {
  const double close_leading = maker.close_leading();
  const std::vector<Division::Pieces> rest{[&maker] { return maker.rest(); }};
  const auto front = [&maker, portrait](Arrangement arrangement) -> Division::Pieces {
    return [&maker, portrait, arrangement] { return maker.front(arrangement, portrait); };
  };
  return {
      {"open front", front(Arrangement::open), rest},
      {"short front", front(Arrangement::short_open), rest},
      {"dense front", front(Arrangement::dense), rest, close},
      {"tight front", front(Arrangement::tight), rest, closest, close_leading},
      {"front in two", front(Arrangement::in_two), rest, closest, close_leading},
      {"flowing", {}, {[&maker] { return maker.all(); }}, close},
  };
}

/// The same page with the largest portrait that costs neither its arrangement nor its type; empty
/// if every one would.
std::optional<ComposedPage> with_portrait(const ComposedPage& bare, PageRequest request,
                                          const StyleMaker& maker, TextShaper& shaper) {
  for (const Length height : {34_mm, 30_mm, 27_mm, 24_mm, 20_mm}) {
    request.layouts = layouts_of(maker, height);
    request.divisions = divisions_of(maker, height);
    const auto other = [&](const auto& one) { return one.name != bare.layout; };
    std::erase_if(request.layouts, other);
    std::erase_if(request.divisions, other);
    DiagnosticSink unheard;  // that it does not fit is no fault
    auto page = compose(request, shaper, unheard);
    if (page && page->step >= bare.step && page->squeezed == bare.squeezed) return page;
  }
  return std::nullopt;
}
}  // namespace

std::optional<Sheet> make_style_sheet(const SheetDesk& desk, DiagnosticSink& sink) {
  const SheetInput& input = desk.input;
  const StyleMaker maker(desk);
  const std::string title = desk.voice.words.say(Phrase::style_title, {input.pet.name.value});
  PageRequest request = page_request(input);
  request.layouts = layouts_of(maker, {});
  request.divisions = divisions_of(maker, {});
  go_on(request, desk, maker.foot(true), maker.foot(false), title);
  TextShaper& shaper = desk.voice.shaper;
  auto page = compose(request, shaper, sink);
  if (!page) return std::nullopt;
  if (input.portrait != nullptr) {
    if (auto better = with_portrait(*page, request, maker, shaper)) page = std::move(better);
  }
  maker.report(*page, sink);
  return finished(*std::move(page), desk, title, Phrase::style_subject);
}
}  // namespace furnish
