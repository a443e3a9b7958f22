#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "page/alerts.h"
#include "page/paragraph.h"

namespace furnish {

/// Alerts where room is short: the word runs into the statement, which has the whole width, and the
/// action follows in the same paragraph. The devices are those of Alerts: the whole row black, a
/// black panel behind the word, a thick bar or a thin line at the edge.
class RunInAlerts final : public Block {
 public:
  enum class Rules : std::uint8_t { under_each, none };
  /// `rule_above`: weight of a rule on top; zero for none.
  explicit RunInAlerts(std::vector<AlertEntry>, Length rule_above = {}, Origin = {},
                       Rules = Rules::under_each);
  Extent measure(Length width, const Setting&) const override;
  void place(const Rect&, const Setting&, Frame&) const override;
  std::vector<Part> parts(Length width, const Setting&) const override;

 private:
  class Row;
  BlockPtr stack_;  ///< null if there are none
};
}  // namespace furnish
