#include "output/sample_page.h"

#include <fmt/format.h>

#include <cmath>
#include <numbers>
#include <stdexcept>

namespace furnish::test {
Type::Type() : fonts_(FontSet::open(FURNISH_SOURCE_DIR "/fonts", sink_)) {
  if (!fonts_) throw std::runtime_error("the bundled fonts do not open");
  shaper_ = std::make_unique<TextShaper>(*fonts_, sink_);
}

namespace {
SizedText run_of(std::string text, double points, Face face) {
  SizedText run;
  run.text = std::move(text);
  run.face = face;
  run.size = TypeSize::at_least(points);
  return run;
}
}  // namespace

std::shared_ptr<const ShapedLine> Type::line(std::string text, double points, Face face) {
  const auto shaped =
      shaper_->shape({run_of(std::move(text), points, face)}, Length{}, Breaking::never);
  if (!sink_.all().empty()) throw std::runtime_error(sink_.all().front().message);
  return shaped->lines.at(0);
}

std::vector<std::shared_ptr<const ShapedLine>> Type::lines(std::string text, Length width) {
  return shaper_->shape({run_of(std::move(text), 9, Face::regular)}, width, Breaking::words)->lines;
}

void Composer::text(double x, double y, std::string text, double points, Ink ink) {
  frame_.marks.emplace_back(
      TextMark{{Length::mm(x), Length::mm(y)}, type_.line(std::move(text), points), ink, "body"});
}

void Composer::lines(double x, double y, std::string text, double width_mm) {
  for (auto& line : type_.lines(std::move(text), Length::mm(width_mm))) {
    frame_.marks.emplace_back(
        TextMark{{Length::mm(x), Length::mm(y)}, std::move(line), Ink::text, "body"});
    y += 4;
  }
}

void Composer::rule(double x, double y, double to_x, double weight_mm, Ink ink) {
  frame_.marks.emplace_back(StrokeMark{{Length::mm(x), Length::mm(y)},
                                       {Length::mm(to_x), Length::mm(y)},
                                       Length::mm(weight_mm),
                                       ink,
                                       Dash::solid});
}

Contour disc(Point centre, Length radius) {
  // Control points at 0.5523 of the radius: a circle to 0.03 % (from memory, common practice).
  const Length k = scaled(radius, 0.5523);
  const auto at = [&](Length dx, Length dy) { return Point{centre.x + dx, centre.y + dy}; };
  const Length r = radius, o{};
  return {at(r, o),
          {{at(r, k), at(k, r), at(o, r)},
           {at(-k, r), at(-r, k), at(-r, o)},
           {at(-r, -k), at(-k, -r), at(o, -r)},
           {at(k, -r), at(r, -k), at(r, o)}},
          true};
}

Contour box(Rect r) {
  Contour contour{r.origin, {}, true};
  Point last = r.origin;
  for (const Point next :
       {Point{r.right(), r.top()}, Point{r.right(), r.bottom()}, Point{r.left(), r.bottom()}}) {
    contour.curves.push_back({last, next, next});
    last = next;
  }
  return contour;
}

DocumentInfo sample_info() {
  return {"Marlow & <Sandy>: kennel card", "Card of the day", "en-GB", "2026-11-24"};
}

std::vector<std::string> sample_words() {
  return {"Marlow",
          "Today's trim",
          "Leave the furnishings (all of them),",
          "and tidy the tip of the tail.",
          "Region",
          "Tool",
          "chest",
          "thinning shears",
          "pads",
          "blade 30",
          "1",
          "Brush the stiff coat, 10 min",
          "2",
          "Bath: oat shampoo",
          "see chest",
          "Groomer's initials",
          "Length is at the shoulder (μήκος)."};
}

Frame sample_page(Type& type) {
  Frame frame{{148_mm, 210_mm}, {}};
  Composer on(type, frame);
  frame.marks.emplace_back(FillMark{{{0_mm, 0_mm}, {148_mm, 12_mm}}, Ink::tint});
  {
    const auto document = on.tag(Structure::document);
    {
      const auto title = on.tag(Structure::title);
      on.text(10, 30, "Marlow", 30);
    }
    on.rule(10, 34, 138, 0.9);
    const auto section = on.tag(Structure::section);
    {
      const auto heading = on.tag(Structure::heading);
      on.text(10, 45, "Today's trim", 14);
    }
    {
      const auto paragraph = on.tag(Structure::paragraph);
      on.lines(10, 52, "Leave the furnishings (all of them), and tidy the tip of the tail.", 60);
    }
    {
      const auto table = on.tag(Structure::table);
      double y = 62;
      const auto row = [&](std::string head, std::string tool, Structure second, std::string id) {
        const auto tr = on.tag(Structure::row, {}, std::move(id));
        on.rule(10, y + 2, 138, 0.12, Ink::quiet);
        {
          const auto cell = on.tag(Structure::header_cell);
          on.text(10, y, std::move(head));
        }
        const auto cell = on.tag(second);
        on.text(60, y, std::move(tool));
        y += 7;
      };
      row("Region", "Tool", Structure::header_cell, "");
      row("chest", "thinning shears", Structure::cell, "row-chest");
      row("pads", "blade 30", Structure::cell, "row-pads");
    }
    {
      const auto list = on.tag(Structure::list);
      double y = 92;
      const auto item = [&](std::string number, std::string what) {
        const auto li = on.tag(Structure::item);
        {
          const auto label = on.tag(Structure::label);
          on.text(10, y, std::move(number));
        }
        on.text(16, y, std::move(what));
        y += 6;
      };
      item("1", "Brush the stiff coat,\u00a010\u00a0min");
      item("2", "Bath: oat shampoo");
    }
    {
      const auto figure = on.tag(Structure::figure, "Side view of a dog, the chest hatched");
      const Contour trunk = disc({60_mm, 140_mm}, 22_mm);
      frame.marks.emplace_back(HatchMark{{trunk}, 45, 1.2_mm, 0.15_mm, Ink::text, false});
      frame.marks.emplace_back(
          HatchMark{{disc({100_mm, 140_mm}, 12_mm)}, 30, 1.5_mm, 0.4_mm, Ink::text, true});
      frame.marks.emplace_back(PathMark{{trunk}, std::nullopt, Ink::text, 0.5_mm, Dash::solid});
      frame.marks.emplace_back(PathMark{
          {disc({100_mm, 140_mm}, 12_mm)}, std::nullopt, Ink::quiet, 0.3_mm, Dash::dashed});
    }
    {
      const auto link = on.tag(Structure::link);
      frame.marks.emplace_back(
          LinkMark{{{113_mm, 136_mm}, {20_mm, 6_mm}}, "row-chest", "To the row of the chest"});
      on.text(114, 140, "see chest");
    }
    {
      const auto form = on.tag(Structure::form, "Initials of the groomer");
      on.text(10, 180, "Groomer's initials");
      on.rule(50, 180, 90, 0.25);
    }
    {
      const auto note = on.tag(Structure::note);
      on.text(10, 195, "Length is at the shoulder (μήκος).", 7, Ink::quiet);
    }
  }
  frame.marks.emplace_back(PathMark{
      {box({{5_mm, 5_mm}, {138_mm, 200_mm}})}, std::nullopt, Ink::quiet, 0.12_mm, Dash::dotted});
  return frame;
}

Attachment sample_attachment() {
  return {"marlow.toml", "[pet]\nname = \"Marlow\"\ncolour = \"sable, café\"\n", "application/toml",
          "The pet's file"};
}

std::string sample_pdf(Type& type) {
  Frame second = sample_page(type);
  second.size = {210_mm, 297_mm};
  const std::vector<Frame> pages{sample_page(type), second};
  const PdfExtras extras{{{"Marlow", 0, 0}, {"Trim", 0, 1}, {"Sandy", 1, 0}},
                         {sample_attachment()}};
  DiagnosticSink sink;
  const auto bytes = to_pdf(pages, sample_info(), extras, sink);
  if (!bytes) throw std::runtime_error(sink.all().front().message);
  return *bytes;
}

Frame full_page(Type& type) {
  Frame frame{{148_mm, 210_mm}, {}};
  Composer on(type, frame);
  const auto document = on.tag(Structure::document);
  {
    const auto title = on.tag(Structure::title);
    on.text(10, 20, "Marlow", 28);
  }
  for (int i = 0; i < 28; ++i) {
    const auto paragraph = on.tag(Structure::paragraph);
    on.text(i % 2 == 0 ? 10 : 80, 30 + 3.5 * (i / 2),
            fmt::format("Snaps when foot {} is held.", i));
  }
  {
    const auto table = on.tag(Structure::table);
    for (int i = 0; i < 20; ++i) {
      const double y = 84 + 4.2 * i;
      const auto row = on.tag(Structure::row);
      on.rule(10, y + 1.2, 80, 0.12, Ink::quiet);
      {
        const auto head = on.tag(Structure::header_cell);
        on.text(10, y, fmt::format("region {}", i), 8, Ink::text);
      }
      const auto cell = on.tag(Structure::cell);
      on.text(40, y, fmt::format("blade {}, against the lay", i), 8);
    }
  }
  const auto figure = on.tag(Structure::figure, "Side view of a dog");
  Contour outline{{130_mm, 130_mm}, {}, true};
  for (int i = 1; i <= 300; ++i) {
    const auto at = [](double turn) {
      const double angle = turn * 2 * std::numbers::pi / 300, r = 20 + 3 * std::sin(19 * angle);
      return Point{Length::mm(110 + r * std::cos(angle)), Length::mm(130 + r * std::sin(angle))};
    };
    outline.curves.push_back({at(i - 0.7), at(i - 0.3), at(i)});
  }
  outline.start = outline.curves.back().end;
  frame.marks.emplace_back(HatchMark{{outline}, 45, 1.2_mm, 0.15_mm, Ink::text, false});
  frame.marks.emplace_back(PathMark{{outline}, std::nullopt, Ink::text, 0.5_mm, Dash::solid});
  return frame;
}
}  // namespace furnish::test
