#pragma once

#include <string>
#include <vector>

#include "sheet/parts.h"
#include "sheet/style_rows.h"

namespace furnish {

/// Whether lines for a newer groomer are added.
enum class WithHow : bool { no, yes };
/// How the dog is held for a step: "lying, foot held low"; empty where it stands.
std::string posture_text(const WorkStep&, const SheetVoice&);
/// What comes before the first cut: look over, brush out, bath, nails, drying.
std::vector<SheetRow> style_before(const SheetDesk&, WithHow);
/// That, and the cuts in their order, a tool a row, with the numbers of the table's rows and where
/// the dog stands: "**11** Breeches, from behind."
std::vector<SheetRow> style_order(const std::vector<StyleRow>&, const SheetDesk&, WithHow);
/// Extras and the check of the line, which follow the last cut.
SheetRow style_last(const SheetDesk&);

/// Which coat is blended into which, once the rest is cut.
struct BlendList {
  std::string head;                 ///< "Blend with thinning shears"
  std::vector<std::string> blends;  ///< "breeches into rear legs and hocks"
  SourceSpan span;
};
BlendList style_blends(const SheetDesk&);
}  // namespace furnish
