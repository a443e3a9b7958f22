#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "model/free_text.h"
#include "spec/fields.h"

namespace furnish {

/// A text in the salon's language, "…", or in several: { en = "…", es = "…" }, or { text = "…", es
/// = "…" }, where `text` is the salon's. Empty after a fault or without the key.
FreeText read_free_text(Fields&, const FreeTextKey&);
/// The same, for staff unless it says otherwise: { text = "…", for = "everyone" }.
FreeText read_staff_text(Fields&, const StaffTextKey&);
/// The same as read_free_text(), but the table of a region is left to Fields::rest(): "ears" may be
/// words or a region.
FreeText read_free_text_unless_region(Fields&, const FreeTextKey&);
/// A list of them.
std::vector<FreeText> read_free_texts(Fields&, const FreeTextsKey&);
}  // namespace furnish
