#include "page/picture.h"

#include <algorithm>
#include <utility>

#include "page/frame.h"

namespace furnish {
namespace {
constexpr Length frame_weight = 0.25_mm, frame_air = 2_mm;

class MissingPicture final : public Block {
 public:
  MissingPicture(std::string says, double aspect, Length least, Length most, int stretch,
                 Origin origin)
      : Block(std::move(origin)),
        says_(std::move(says)),
        aspect_(aspect),
        least_(least),
        most_(most),
        stretch_(stretch) {}

  Extent measure(Length width, const Setting& setting) const override {
    return canvas(setting).measure(width, setting);
  }

  void place(const Rect& box, const Setting& setting, Frame& frame) const override {
    canvas(setting).place(box, setting, frame);
  }

 private:
  Canvas canvas(const Setting& setting) const {
    // The words in the narrowest frame there may be; in a larger one they take no more room.
    const Length words = height(*lines(least_, setting)) + 2 * frame_air,
                 least = std::max(least_, words);
    const auto draw = [this](const Rect& area, const Setting& at, Frame& frame) {
      this->draw(area, at, frame);
    };
    return {aspect_, least, std::max(least, most_), stretch_, draw, says_};
  }

  std::shared_ptr<const ShapedText> lines(Length frame_height, const Setting& setting) const {
    const Length room = scaled(frame_height, aspect_) - 2 * frame_air;
    return setting.shaper.shape({{says_, Face::regular, Role::label, setting.type[Role::label]}},
                                room, Breaking::balanced);
  }
  static Length pitch(const ShapedLine& line) { return Length::points(line.points() * 1.24); }
  static Length height(const ShapedText& text) {
    Length sum;
    for (const auto& line : text.lines) sum += pitch(*line);
    return sum;
  }

  void draw(const Rect& area, const Setting& setting, Frame& frame) const {
    const Length half = frame_weight / 2;
    frame.marks.emplace_back(PathMark{{rectangle_contour(inset(area, {half, half, half, half}))},
                                      std::nullopt,
                                      Ink::text,
                                      frame_weight,
                                      Dash::dashed});
    const auto text = lines(area.size.height, setting);
    Length top = area.top() + (area.size.height - height(*text)) / 2;
    for (const auto& line : text->lines) {
      const Length air = (pitch(*line) - line->ascent() - line->descent()) / 2;
      frame.marks.emplace_back(TextMark{
          {area.left() + (area.size.width - line->width()) / 2, top + air + line->ascent()},
          line,
          Ink::text,
          std::string(name(Role::label))});
      top += pitch(*line);
    }
  }

  std::string says_;
  double aspect_;
  Length least_, most_;
  int stretch_;
};

/// Where a piece of structure of a role begins and ends among the marks of a page.
struct Span {
  std::size_t begin, end;
};
std::vector<Span> spans_of(Structure role, const std::vector<Mark>& marks) {
  std::vector<Span> spans;
  std::vector<std::pair<Structure, std::size_t>> open;
  for (std::size_t i = 0; i < marks.size(); ++i) {
    if (const auto* const tag = std::get_if<OpenTag>(&marks[i])) open.emplace_back(tag->role, i);
    if (!std::holds_alternative<CloseTag>(marks[i]) || open.empty()) continue;
    if (open.back().first == role) spans.push_back({open.back().second, i + 1});
    open.pop_back();
  }
  return spans;
}

class Captioned final : public Block {
 public:
  explicit Captioned(BlockPtr block) : Block(block->origin()), block_(std::move(block)) {}
  Extent measure(Length width, const Setting& setting) const override {
    return block_->measure(width, setting);
  }
  std::vector<Part> parts(Length width, const Setting& setting) const override {
    return block_->parts(width, setting);
  }
  void place(const Rect& box, const Setting& setting, Frame& frame) const override {
    Frame apart{frame.size, {}};
    block_->place(box, setting, apart);
    std::vector<Mark>& marks = apart.marks;
    const std::vector<Span> figures = spans_of(Structure::figure, marks),
                            captions = spans_of(Structure::caption, marks);
    const auto add = [&](std::size_t begin, std::size_t end) {
      for (std::size_t i = begin; i < end; ++i) frame.marks.push_back(std::move(marks[i]));
    };
    if (figures.size() != captions.size()) return add(0, marks.size());
    for (std::size_t i = 0; i < figures.size(); ++i) {
      add(figures[i].begin, figures[i].end - 1);
      add(captions[i].begin, captions[i].end);
      add(figures[i].end - 1, figures[i].end);
    }
  }

 private:
  BlockPtr block_;
};
}  // namespace

BlockPtr captioned(BlockPtr block) {
  return std::make_shared<Captioned>(std::move(block));
}

Picture::Picture(PhotographPtr photo, std::string alt, std::optional<std::array<double, 2>> focus,
                 double aspect, Length least, Length most, int stretch, Origin origin)
    : Block(std::move(origin)),
      canvas_(
          aspect, least, most, stretch,
          [crop = crop_to(photo->width, photo->height, aspect, focus), photo](
              const Rect& area, const Setting&, Frame& frame) {
            frame.marks.emplace_back(ImageMark{area, photo, crop});
          },
          std::move(alt)) {}

Extent Picture::measure(Length width, const Setting& setting) const {
  return canvas_.measure(width, setting);
}

void Picture::place(const Rect& box, const Setting& setting, Frame& frame) const {
  canvas_.place(box, setting, frame);
}

BlockPtr missing_picture(std::string says, double aspect, Length least, Length most, int stretch,
                         Origin origin) {
  return std::make_shared<MissingPicture>(std::move(says), aspect, least, most, stretch,
                                          std::move(origin));
}
}  // namespace furnish
