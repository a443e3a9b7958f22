#pragma once

#include <string_view>

#include "base/date.h"
#include "spec/document.h"

namespace furnish {

/// A fault if the date in a file is not the one its name begins with.
void check_name_date(const Located<Date>&, std::string_view path, DiagnosticSink&);
}  // namespace furnish
