#include "app/desk_figure.h"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "base/said_in.h"
#include "desk/edits_json.h"
#include "figure/drawn_dog.h"
#include "plan/restraints.h"
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

/// How the dog is drawn, seen from a side, and the outlines of its parts: all that does not change
/// with what is said of them.
Json drawn_view(const DrawnDog& dog, Side side) {
  const Picture picture(dog, side);
  std::vector<Region> all;
  for (const RegionInfo& region : regions()) all.push_back(region.region);
  Json out{{"width", width},
           {"height", picture.height()},
           {"view", fmt::format("0 0 {:.1f} {:.1f}", width, picture.height())},
           {"outline", picture.path(dog.hatched_together(all))},
           {"lines", Json::array()},
           {"parts", Json::array()}};
  const Drawing& drawing = dog.drawing;
  Json& lines = out["lines"];
  for (const Painted& one : drawing.behind) lines.push_back(picture.line(one));
  lines.push_back(picture.line(drawing.body));
  for (const auto* const layer : {&drawing.inner, &drawing.tail, &drawing.ear}) {
    for (const Painted& one : *layer) lines.push_back(picture.line(one));
  }
  for (const RegionInfo& region : regions()) {
    const Vec at = picture.at(dog.aim(region.region));
    out["parts"].push_back(
        {{"place", region.key},
         {"d", picture.path(dog.hatched.at(static_cast<std::size_t>(region.region)))},
         {"at", {at.x, at.y}}});
  }
  return out;
}

/// What a visit found to hurt there: in English, or as the page's own phrase has it.
bool sore(const Case& one, const SheetVoice& voice, Place place) {
  const std::string phrase = without_languages(voice.words.term("stock", "sore-skin"));
  return std::ranges::any_of(one.plan.findings, [&](const OpenFinding& finding) {
    const std::string& what = finding.what.value;
    return meets(finding.place, place) &&
           (what.find("sore") != std::string::npos || what.find(phrase) != std::string::npos);
  });
}

/// As a file would have what is done to a part.
Json work(const std::string& written) {
  const EditedText text("work = " + written);
  const EditValue* const value = text.good() ? find(text.tree(), {std::string("work")}) : nullptr;
  return value != nullptr ? desk::value_json(*value) : Json::object();
}

bool banned(const Pet& pet, Place place) {
  return std::ranges::any_of(pet.alerts, [&](const Alert& alert) {
    return std::ranges::any_of(alert.avoid,
                               [&](const auto& avoid) { return meets(avoid.value, place); });
  });
}

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

}  // namespace

Json DeskFigure::view(const Case& one, const SheetVoice& voice, Side side) {
  auto& drawn = views_.at(side == Side::right ? 1 : 0);
  if (!drawn) drawn = std::make_shared<const Json>(drawn_view(*dog_, side));
  Json out = *drawn;
  for (std::size_t i = 0; i < regions().size(); ++i) {
    const RegionInfo& region = regions()[i];
    const Place place{region.region, region.paired ? side : Side::both};
    Json& part = out["parts"][i];
    part["side"] = to_text(place.side);
    part["label"] = place_name(place, voice.words);
    part["line"] = "";
    part["length_mm"] = nullptr;
    part["banned"] = banned(one.pet, place);
    part["finding"] = std::ranges::any_of(
        one.plan.findings, [&](const OpenFinding& found) { return meets(found.place, place); });
    part["sore"] = sore(one, voice, place);
    part["work"] = Json::object();
    part["own"] = nullptr;
    if (const TrimPart* const trim = find_part(one.pet.trim, place)) {
      part["line"] = work_text(taken(*trim, one.plan.cautions), voice);
      part["work"] = as_written(trim->entry);
      if (trim->said_by == SaidBy::pet) part["own"] = {"trim", trim->entry.written};
    }
    for (const PartLength& length : one.plan.lengths) {
      if (length.left && meets(length.place, place)) {
        part["length_mm"] = length.left->low.in_mm();
      }
    }
  }
  return out;
}

const Json& DeskFigure::as_written(const TrimEntry& entry) {
  constexpr std::size_t most = 1000;
  const std::string written = toml_text::table(entry_fields(entry));
  if (works_.size() > most) works_.clear();
  auto& known = works_[written];
  if (!known) known = std::make_shared<const Json>(work(written));
  return *known;
}

Json DeskFigure::json(const Case& one, const SheetVoice& voice) {
  FigureInput input = figure_of(one.pet, one.plan);
  for (const PartLength& length : one.plan.lengths) {
    input.left.at(static_cast<std::size_t>(length.place.region)) = length.left;
  }
  if (DrawnDogPtr dog = draw_dog(input); dog != dog_) {
    dog_ = std::move(dog);
    views_ = {};
  }
  Json out{{"left", view(one, voice, Side::left)}, {"right", nullptr}};
  if (sides_differ(one)) out["right"] = view(one, voice, Side::right);
  return out;
}
}  // namespace furnish
