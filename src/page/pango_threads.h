#pragma once

namespace furnish {
/// Has Pango look for the fonts of a size where it is asked for one; see there. To be called before
/// the first font map, so that the program has what is there.
void run_pango_inline();
}  // namespace furnish
