#include "page/compose.h"

#include <fmt/format.h>

#include <algorithm>

#include "page/direction.h"
#include "page/mirror.h"

namespace furnish {
namespace {

/// The page's parts at one growth step: what the root and the foot need, and the room for the root.
struct Measured {
  Extent root, foot;
  Length room;
  bool wide() const { return root.too_wide > Length{} || foot.too_wide > Length{}; }
  bool fits() const { return !wide() && root.wanted <= room; }
  bool fits_squeezed() const { return !wide() && root.least <= room; }
};

class Fitter {
 public:
  Fitter(const PageRequest& request, const Layout& layout, TextShaper& shaper)
      : request_(request),
        rhythm_(layout.rhythm.value_or(request.rhythm)),
        leading_(layout.leading),
        shaper_(shaper) {
    Insets margins = request.margins;
    margins.top = std::max(margins.top, request.free_top);
    area_ = inset({{}, request.size}, margins);
  }

  Setting setting(int step, Precision precision) const {
    return {TypeScale(request_.roles, shaper_.fonts().capital_height(), step, request_.steps),
            rhythm_, shaper_, precision, leading_};
  }

  Measured measure(const Block& root, int step, Precision precision) {
    ++(precision == Precision::draft ? drafts_ : measures_);
    const Setting at = setting(step, precision);
    Measured page;
    page.root = root.measure(area_.size.width, at);
    page.room = area_.size.height;
    if (request_.footer) {
      page.foot = request_.footer->measure(area_.size.width, at);
      page.room -= page.foot.wanted + rhythm_;
    }
    return page;
  }

  /// The largest step at which the root fits with its gaps as designed; empty if it fits at none.
  /// After this: the step was tried with the text set, not only drafted.
  std::optional<int> largest_step(const Block& root) {
    int step = drafted_step(root);
    // The draft knows no kerning: where it was too hopeful step back, where too careful go on. What
    // was set once is kept, so a step that was tried costs nothing when the page is placed.
    while (step >= 0 && !measure(root, step, Precision::exact).fits()) --step;
    return step < 0 ? std::nullopt : std::optional(step);
  }

  void place(const Block& root, int step, Frame& frame) const {
    const Setting at = setting(step, Precision::exact);
    const TagScope document(frame, Structure::document);
    Length room = area_.size.height;
    if (request_.footer) {
      const Length height = request_.footer->measure(area_.size.width, at).wanted;
      room -= height + rhythm_;
      root.place({area_.origin, {area_.size.width, room}}, at, frame);
      request_.footer->place({{area_.left(), area_.bottom() - height}, {area_.size.width, height}},
                             at, frame);
    } else {
      root.place({area_.origin, {area_.size.width, room}}, at, frame);
    }
  }

  int measures() const { return measures_; }
  int drafts() const { return drafts_; }
  Length width() const { return area_.size.width; }

 private:
  /// By halving; 0 even if the draft fits nowhere, since the draft may be wrong.
  int drafted_step(const Block& root) {
    int fits = 0, beyond = request_.steps + 1;
    while (beyond - fits > 1) {
      const int middle = fits + (beyond - fits) / 2;
      (measure(root, middle, Precision::draft).fits() ? fits : beyond) = middle;
    }
    return fits;
  }

  const PageRequest& request_;
  Length rhythm_;
  double leading_;
  TextShaper& shaper_;
  Rect area_;
  int measures_ = 0, drafts_ = 0;
};

/// Every block with a name, and of those inside each other the outer one.
void collect_named(const Block::Part& part, Length width, const Setting& setting,
                   std::vector<Block::Part>& named) {
  if (!part.block->origin().name.empty()) {
    named.push_back(part);
    return;
  }
  for (const Block::Part& inner : part.block->parts(width, setting)) {
    collect_named(inner, width, setting, named);
  }
}

/// Tenths of a millimetre, upwards, so that nothing is ever "0.0 mm too tall".
std::string tenths(Length length) {
  const std::int64_t tenths = (length.um() + 99) / 100;
  return fmt::format("{}.{} mm", tenths / 10, tenths % 10);
}

void report(const PageRequest& request, const Measured& page, const Block& root, Length width,
            const Setting& setting, DiagnosticSink& sink) {
  std::vector<Block::Part> named;
  collect_named({&root, page.root}, width, setting, named);
  if (request.footer) collect_named({request.footer.get(), page.foot}, width, setting, named);
  if (page.wide()) {
    const auto widest = std::ranges::max_element(
        named, {}, [](const Block::Part& part) { return part.extent.too_wide; });
    const bool found = widest != named.end() && widest->extent.too_wide > Length{};
    sink.error(
            "page-too-wide", found ? widest->block->origin().span : request.span,
            fmt::format(
                "{} is {} too wide for {}",
                found ? fmt::format("'{}'", widest->block->origin().name) : "the " + request.noun,
                tenths(std::max(page.root.too_wide, page.foot.too_wide)), request.paper_name))
        .hint = "shorten it, or choose a larger paper";
    return;
  }
  std::ranges::stable_sort(named, std::ranges::greater{},
                           [](const Block::Part& part) { return part.extent.least; });
  Diagnostic& fault =
      sink.error("page-overflow", request.span,
                 fmt::format("the {} is {} too tall for {}", request.noun,
                             tenths(page.root.least - page.room), request.paper_name));
  fault.hint = "shorten what takes the most room, or choose a larger paper";
  for (const Block::Part& part : named) {
    if (fault.notes.size() == 3) break;
    fault.notes.emplace_back(part.block->origin().span,
                             fmt::format("'{}' takes {} mm", part.block->origin().name,
                                         (part.extent.least.um() + 500) / 1000));
  }
}

/// What may hold other structure only; anything drawn in it without a tag of its own is decoration.
bool is_container(Structure role) {
  switch (role) {
    case Structure::document:
    case Structure::section:
    case Structure::table:
    case Structure::row:
    case Structure::cell:
    case Structure::header_cell:
    case Structure::list:
    case Structure::item:
      return true;
    default:
      return false;
  }
}

/// Rules, grounds and marks that stand between the pieces of text go first, outside all structure,
/// so that a table holds only rows and a list only items, and black grounds are painted under their
/// text.
std::vector<Mark> decoration_first(std::vector<Mark> marks) {
  std::vector<Mark> decoration, content;
  std::vector<Structure> open;
  for (Mark& mark : marks) {
    if (const auto* tag = std::get_if<OpenTag>(&mark)) open.push_back(tag->role);
    const bool closes = std::holds_alternative<CloseTag>(mark),
               structural = closes || std::holds_alternative<OpenTag>(mark),
               text =
                   std::holds_alternative<TextMark>(mark) || std::holds_alternative<LinkMark>(mark),
               loose = std::ranges::all_of(open, is_container);
    if (closes) open.pop_back();
    (structural || text || !loose ? content : decoration).push_back(std::move(mark));
  }
  std::ranges::move(content, std::back_inserter(decoration));
  return decoration;
}
}  // namespace

std::optional<ComposedPage> compose(const PageRequest& request, TextShaper& shaper,
                                    DiagnosticSink& sink) {
  struct Attempt {
    Fitter fitter;
    BlockPtr root;
    Measured smallest;
  };
  std::vector<Attempt> attempts;
  const Attempt* chosen = nullptr;
  ComposedPage page;
  attempts.reserve(request.layouts.size());
  const auto squeeze = [&] {
    for (Attempt& attempt : attempts) {
      attempt.smallest = attempt.fitter.measure(*attempt.root, 0, Precision::exact);
      if (!attempt.smallest.fits_squeezed()) continue;
      chosen = &attempt;
      page.squeezed = true;
      return;
    }
  };
  for (const Layout& layout : request.layouts) {
    if (layout.last_resort) squeeze();
    if (chosen) break;
    Attempt& attempt = attempts.emplace_back(Attempt{{request, layout, shaper}, layout.make(), {}});
    if (const auto step = attempt.fitter.largest_step(*attempt.root)) {
      chosen = &attempt;
      page.step = *step;
      break;
    }
  }
  if (!chosen) squeeze();
  if (!chosen) {
    if (!attempts.empty()) {
      const Attempt& last = attempts.back();
      report(request, last.smallest, *last.root, last.fitter.width(),
             last.fitter.setting(0, Precision::exact), sink);
    }
    return std::nullopt;
  }
  page.layout = request.layouts[static_cast<std::size_t>(chosen - attempts.data())].name;
  page.frame.size = request.size;
  chosen->fitter.place(*chosen->root, page.step, page.frame);
  page.frame.marks = decoration_first(std::move(page.frame.marks));
  if (right_to_left(shaper.language())) page.frame = mirrored(std::move(page.frame));
  for (const Attempt& attempt : attempts) {
    page.measures += attempt.fitter.measures();
    page.drafts += attempt.fitter.drafts();
  }
  return page;
}
}  // namespace furnish
