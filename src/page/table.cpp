#include "page/table.h"

#include <algorithm>

#include "page/list.h"
#include "page/measured_rule.h"
#include "page/remembered.h"
#include "page/stack.h"

namespace furnish {
namespace {
constexpr double cell_padding = 0.2, gutter_share = 0.75;  ///< of the rhythm
/// In parts of the size: width of the diamond, air before it, its middle above the baseline.
constexpr double mark = 0.5, mark_air = 0.3, mark_middle = 0.243;
/// In parts of the size: width and height of a patch, air after it.
constexpr double patch_width = 1.5, patch_height = 0.85, patch_air = 0.5;
constexpr Length patch_outline = Length::mm(0.15);

/// A circle of paper with a bar through it.
void strike(Point at, Length radius, Frame& frame) {
  constexpr double control = 0.5523, slope = 0.7071;  // of a quarter of a circle; of 45°
  const Length bend = scaled(radius, control), weight = scaled(radius, 0.3);
  const auto point = [&](Length x, Length y) { return Point{at.x + x, at.y + y}; };
  const Contour circle{point(radius, {}),
                       {{point(radius, bend), point(bend, radius), point({}, radius)},
                        {point(-bend, radius), point(-radius, bend), point(-radius, {})},
                        {point(-radius, -bend), point(-bend, -radius), point({}, -radius)},
                        {point(bend, -radius), point(radius, -bend), point(radius, {})}}};
  frame.marks.emplace_back(PathMark{{circle}, Ink::paper, Ink::text, weight, Dash::solid});
  const Length end = scaled(radius, slope);
  frame.marks.emplace_back(
      StrokeMark{point(-end, -end), point(end, end), weight, Ink::text, Dash::solid});
}

struct Cell {
  std::shared_ptr<const Paragraph> text;
  Role role;
  bool diamond;
  std::optional<HatchMark> patch;
  bool struck;
  bool empty;

  Length patch_room(const Setting& setting) const {
    return patch ? scaled(setting.type[role].length(), patch_width + patch_air) : Length{};
  }
  Length mark_width(const Setting& setting) const {
    return diamond ? scaled(setting.type[role].length(), mark + mark_air) : Length{};
  }
  Length natural_width(const Setting& setting) const {
    return patch_room(setting) + text->natural_width(setting) + mark_width(setting);
  }
  Length text_width(Length width, const Setting& setting) const {
    return width - patch_room(setting) - mark_width(setting);
  }
  Extent measure(Length width, const Setting& setting) const {
    return text->measure(text_width(width, setting), setting);
  }
  /// The patch at `left`, its middle that of the capitals on `line`.
  void place_patch(Length left, Length line, const Setting& setting, Frame& frame) const {
    if (!patch) return;
    const Length size = setting.type[role].length();
    const Contour area =
        rectangle_contour({{left, line - scaled(size, mark_middle + patch_height / 2 + 0.09)},
                           {scaled(size, patch_width), scaled(size, patch_height)}});
    HatchMark hatch = *patch;
    hatch.area = {area};
    frame.marks.emplace_back(hatch);
    if (struck) {
      hatch.degrees += 90;
      frame.marks.emplace_back(std::move(hatch));
    }
    frame.marks.emplace_back(PathMark{{area}, std::nullopt, Ink::text, patch_outline, Dash::solid});
    if (struck)
      strike({left + scaled(size, patch_width / 2), line - scaled(size, mark_middle + 0.09)},
             scaled(size, patch_height / 2 - 0.04), frame);
  }
};

/// What all rows of a table share: how wide its columns are.
struct GridRow {
  std::vector<Cell> cells;
  std::optional<std::size_t> spanning;  ///< the cell that runs on to the right edge
};
struct Grid {
  std::vector<TableColumn> columns;
  std::vector<GridRow> rows;  ///< the head first; before any width is asked for
  Length least_gutter{};

  Length gutter(const Setting& setting) const {
    return std::max(least_gutter, scaled(setting.rhythm, gutter_share));
  }

  /// Each row asks for them, and each is as wide as what is in all rows.
  const std::vector<Length>& widths(Length width, const Setting& setting) const {
    return widths_.of(width, setting, [&] { return worked_out(width, setting); });
  }

 private:
  std::vector<Length> worked_out(Length width, const Setting& setting) const {
    std::vector<Length> result(columns.size());
    Length rest = width - gutter(setting) * (static_cast<std::int64_t>(columns.size()) - 1),
           natural;
    std::int64_t shares = 0;
    for (std::size_t i = 0; i < columns.size(); ++i) {
      switch (columns[i].kind) {
        case TableColumn::Kind::fixed:
          result[i] = columns[i].width;
          rest -= result[i];
          break;
        case TableColumn::Kind::natural:
          for (const GridRow& row : rows) {
            if (row.spanning == i) continue;
            result[i] = std::max(result[i], row.cells[i].natural_width(setting));
          }
          natural += result[i];
          break;
        case TableColumn::Kind::flexible:
          shares += columns[i].flex;
          break;
      }
    }
    Length most = shares > 0 ? rest - width * 3 / 10 : rest;
    // What shares the rest keeps three tenths of the width, or less if it needs less.
    if (natural > most && shares > 0) most = std::max(most, rest - flexible_need(setting));
    most = std::max(Length{}, most);
    if (natural > most) {
      Length given;
      for (std::size_t i = 0; i < columns.size(); ++i) {
        if (columns[i].kind != TableColumn::Kind::natural) continue;
        result[i] = Length::micrometres(result[i].um() * most.um() / natural.um());
        given += result[i];
      }
      natural = given;
    }
    rest = std::max(Length{}, rest - natural);
    std::int64_t given = 0;
    for (std::size_t i = 0; i < columns.size(); ++i) {
      if (columns[i].kind != TableColumn::Kind::flexible) continue;
      result[i] = rest * (given + columns[i].flex) / shares - rest * given / shares;
      given += columns[i].flex;
    }
    return result;
  }
  /// How wide all flexible columns would be on lines of their own.
  Length flexible_need(const Setting& setting) const {
    Length need;
    for (std::size_t i = 0; i < columns.size(); ++i) {
      if (columns[i].kind != TableColumn::Kind::flexible) continue;
      Length widest;
      for (const GridRow& row : rows) {
        if (row.spanning != i) widest = std::max(widest, row.cells[i].natural_width(setting));
      }
      need += widest;
    }
    return need;
  }

  mutable Remembered<std::vector<Length>> widths_;
};

GridRow cells_of(TableRow row, const std::vector<TableColumn>& columns, Role role,
                 const Origin& origin) {
  GridRow made;
  if (row.spans && !row.cells.empty()) made.spanning = row.cells.size() - 1;
  row.cells.resize(columns.size());
  for (std::size_t i = 0; i < columns.size(); ++i) {
    const TextStyle style{.role = role, .align = columns[i].align, .structure = std::nullopt};
    const TableCell& cell = row.cells[i];
    const bool empty =
        !cell.diamond && !cell.patch &&
        std::ranges::all_of(cell.text, [](const TextSpan& span) { return span.text.empty(); });
    made.cells.push_back({std::make_shared<Paragraph>(std::move(row.cells[i].text), style, origin),
                          role, row.cells[i].diamond, std::move(row.cells[i].patch),
                          row.cells[i].struck, empty});
  }
  return made;
}

BlockPtr rule_under(const std::optional<LengthRange>& bar, bool closes_group) {
  const Length weight = closes_group ? rule_group : rule_row;
  const Ink ink = closes_group ? Ink::text : Ink::quiet;
  if (bar) return std::make_shared<MeasuredRule>(*bar, weight, ink);
  return std::make_shared<Rule>(weight, ink);
}
}  // namespace

/// One row of a grid, all its first lines on one baseline.
class Table::Row final : public Block {
 public:
  /// `on_bar`: a bar lies under it, which is air enough below.
  Row(std::shared_ptr<const Grid> grid, std::size_t number, Origin origin, std::string id,
      bool on_bar)
      : Block(std::move(origin)),
        grid_(std::move(grid)),
        number_(number),
        id_(std::move(id)),
        on_bar_(on_bar) {}

  Extent measure(Length width, const Setting& setting) const override {
    return measured_.of(width, setting, [&] { return worked_out(width, setting); });
  }

  void place(const Rect& box, const Setting& setting, Frame& frame) const override {
    const std::vector<Length> widths = this->widths(box.size.width, setting);
    const Extent extent = measure(box.size.width, setting);
    const Length line = box.top() + extent.baseline + (box.size.height - extent.wanted) / 2;
    const TagScope row(frame, Structure::row, {}, id_);
    Length left = box.left();
    const auto filled = [](const Cell& cell) { return !cell.empty; };
    const auto first = std::ranges::find_if(cells(), filled) - cells().begin(),
               last = std::find_if(cells().rbegin(), cells().rend(), filled).base() - 1 -
                      cells().begin();
    for (std::size_t i = 0; i < cells().size(); ++i) {
      const Cell& cell = cells()[i];
      if (widths[i] == Length{}) continue;
      const auto at = static_cast<std::ptrdiff_t>(i);
      std::optional<TagScope> tag;
      if (at >= first && at <= last) tag.emplace(frame, opened(i, first, last));
      const Extent text = cell.measure(widths[i], setting);
      const Length width = cell.text_width(widths[i], setting),
                   start = left + cell.patch_room(setting);
      cell.place_patch(left, line, setting, frame);
      cell.text->place({{start, line - text.baseline}, {width, text.wanted}}, setting, frame);
      if (cell.diamond) {
        const Length size = setting.type[cell.role].length(),
                     end = start + cell.text->first_line_width(width, setting);
        const Point middle{end + scaled(size, mark_air + mark / 2),
                           line - scaled(size, mark_middle)};
        const TagScope sign(frame, Structure::sign);
        frame.marks.emplace_back(PathMark{
            {diamond(middle, scaled(size, mark))}, Ink::text, std::nullopt, {}, Dash::solid});
      }
      left += widths[i] + grid_->gutter(setting);
    }
  }

 private:
  Extent worked_out(Length width, const Setting& setting) const {
    const std::vector<Length> widths = this->widths(width, setting);
    std::vector<Extent> each;
    Extent whole{};
    Length used;
    for (std::size_t i = 0; i < cells().size(); ++i) {
      if (widths[i] == Length{}) {
        each.push_back({});
        continue;
      }
      if (i > 0) used += grid_->gutter(setting);
      each.push_back(cells()[i].measure(widths[i], setting));
      whole.baseline = std::max(whole.baseline, each[i].baseline);
      whole.too_wide = std::max(whole.too_wide, each[i].too_wide);
      used += widths[i];
    }
    whole.too_wide = std::max(whole.too_wide, used - width);
    for (const Extent& cell : each) {
      const Length drop = whole.baseline - cell.baseline;
      whole.wanted = std::max(whole.wanted, drop + cell.wanted);
      whole.last_baseline = std::max(whole.last_baseline, drop + cell.last_baseline);
    }
    const Length padding = scaled(setting.rhythm, cell_padding);
    whole.wanted += on_bar_ ? padding : padding * 2;
    whole.baseline += padding;
    whole.last_baseline += padding;
    whole.least = whole.wanted;
    return whole;
  }

  /// The tag of a cell, of which `first` and `last` of its row are the ones with something in them.
  OpenTag opened(std::size_t i, std::ptrdiff_t first, std::ptrdiff_t last) const {
    const auto at = static_cast<std::ptrdiff_t>(i),
               count = static_cast<std::ptrdiff_t>(cells().size());
    const bool heads = number_ == 0 || first > 0 || grid_->columns[i].heads_rows;
    OpenTag tag{heads ? Structure::header_cell : Structure::cell, {}, {}};
    tag.columns =
        static_cast<int>(1 + (at == first ? first : 0) + (at == last ? count - 1 - last : 0));
    return tag;
  }
  const std::vector<Cell>& cells() const { return grid_->rows[number_].cells; }
  /// Of each cell: its column's, but all that is left for one that spans, and none after it.
  std::vector<Length> widths(Length width, const Setting& setting) const {
    std::vector<Length> each = grid_->widths(width, setting);
    const auto spanning = grid_->rows[number_].spanning;
    for (std::size_t i = spanning ? *spanning + 1 : each.size(); i < each.size(); ++i) {
      each[*spanning] += each[i] + grid_->gutter(setting);
      each[i] = {};
    }
    return each;
  }
  std::shared_ptr<const Grid> grid_;
  std::size_t number_;
  std::string id_;
  bool on_bar_;
  mutable Remembered<Extent> measured_;
};

Table::Table(std::vector<TableColumn> columns, std::vector<TableRow> rows, Role role, Origin origin,
             Head shown, Length least_gutter)
    : Block(std::move(origin)) {
  auto grid = std::make_shared<Grid>();
  TableRow head;
  for (const TableColumn& column : columns) {
    head.cells.push_back({{{.text = column.head, .face = Face::semibold}}, false});
  }
  grid->columns = std::move(columns);
  grid->least_gutter = least_gutter;
  grid->rows.push_back(cells_of(std::move(head), grid->columns, Role::label, {}));
  std::vector<BlockPtr> blocks;
  if (shown == Head::shown) {
    blocks = {std::make_shared<Row>(grid, 0, Origin{}, std::string(), false),
              std::make_shared<Rule>(rule_head)};
  }
  std::optional<LengthRange> above;
  bool joined = false;
  for (TableRow& row : rows) {
    if (grid->rows.size() > 1 && !joined) blocks.push_back(rule_under(above, row.opens_group));
    joined = row.joins_next;
    above = row.bar;
    const Origin from = row.origin;
    const std::string id = row.id;
    grid->rows.push_back(cells_of(std::move(row), grid->columns, role, from));
    blocks.push_back(
        std::make_shared<Row>(grid, grid->rows.size() - 1, from, id, above.has_value()));
  }
  blocks.push_back(rule_under(above, true));
  stack_ = std::make_shared<Column>(std::move(blocks), Origin{}, Structure::table);
}

Extent Table::measure(Length width, const Setting& setting) const {
  return stack_->measure(width, setting);
}

void Table::place(const Rect& box, const Setting& setting, Frame& frame) const {
  stack_->place(box, setting, frame);
}

std::vector<Block::Part> Table::parts(Length width, const Setting& setting) const {
  return stack_->parts(width, setting);
}
}  // namespace furnish
