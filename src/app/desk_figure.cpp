#include "app/desk_figure.h"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "desk/edits_json.h"
#include "figure/drawn_dog.h"
#include "sheet/figure_text.h"
#include "sheet/shown.h"
#include "sheet/terms.h"
#include "sheet/trim_lines.h"
#include "spec/trim_writer.h"

namespace furnish {
namespace {
using Json = nlohmann::ordered_json;

constexpr double width = 200;  ///< mm, of the whole dog
constexpr double pen = 0.35;   ///< mm, of one line width

/// The dog's units as millimetres of the picture, y down.
class Picture {
 public:
  Picture(const DrawnDog& dog, Side side)
      : bounds_(dog.bounds), scale_(width / dog.bounds.size().x), mirrored_(side == Side::right) {}

  double height() const { return bounds_.size().y * scale_; }
  Vec at(Vec p) const {
    const double x = mirrored_ ? bounds_.high.x - p.x : p.x - bounds_.low.x;
    return {x * scale_, (bounds_.high.y - p.y) * scale_};
  }
  std::string path(const Shape& shape) const {
    std::string out;
    for (const Ring& ring : shape) {
      char step = 'M';
      for (const Vec corner : ring) {
        const Vec p = at(corner);
        out += fmt::format("{}{:.1f} {:.1f}", step, p.x, p.y);
        step = 'L';
      }
      out += 'Z';
    }
    return out;
  }
  Json line(const Painted& painted) const {
    std::string path;
    for (const auto& curve : painted.curves) {
      if (curve.empty()) continue;
      const Vec from = at(curve.front().from);
      path += fmt::format("M{:.1f} {:.1f}", from.x, from.y);
      for (const Bezier& piece : curve) {
        const Vec a = at(piece.control1), b = at(piece.control2), to = at(piece.to);
        path += fmt::format("C{:.1f} {:.1f} {:.1f} {:.1f} {:.1f} {:.1f}", a.x, a.y, b.x, b.y, to.x,
                            to.y);
      }
      if (painted.closed) path += 'Z';
    }
    return {{"d", std::move(path)},
            {"fill", fill(painted.fill)},
            {"stroke", painted.stroke ? "#000" : "none"},
            {"width", painted.weight * pen}};
  }

 private:
  static const char* fill(std::optional<Ink> ink) {
    if (!ink) return "none";
    if (*ink == Ink::paper) return "#fff";
    return *ink == Ink::text ? "#000" : "#ddd";
  }
  Bounds bounds_;
  double scale_;
  bool mirrored_;
};

class View {
 public:
  View(const Case& one, const SheetVoice& voice, const DrawnDog& dog, Side side)
      : one_(one), voice_(voice), dog_(dog), side_(side), picture_(dog, side) {}

  Json json() const {
    std::vector<Region> all;
    for (const RegionInfo& region : regions()) all.push_back(region.region);
    Json out{{"width", width},
             {"height", picture_.height()},
             {"view", fmt::format("0 0 {:.1f} {:.1f}", width, picture_.height())},
             {"outline", picture_.path(dog_.hatched_together(all))},
             {"lines", Json::array()},
             {"parts", Json::array()}};
    const Drawing& drawing = dog_.drawing;
    Json& lines = out["lines"];
    for (const Painted& one : drawing.behind) lines.push_back(picture_.line(one));
    lines.push_back(picture_.line(drawing.body));
    for (const auto* const layer : {&drawing.inner, &drawing.tail, &drawing.ear}) {
      for (const Painted& one : *layer) lines.push_back(picture_.line(one));
    }
    for (const RegionInfo& region : regions()) out["parts"].push_back(part(region));
    return out;
  }

 private:
  Json part(const RegionInfo& region) const {
    const Place place{region.region, region.paired ? side_ : Side::both};
    const Vec at = picture_.at(dog_.aim(region.region));
    Json out{{"place", region.key},
             {"side", to_text(place.side)},
             {"label", place_name(place, voice_.words)},
             {"line", ""},
             {"d", picture_.path(dog_.hatched.at(static_cast<std::size_t>(region.region)))},
             {"at", {at.x, at.y}},
             {"length_mm", nullptr},
             {"banned", banned(place)},
             {"finding", std::ranges::any_of(one_.plan.findings,
                                             [&](const OpenFinding& finding) {
                                               return meets(finding.place, place);
                                             })},
             {"sore", sore(place)},
             {"work", Json::object()},
             {"own", nullptr}};
    if (const TrimPart* const trim = find_part(one_.pet.trim, place)) {
      out["line"] = work_text(trim->entry, voice_);
      out["work"] = work(trim->entry);
      if (trim->said_by == SaidBy::pet) out["own"] = {"trim", trim->entry.written};
    }
    for (const PartLength& length : one_.plan.lengths) {
      if (length.left && meets(length.place, place)) out["length_mm"] = length.left->low.in_mm();
    }
    return out;
  }

  /// What a visit found to hurt there: in English, or as the page's own phrase has it.
  bool sore(Place place) const {
    const std::string phrase = voice_.words.term("stock", "sore-skin");
    return std::ranges::any_of(one_.plan.findings, [&](const OpenFinding& finding) {
      const std::string& what = finding.what.value;
      return meets(finding.place, place) &&
             (what.find("sore") != std::string::npos || what.find(phrase) != std::string::npos);
    });
  }

  bool banned(Place place) const {
    return std::ranges::any_of(one_.pet.alerts, [&](const Alert& alert) {
      return std::ranges::any_of(alert.avoid,
                                 [&](const auto& avoid) { return meets(avoid.value, place); });
    });
  }

  /// As a file would have it.
  static Json work(const TrimEntry& entry) {
    const EditedText text("work = " + toml_text::table(entry_fields(entry)));
    const EditValue* const value = text.good() ? find(text.tree(), {std::string("work")}) : nullptr;
    return value != nullptr ? desk::value_json(*value) : Json::object();
  }

  const Case& one_;
  const SheetVoice& voice_;
  const DrawnDog& dog_;
  Side side_;
  Picture picture_;
};

/// Whether anything is said of one side alone.
bool sides_differ(const Case& one) {
  const auto sided = [](Place place) { return place.side != Side::both; };
  for (const Alert& alert : one.pet.alerts) {
    for (const auto& place : alert.avoid) {
      if (sided(place.value)) return true;
    }
  }
  return std::ranges::any_of(one.plan.findings, [&](const auto& f) { return sided(f.place); }) ||
         std::ranges::any_of(one.pet.trim, [&](const auto& part) { return sided(part.place); });
}

/// All that a drawing depends on, in one text.
std::string key_of(const FigureInput& input) {
  const auto choice = [](const auto& given) { return given ? static_cast<int>(*given) : -1; };
  const Build& build = input.build;
  std::string out = fmt::format(
      "{} {} {} {} {} {} {} {} {}", choice(input.coat), choice(build.nose), choice(build.legs),
      choice(build.body), choice(build.ears), choice(build.tail), choice(build.bone),
      input.weight ? input.weight->ug() : 0, static_cast<int>(input.tail_end));
  for (const auto& left : input.left) {
    out += left ? fmt::format(" {}-{}", left->low.um(), left->high.um()) : " -";
  }
  for (const Seam seam : input.stepped) {
    out += fmt::format(" {}/{}", static_cast<int>(seam.a), static_cast<int>(seam.b));
  }
  return out;
}
}  // namespace

Json DeskFigure::json(const Case& one, const SheetVoice& voice) {
  FigureInput input = figure_of(one.pet, one.plan);
  for (const PartLength& length : one.plan.lengths) {
    input.left.at(static_cast<std::size_t>(length.place.region)) = length.left;
  }
  if (std::string key = key_of(input); key != drawn_as_ || !dog_) {
    dog_ = draw_dog(input);
    drawn_as_ = std::move(key);
  }
  Json out{{"left", View(one, voice, *dog_, Side::left).json()}, {"right", nullptr}};
  if (sides_differ(one)) out["right"] = View(one, voice, *dog_, Side::right).json();
  return out;
}
}  // namespace furnish
