#pragma once

#include <string>
#include <string_view>

namespace furnish {

/// A page's content in which all that is shown outside the structure tree is marked as an artifact:
/// PDF/UA wants every mark to be one or the other (ISO 14289-1, 7.1). Empty if nothing was to be
/// marked. pre: no inline images, which nothing here makes.
std::string with_artifacts(std::string_view content);
}  // namespace furnish
