#pragma once

#include <array>
#include <map>
#include <memory>
#include <nlohmann/json_fwd.hpp>
#include <string>

#include "app/sheet_maker.h"
#include "figure/figure.h"
#include "sheet/sheet.h"

namespace furnish {

/// The dog to point at: how it is drawn on sheets, and each part of its coat with its outline and
/// the line of the plan. Seen from the left, and from the right where the two differ.
class DeskFigure {
 public:
  /// Keys "left" and "right"; the latter null where it would show nothing else.
  nlohmann::ordered_json json(const Case&, const SheetVoice&);

 private:
  using Json = nlohmann::ordered_json;
  Json view(const Case&, const SheetVoice&, Side);
  const Json& as_written(const TrimEntry&);

  /// Drawing takes most of the time, and most changes of a file leave the dog as it is: then it is
  /// the one that was drawn last.
  DrawnDogPtr dog_;
  std::array<std::shared_ptr<const Json>, 2> views_;  ///< of that dog, from the left and the right
  std::map<std::string, std::shared_ptr<const Json>> works_;  ///< by how a file has them
};
}  // namespace furnish
