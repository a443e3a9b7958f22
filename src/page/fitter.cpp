#include "page/fitter.h"

#include <fmt/format.h>

#include <algorithm>

#include "page/direction.h"
#include "page/mirror.h"

namespace furnish {
namespace {
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

Fitter::Fitter(const PageRequest& request, SideStyle style, TextShaper& shaper)
    : request_(request), style_(std::move(style)), shaper_(shaper) {
  Insets margins = request.margins;
  margins.top = std::max(margins.top, request.free_top);
  area_ = inset({{}, request.size}, margins);
}

Setting Fitter::setting(int step, Precision precision) const {
  return {TypeScale(request_.roles, shaper_.fonts().capital_height(), step, request_.steps),
          style_.rhythm.value_or(request_.rhythm), shaper_, precision, style_.leading};
}

Measured Fitter::measure(const Block& root, int step, Precision precision) {
  ++(precision == Precision::draft ? drafts_ : measures_);
  const Setting at = setting(step, precision);
  Measured page;
  page.root = root.measure(area_.size.width, at);
  page.room = area_.size.height;
  if (style_.foot) {
    page.foot = style_.foot->measure(area_.size.width, at);
    page.room -= page.foot.wanted + at.rhythm;
  }
  return page;
}

bool Fitter::hopeless(const Block& root) {
  // A draft errs by a few parts in a hundred; where letters join, by more.
  constexpr std::int64_t fifth = 5;
  const Measured page = measure(root, 0, Precision::draft);
  return page.root.least > page.room + page.room / fifth;
}

std::optional<int> Fitter::largest_step(const Block& root, int most) {
  int step = drafted_step(root, most);
  // The draft knows no kerning: where it was too hopeful step back, where too careful go on. What
  // was set once is kept, so a step that was tried costs nothing when the page is placed.
  while (step >= 0 && !measure(root, step, Precision::exact).fits()) --step;
  return step < 0 ? std::nullopt : std::optional(step);
}

/// By halving; 0 even if the draft fits nowhere, since the draft may be wrong.
int Fitter::drafted_step(const Block& root, int most) {
  int fits = 0, beyond = most + 1;
  while (beyond - fits > 1) {
    const int middle = fits + (beyond - fits) / 2;
    (measure(root, middle, Precision::draft).fits() ? fits : beyond) = middle;
  }
  return fits;
}

void Fitter::place(const Block& root, int step, Frame& frame) const {
  const Setting at = setting(step, Precision::exact);
  const TagScope document(frame, Structure::document);
  Length room = area_.size.height;
  if (!style_.foot) {
    root.place({area_.origin, {area_.size.width, room}}, at, frame);
    return;
  }
  const Length height = style_.foot->measure(area_.size.width, at).wanted;
  room -= height + at.rhythm;
  root.place({area_.origin, {area_.size.width, room}}, at, frame);
  style_.foot->place({{area_.left(), area_.bottom() - height}, {area_.size.width, height}}, at,
                     frame);
}

Frame Fitter::set(const Block& root, int step) const {
  Frame frame;
  frame.size = request_.size;
  place(root, step, frame);
  frame.marks = decoration_first(std::move(frame.marks));
  return right_to_left(shaper_.language()) ? mirrored(std::move(frame)) : frame;
}

void Fitter::report(const Block& root, const Measured& page, DiagnosticSink& sink) const {
  const Setting at = setting(0, Precision::exact);
  std::vector<Block::Part> named;
  collect_named({&root, page.root}, width(), at, named);
  if (style_.foot) collect_named({style_.foot.get(), page.foot}, width(), at, named);
  if (page.wide()) {
    const auto widest = std::ranges::max_element(
        named, {}, [](const Block::Part& part) { return part.extent.too_wide; });
    const bool found = widest != named.end() && widest->extent.too_wide > Length{};
    sink.error(
            "page-too-wide", found ? widest->block->origin().span : request_.span,
            fmt::format(
                "{} is {} too wide for {}",
                found ? fmt::format("'{}'", widest->block->origin().name) : "the " + request_.noun,
                tenths(std::max(page.root.too_wide, page.foot.too_wide)), request_.paper_name))
        .hint = "shorten it, or choose a larger paper";
    return;
  }
  std::ranges::stable_sort(named, std::ranges::greater{},
                           [](const Block::Part& part) { return part.extent.least; });
  Diagnostic& fault =
      sink.error("page-overflow", request_.span,
                 fmt::format("the {} is {} too tall for {}", request_.noun,
                             tenths(page.root.least - page.room), request_.paper_name));
  fault.hint = "shorten what takes the most room, or choose a larger paper";
  for (const Block::Part& part : named) {
    if (fault.notes.size() == 3) break;
    fault.notes.emplace_back(part.block->origin().span,
                             fmt::format("'{}' takes {} mm", part.block->origin().name,
                                         (part.extent.least.um() + 500) / 1000));
  }
}
}  // namespace furnish
