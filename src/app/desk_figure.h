#pragma once

#include <nlohmann/json_fwd.hpp>

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
  /// Drawing takes most of the time, and most changes of a file leave the dog as it is.
  std::string drawn_as_;
  DrawnDogPtr dog_;
};
}  // namespace furnish
