#pragma once

#include <optional>
#include <vector>

#include "figure/qr.h"
#include "sheet/parts.h"
#include "sheet/style_rows.h"
#include "sheet/style_work.h"

namespace furnish {

/// What a style sheet's other side has: the order of work, blends, what to do if, the last visits,
/// the answers at the read-back with lines to sign, and the code for a phone. References must
/// outlive it.
class StyleBack {
 public:
  StyleBack(const std::vector<StyleRow>& rows, const SheetDesk& desk);

  /// In two columns of about one height, the order of work first, the code at the end.
  std::vector<BlockPtr> columns(WithHow) const;
  /// In two columns, and under them the code beside the answers.
  std::vector<BlockPtr> whole(WithHow, const std::vector<SheetRow>& left_out = {}) const;
  /// In pieces that any paper holds. In both, what the front has left out comes first.
  std::vector<BlockPtr> pieces(const std::vector<SheetRow>& left_out = {}) const;
  /// Warns of a trim that is longer than any code holds.
  void report(DiagnosticSink&) const;

 private:
  BlockPtr section(const std::string& head, BlockPtr) const;
  BlockPtr code() const;
  BlockPtr work(WithHow) const;
  BlockPtr blends() const;
  BlockPtr what_if() const;
  /// Vaccinations with them, where there is room for more than the work.
  BlockPtr visits(WithHow) const;
  BlockPtr read_back() const;
  std::vector<BlockPtr> answers() const;
  BlockPtr signing() const;
  std::vector<SheetRow> order(WithHow) const;
  Length most_side() const;

  const std::vector<StyleRow>& rows_;
  const SheetDesk& desk_;
  const SheetInput& input_;
  const SheetVoice& voice_;
  BlendList blends_;
  std::optional<QrCode> code_;  ///< none: not asked for, or more than any size holds
  Length side_;                 ///< the code's
};
}  // namespace furnish
