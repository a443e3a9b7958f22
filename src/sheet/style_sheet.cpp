#include "sheet/style_sheet.h"

#include <algorithm>

#include "sheet/pieces.h"
#include "sheet/style_back.h"
#include "sheet/style_front.h"

namespace furnish {
namespace {
constexpr Length close = 3_mm, closest = 2_mm;

class StyleMaker {
 public:
  explicit StyleMaker(const SheetDesk& desk)
      : desk_(desk), rows_(style_rows(desk)), front_(rows_, desk), back_(rows_, desk) {}

  /// The ways to arrange the sheet on one side, most generous first, each with a portrait of that
  /// height.
  std::vector<Layout> layouts(Length portrait) const {
    const auto alone = [this, portrait](FrontStyle style, WithHow how) {
      return [this, portrait, style, how] {
        std::vector<BlockPtr> blocks = front_.whole(style, portrait);
        blocks.push_back(gap(1));
        std::ranges::move(back_.whole(how), std::back_inserter(blocks));
        return column(std::move(blocks));
      };
    };
    return {
        {"open", alone(FrontStyle::open, WithHow::yes), {}, 1, false},
        {"short", alone(FrontStyle::open, WithHow::no), {}, 1, false},
        {"close", alone(FrontStyle::open, WithHow::no), close, 1, false},
    };
  }

  /// The ways to arrange it where it turns over, and at last all of it in pieces.
  std::vector<Division> divisions(Length portrait) const {
    const auto front = [this, portrait](FrontStyle style) -> Division::Pieces {
      return [this, portrait, style] { return front_.whole(style, portrait); };
    };
    const std::vector<Division::Pieces> back{
        [this] { return back_.columns(WithHow::yes); },
        [this] { return back_.whole(WithHow::yes); },
        [this] { return back_.whole(WithHow::no); },
        [this] { return back_.columns(WithHow::no); },
        [this] { return back_.pieces(); },
    };
    const std::vector<Division::Pieces> fuller_back{
        [this] { return back_.whole(WithHow::no, front_.left_out()); },
        [this] { return back_.pieces(front_.left_out()); },
    };
    const std::vector<Division::Pieces> table{
        [this] { return joined(front_.table_in_two(), back_.whole(WithHow::no)); },
        [this] { return joined(front_.table_in_pieces(), back_.pieces()); },
    };
    const Division::Pieces all = [this] { return joined(front_.pieces(), back_.pieces()); };
    std::vector<Division> out{
        {"open front", front(FrontStyle::open), back},
        {"close front", front(FrontStyle::open), back, close},
        {"dense front", front(FrontStyle::dense), back, close},
        {"tight front", front(FrontStyle::tight), back, closest, close_leading()},
        {"front in two", front(FrontStyle::in_two), back, closest, close_leading()},
        {"signed rows", front(FrontStyle::signed_rows), back, closest, close_leading()},
        {"lean front", front(FrontStyle::lean), fuller_back, closest, close_leading()},
        {"table after",
         [this, portrait] { return front_.without_table(portrait); },
         {table},
         close},
        {"flowing", {}, {all}, closest},
    };
    for (Division& one : out) one.rest_grows = true;
    return out;
  }

  /// Of a sheet on one side, or on more.
  FootText foot() const {
    const Words& words = desk_.voice.words;
    const std::string date = desk_.voice.locale.long_date(desk_.input.today);
    const std::string& salon = desk_.input.salon.name;
    return {salon.empty() ? date : words.written(salon) + "\u00A0· " + date,
            words.say(Phrase::local_rules)};
  }

  void report(DiagnosticSink& sink) const { back_.report(sink); }

 private:
  /// 1.17 from baseline to baseline, where letters are no higher than ours: Arabic ones are.
  double close_leading() const { return desk_.voice.words.language().starts_with("ar") ? 1 : 0.94; }

  static std::vector<BlockPtr> joined(std::vector<BlockPtr> blocks, std::vector<BlockPtr> more) {
    std::ranges::move(more, std::back_inserter(blocks));
    return blocks;
  }

  const SheetDesk& desk_;
  std::vector<StyleRow> rows_;
  StyleFront front_;
  StyleBack back_;
};

/// The same page with the largest portrait that costs neither its arrangement nor its type; empty
/// if every one would.
std::optional<FittedPage> with_portrait(const FittedPage& bare, PageRequest request,
                                        const StyleMaker& maker, TextShaper& shaper) {
  for (const Length height : {34_mm, 30_mm, 27_mm, 24_mm, 20_mm}) {
    request.layouts = maker.layouts(height);
    request.divisions = maker.divisions(height);
    const auto other = [&](const auto& one) { return one.name != bare.layout; };
    std::erase_if(request.layouts, other);
    std::erase_if(request.divisions, other);
    DiagnosticSink unheard;  // that it does not fit is no fault
    auto page = fit(request, shaper, unheard);
    if (page && page->step >= bare.step && page->squeezed == bare.squeezed &&
        page->sides.size() == bare.sides.size()) {
      return page;
    }
  }
  return std::nullopt;
}
}  // namespace

std::optional<Sheet> make_style_sheet(const SheetDesk& desk, DiagnosticSink& sink) {
  const SheetInput& input = desk.input;
  const StyleMaker maker(desk);
  const std::string title = desk.voice.words.say(Phrase::style_title, {input.pet.name.value});
  PageRequest request = page_request(input);
  request.layouts = maker.layouts({});
  request.divisions = maker.divisions({});
  go_on(request, desk, maker.foot(), maker.foot(), title);
  TextShaper& shaper = desk.voice.shaper;
  auto page = fit(request, shaper, sink);
  if (!page) return std::nullopt;
  if (input.portrait != nullptr) {
    if (auto better = with_portrait(*page, request, maker, shaper)) page = std::move(better);
  }
  maker.report(sink);
  return finished(set(request, *page, shaper), desk, title, Phrase::style_subject);
}
}  // namespace furnish
