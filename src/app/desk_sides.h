#pragma once

#include <deque>
#include <optional>
#include <string>

#include "base/diagnostic.h"
#include "page/frame.h"

namespace furnish {

/// The sides of sheets that were shown last, as they are drawn: most changes show on one side, and
/// what is pointed at or saved shows on none.
class DrawnSides {
 public:
  static constexpr std::size_t most = 8;
  /// As to_svg(). What cannot be drawn is tried again.
  std::optional<std::string> svg(const Frame&, const DocumentInfo&, DiagnosticSink&);

 private:
  struct Drawn {
    Frame side;
    DocumentInfo info;
    std::string svg;
  };
  std::deque<Drawn> last_;  ///< the latest first
};
}  // namespace furnish
