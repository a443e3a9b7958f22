#include "figure/spots.h"

#include <string>

#include "figure/set_text.h"

namespace furnish {
namespace {
PathMark filled(Contour contour, Ink fill, Length weight) {
  return {{std::move(contour)}, fill, Ink::text, weight, Dash::solid};
}

void draw_struck_circle(Vec at, double r, Frame& frame) {
  frame.marks.emplace_back(filled(circle(at, r), Ink::paper, Length::mm(0.36 * r)));
  const Vec bar = Vec{0.7071, 0.7071} * r;
  frame.marks.emplace_back(StrokeMark{point_of(at - bar), point_of(at + bar), Length::mm(0.36 * r),
                                      Ink::text, Dash::solid});
}

/// Around its middle, which is at a third of its height.
void draw_triangle(Vec at, double r, Frame& frame) {
  constexpr double half_base = 0.866, low = 0.5;
  const double stroke = 0.2 * r;
  const Vec middle = at + Vec{0, 0.2} * r;
  PathMark sign = filled(polygon({middle + Vec{0, -1} * r, middle + Vec{half_base, low} * r,
                                  middle + Vec{-half_base, low} * r}),
                         Ink::paper, Length::mm(stroke));
  frame.marks.emplace_back(std::move(sign));
  frame.marks.emplace_back(StrokeMark{point_of(middle + Vec{0, -0.5} * r),
                                      point_of(middle + Vec{0, 0.06} * r), Length::mm(stroke),
                                      Ink::text, Dash::solid});
  frame.marks.emplace_back(PathMark{
      {circle(middle + Vec{0, 0.29} * r, 0.6 * stroke)}, Ink::text, std::nullopt, {}, Dash::solid});
}
}  // namespace

void draw_centred(const std::string& text, Vec at, Face face, Role role, Ink ink,
                  const Setting& setting, Frame& frame) {
  const auto line = set_line(text, face, role, setting);
  frame.marks.emplace_back(
      TextMark{{Length::mm(at.x) - line->width() / 2, Length::mm(at.y) + capitals(*line) / 2},
               line,
               ink,
               std::string(name(role))});
}

void draw_avoided(const std::vector<Contour>& area, Frame& frame) {
  for (const double degrees : {45.0, 135.0}) {
    frame.marks.emplace_back(HatchMark{area, degrees, 0.8_mm, 0.16_mm, Ink::text, false});
  }
}

std::string finding_letter(int number) {
  constexpr int letters = 26;
  const std::string last(1, static_cast<char>('A' + (number - 1) % letters));
  return number > letters ? finding_letter((number - 1) / letters) + last : last;
}

void draw_spot(const FigureSpot& spot, Vec at, double size, const Setting& setting, Frame& frame) {
  const double r = size / 2;
  switch (spot.kind) {
    case SpotKind::avoid:
      return draw_struck_circle(at, r, frame);
    case SpotKind::sore:
      return draw_triangle(at, 1.15 * r, frame);
    case SpotKind::finding:
      break;
  }
  frame.marks.emplace_back(
      filled(polygon({at + Vec{-r, -r}, at + Vec{r, -r}, at + Vec{r, r}, at + Vec{-r, r}}),
             Ink::paper, 0.3_mm));
  draw_centred(finding_letter(spot.number), at, Face::semibold, Role::label, Ink::text, setting,
               frame);
}
}  // namespace furnish
